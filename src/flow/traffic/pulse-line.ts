import type { Place } from '../floor/place.js';
import type { Station } from '../floor/station.js';
import type { Step } from '../floor/step.js';
import type { Model } from '../model/model.js';

/** Stations whose units all move on together. */
export class PulseLine {
  /** Units go from station to station now, and at no other time. */
  isMoving = false;
  /** The takt counts from the last move; before the first, none. */
  movedAt = NaN;
  dueAt = -Infinity;
  /** A PULSE event of it is in the queue. */
  timerSet = false;
  listed = false;
  /**
   * Where the unit that is done at the last station goes, null: out. Room for it is the last thing that is
   * wanted.
   */
  leaving: Step | null = null;
  waitsForRoom = false;
  /** The station that was the last to be done, or to be up again. */
  lastDone: Station;

  /**
   * Moves with units on the line, minutes of the calendar between them, how many were late, and by how much
   * in all: by station charged, then for want of room ahead.
   */
  moves = 0;
  minutesBetween = NaN;
  late = 0;
  readonly lateMinutes: Float64Array;

  constructor(
    readonly id: number,
    readonly name: string,
    readonly stations: readonly Station[],
    readonly takt: number,
    readonly calendar: number,
  ) {
    this.lastDone = stations[0];
    this.minutesBetween = 0;
    this.lateMinutes = new Float64Array(stations.length + 1);
  }

  get last(): Station {
    return this.stations[this.stations.length - 1];
  }

  /**
   * The first place that a move would have to wait for: it is down, or its unit is not done; null if there is
   * none.
   */
  get holdingUp(): Place | null {
    for (const {
      places: [place],
    } of this.stations)
      if (place.isDown || (place.unit !== null && !place.isDone)) return place;
    return null;
  }

  /** Observation starts afresh. */
  clear(): void {
    this.moves = 0;
    this.minutesBetween = 0;
    this.late = 0;
    this.lateMinutes.fill(0);
  }
}

export function buildPulseLines({ pulseLines: columns }: Model, stations: readonly Station[]): PulseLine[] {
  return columns.names.map((name, id) => {
    const own = Array.from(
      columns.station.subarray(columns.stationStart[id], columns.stationStart[id + 1]),
      (station) => stations[station],
    );
    const line = new PulseLine(id, name, own, columns.takt[id], columns.calendar[id]);
    for (const station of own) {
      station.line = line;
      station.leaveTheLongWay();
    }
    return line;
  });
}

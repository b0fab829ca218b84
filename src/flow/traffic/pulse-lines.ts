import type { Place } from '../floor/place.js';
import { BLOCKED, PULSE } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Step } from '../floor/step.js';
import type { Model } from '../model/model.js';
import type { Run } from '../run.js';
import { finishRoute } from './feeders.js';
import { fill, goOn } from './move.js';
import { freePlace } from './room.js';

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
    public takt: number,
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

/**
 * The pulse line of rule 1: its units move on together, when the takt has passed since the last move, all of
 * them are done, no place is down, and the last one has room ahead. One that waits ahead of the line enters
 * with them.
 */

/**
 * The unit at the last station is done with the line and waits for the pulse to go to `next`; null: its route
 * is over.
 */
export function holdForPulse(run: Run, place: Place, line: PulseLine, next: Step | null): void {
  line.leaving = next;
  if (next !== null) place.unit!.step = next;
  line.lastDone = place.station;
  place.idle(BLOCKED);
  run.listPulse(line);
}

/**
 * Moves the line if it can move now; if only the takt is wanted, sees to it that it is looked at again then.
 */
export function pulse(run: Run, line: PulseLine): void {
  line.listed = false;
  const {
    stations: [{ buffer }],
    last: {
      places: [end],
    },
  } = line;
  if (line.holdingUp !== null || (line.waitsForRoom && end.unit !== null)) return;
  const isLoaded = line.waitsForRoom || line.stations.some(({ places: [place] }) => place.unit !== null);
  if (!isLoaded && buffer.waiting + buffer.shutOut === 0) return;
  if (run.now < line.dueAt) {
    awaitTakt(run, line);
    return;
  }
  if (end.unit !== null && !sendOut(run, line, end)) {
    line.waitsForRoom = true;
    return;
  }
  if (isLoaded) book(run, line);
  advance(run, line);
}

/** The takt has passed. */
export function pulseTimer(run: Run, line: PulseLine): void {
  line.timerSet = false;
  pulse(run, line);
}

function awaitTakt(run: Run, line: PulseLine): void {
  if (line.timerSet) return;
  line.timerSet = true;
  run.queue.push(line.dueAt, PULSE, line.id);
}

/** The unit at the end leaves the line; false if it has no room, and waits in its turn for some. */
function sendOut(run: Run, { leaving }: PulseLine, end: Place): boolean {
  const unit = end.unit!;
  if (leaving === null) finishRoute(run, unit, unit.step.route);
  if (leaving !== null && !goOn(run, end, unit, leaving)) return false;
  freePlace(run, end);
  return true;
}

/** From the end, so that each finds the place ahead empty. */
function advance(run: Run, line: PulseLine): void {
  line.waitsForRoom = false;
  line.movedAt = run.now;
  line.dueAt = run.memory.after(line.calendar, line.takt);
  line.isMoving = true;
  for (const { buffer } of line.stations.toReversed()) fill(run, buffer);
  line.isMoving = false;
}

function book({ memory }: Run, line: PulseLine): void {
  const { calendar, movedAt, dueAt, stations, lastDone, waitsForRoom } = line,
    { now } = memory;
  if (Number.isNaN(movedAt)) return;
  const late = memory.worked(calendar, dueAt, now);
  line.moves++;
  line.minutesBetween += memory.worked(calendar, movedAt, now);
  if (late <= 0) return;
  line.late++;
  line.lateMinutes[waitsForRoom ? stations.length : stations.indexOf(lastDone)] += late;
}

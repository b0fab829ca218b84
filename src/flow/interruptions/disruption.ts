import { columns } from '../accounts/tally.js';
import { type Equipment, FailureMode } from '../floor/equipment.js';
import { DISRUPTION } from '../floor/states.js';
import type { Model } from '../model/model.js';
import type { EventQueue } from '../queue.js';

/** An outage as it goes: on, or not begun or over. */
export class Outage {
  isOn = false;

  constructor(
    readonly id: number,
    readonly source: number,
    readonly equipment: readonly Equipment[],
  ) {}
}

/**
 * Rule 13: all that can go down in a run. Sources of DISRUPTION events are ways to fail, then outages.
 */
export class Disruptions {
  readonly modes: readonly FailureMode[];
  readonly outages: readonly Outage[];
  /** Its events in the queue: of themselves they bring no unit further. */
  scheduled = 0;
  /** By station: failures, repairs ended, their minutes by the clock in all and at most. */
  readonly failures;

  constructor(
    { failures, outages, stations: { count } }: Model,
    readonly equipment: readonly Equipment[],
  ) {
    const modes: FailureMode[] = [];
    for (const piece of equipment) {
      for (let row = 0; row < failures.count; row++) {
        if (failures.station[row] !== piece.station.id) continue;
        const mode = new FailureMode(modes.length, row, piece, failures.byClock[row] === 1);
        modes.push(mode);
        piece.modes.push(mode);
      }
    }
    this.modes = modes;
    this.outages = Array.from({ length: outages.count }, (_, id) => {
      const stations = outages.station.subarray(outages.stationStart[id], outages.stationStart[id + 1]);
      return new Outage(
        id,
        modes.length + id,
        equipment.filter(({ station }) => stations.includes(station.id)),
      );
    });
    this.failures = columns(count, 'count', 'repairs', 'minutes', 'longest');
  }

  /** Sources of events. */
  get sourceCount(): number {
    return this.modes.length + this.outages.length;
  }

  /** Puts the event of a source into the queue. */
  schedule(queue: EventQueue, source: number, time: number): void {
    this.scheduled++;
    queue.push(time, DISRUPTION, source);
  }

  /** Takes it out before it happens. */
  unschedule(queue: EventQueue, source: number): void {
    this.scheduled--;
    queue.remove(DISRUPTION, source);
  }

  /** Observation starts afresh. */
  clear(): void {
    for (const counts of Object.values(this.failures)) counts.fill(0);
  }
}

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
  /** By station, then by resource: failures, repairs ended, their minutes by the clock in all and at most. */
  readonly failures;

  constructor(
    { failures, outages, stations: { count }, resources }: Model,
    readonly equipment: readonly Equipment[],
  ) {
    const modes: FailureMode[] = [];
    for (const piece of equipment) {
      for (let row = 0; row < failures.count; row++) {
        const station = failures.station[row];
        if (piece.owner !== (station < 0 ? count + failures.resource[row] : station)) continue;
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
        equipment.filter(({ station }) => station !== null && stations.includes(station.id)),
      );
    });
    this.failures = columns(count + resources.count, 'count', 'repairs', 'minutes', 'longest');
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

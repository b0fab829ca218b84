import type { Calendar } from './calendar.js';
import type { Clock } from './clock.js';

/**
 * Active periods: the time for which a resource is at work without waiting, from one wait to the next
 * (Roser, Nakano & Tanaka 2001, A practical bottleneck detection method, Winter Simulation Conference).
 * A station is active while all its places are; a crew while nobody of it is free; a lane while no truck stands ready.
 * Periods are counted in working minutes of the resource's calendar, so that a night does not lengthen one.
 */
export class ActivePeriods {
  /** Finished periods and their minutes. */
  readonly periods: Float64Array;
  readonly minutes: Float64Array;
  private readonly since: Float64Array;

  constructor(count: number, private readonly calendars: readonly Calendar[], private readonly calendarOf: Int32Array, private readonly clock: Clock) {
    this.periods = new Float64Array(count);
    this.minutes = new Float64Array(count);
    this.since = new Float64Array(count).fill(-1);
  }

  begin(id: number): void {
    this.since[id] = this.clock.now;
  }

  finish(id: number): void {
    const now = this.clock.now, since = this.since[id], calendar = this.calendarOf[id];
    if (since < 0) return;
    this.since[id] = -1;
    const minutes = calendar < 0 ? now - since : this.calendars[calendar].worked(since, now);
    if (minutes <= 0) return;
    this.periods[id]++;
    this.minutes[id] += minutes;
  }

  /** Starts observation afresh; a period that goes on is cut here. */
  clear(): void {
    this.periods.fill(0);
    this.minutes.fill(0);
    for (let id = 0; id < this.since.length; id++) if (this.since[id] >= 0) this.since[id] = this.clock.now;
  }

  /** Ends observation: a period that goes on counts as far as it was seen. */
  close(): void {
    for (let id = 0; id < this.since.length; id++) this.finish(id);
  }
}

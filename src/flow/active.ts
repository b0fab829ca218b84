import type { Calendar } from './calendar.js';

/**
 * Active periods of one resource: the time for which it is at work without waiting, from one wait to the next
 * (Roser, Nakano & Tanaka 2001, A practical bottleneck detection method, Winter Simulation Conference).
 * A station is active while all its places are; a crew while nobody of it is free; a lane while no truck stands ready.
 * Periods are counted in working minutes of the resource's calendar, so that a night does not lengthen one.
 */
export class ActivePeriods {
  /** Finished periods and their minutes. */
  periods = 0;
  minutes = Number.NaN;
  private since = Number.NaN;
  private open = false;

  constructor(private readonly calendar: Calendar | null) {
    this.minutes = 0;
  }

  begin(now: number): void {
    this.since = now;
    this.open = true;
  }

  finish(now: number): void {
    if (!this.open) return;
    this.open = false;
    const minutes = this.calendar === null ? now - this.since : this.calendar.worked(this.since, now);
    if (minutes <= 0) return;
    this.periods++;
    this.minutes += minutes;
  }

  /** Starts observation afresh at `now`; a period that goes on is cut there. */
  clear(now: number): void {
    this.periods = 0;
    this.minutes = 0;
    this.since = now;
  }
}

import type { Calendar } from '../floor/calendar.js';

/**
 * Is told of the active periods of resources as they begin and end; null unless a replication is watched
 * closely.
 */
export interface PeriodWatch {
  begin(resource: number): void;
  end(resource: number): void;
}

/**
 * Active periods of a resource: the time for which it is at work without waiting, from one wait to the next
 * (Roser, Nakano & Tanaka 2001, A practical bottleneck detection method, Winter Simulation Conference). A
 * station is active while all its places are; a crew while nobody of it is free; a lane while no truck stands
 * ready or waits for room ahead. Periods are counted in working minutes of the resource's calendar, so that a
 * night does not lengthen one.
 */
export interface Active {
  /** Finished periods and their minutes. */
  readonly activePeriods: number;
  readonly activeMinutes: number;
  /** Ends a period that goes on. */
  finishActive(now: number): void;
  /** A period goes on. */
  readonly isActive: boolean;
  /** Minutes of its calendar. */
  activeMinutesBetween(begin: number, now: number): number;
}

/** Active periods of a crew or a lane. */
export class ActivePeriods implements Active {
  activePeriods = 0;
  activeMinutes = 0;
  private activeSince = 0;
  isActive = false;
  private watch: PeriodWatch | null = null;
  private watchedAs = -1;

  constructor(readonly calendar: Calendar | null) {}

  beginActive(now: number): void {
    this.activeSince = now;
    this.isActive = true;
    this.watch?.begin(this.watchedAs);
  }

  /** From now on its periods are told, under this number. */
  watchActive(watch: PeriodWatch, as: number): void {
    this.watch = watch;
    this.watchedAs = as;
  }

  activeMinutesBetween(begin: number, now: number): number {
    return this.calendar === null ? now - begin : this.calendar.worked(begin, now);
  }

  finishActive(now: number): void {
    if (!this.isActive) return;
    this.isActive = false;
    this.watch?.end(this.watchedAs);
    const minutes = this.activeMinutesBetween(this.activeSince, now);
    if (minutes <= 0) return;
    this.activePeriods++;
    this.activeMinutes += minutes;
  }

  /** Starts observation afresh at `now`; a period that goes on is cut there. */
  protected clearActive(now: number): void {
    this.activePeriods = 0;
    this.activeMinutes = 0;
    this.activeSince = now;
  }
}

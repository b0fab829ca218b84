import type { Estimate } from './results.js';

export interface CrewResult {
  readonly name: string;
  readonly site: string;
  /** On the largest shift; and on each shift of the calendar's day, where they differ. */
  readonly headcount: number;
  readonly headcounts: readonly number[] | null;
  /** Engaged person-time over person-time on shift. */
  readonly busy: Estimate;
  /** Person-hours of people who were there, over the time observed: in usual hours, in overtime. */
  readonly usualHours: Estimate;
  readonly overtimeHours: Estimate;
  /** By bucket of the series, over the crew's hours in it: people engaged and people there, on average; `n` is 0 where it has none. Then person-hours of overtime. */
  readonly series: {
    readonly engaged: readonly Estimate[];
    readonly present: readonly Estimate[];
    readonly overtimeHours: readonly Estimate[];
  };
}

/** A rule for overtime, in the order of the calendars. */
export interface OvertimeResult {
  readonly name: string;
  /** Weeks or days in which it was looked at, and share of them in which its hours were worked. */
  readonly looked: Estimate;
  readonly worked: Estimate;
  /** Hours of the clock worked by it in each bucket of the series. */
  readonly hours: readonly Estimate[];
}

/** A planned shutdown of a calendar, ISO dates, both ends included. */
export interface ShutdownResult {
  readonly calendar: string;
  readonly from: string;
  readonly to: string;
  readonly note: string | null;
}

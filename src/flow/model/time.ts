/** Minutes of a day of 24 hours. */
export const MINUTES_PER_DAY = 1440;

/** How many of sorted times meet a condition that is true up to some time. */
export function countWhere(times: ArrayLike<number>, is: (time: number) => boolean): number {
  let low = 0,
    high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (is(times[middle])) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Sorted, disjoint windows of working time; `before[i]` is the working time before window i; `shiftEnd[i]`
 * the end of the shift that window i belongs to, with any overtime of it. `overtime[i]`: 1 for overtime.
 * `rules[i]`: bits of the overtime rules that all have to ask for window i; where it is 0, it is always
 * worked.
 */
export interface CalendarColumns {
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly before: Float64Array;
  readonly shiftEnd: Float64Array;
  readonly overtime: Uint8Array;
  readonly rules: Int32Array;
}

/** A rule that is looked at in each period (week or day) and has its windows worked when units are behind. */
export interface OvertimeColumns {
  /** Calendar and zone, and what is asked, for reports. */
  readonly name: string;
  /** Calendar that has its hours. */
  readonly calendar: number;
  /** Sorted: when it is looked at; period p ends where the next begins (length periods + 1). */
  readonly periods: Float64Array;
  /** When units should be out: sorted, or where it goes by due dates, by build number - 1. */
  readonly due: Float64Array;
  /** By due dates: units that are out before they are due make up for none that is not. */
  readonly byDueDates: boolean;
  /** Out: past the end of this step; -1: shipped or scrapped. */
  readonly step: number;
  /** Worked when at least so many units are due but not out. */
  readonly behind: number;
}

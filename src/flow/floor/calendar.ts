import type { CalendarColumns } from '../model/time.js';

/**
 * Rounding allowance, minutes (about half a microsecond): work that ends this little after a window's end
 * ends at it. Times run to some 1e6 minutes, where a double's step is 1e-10, so sums of a few terms stay well
 * inside.
 */
const ROUNDING = 1e-8;
/** Windows that are tried one by one ahead of a search. */
const NEAR = 3;
/** So many windows back is another time, as at the start of the next replication: the guess follows. */
const LONG_AGO = 50;

/**
 * Answers questions about working time, O(log n) in the number of windows, without allocation. Windows are
 * half open: a window's start is working time, its end is not. Windows of no length are overtime that is not
 * worked. All times are minutes since the programme's start; answers beyond the last window are `Infinity`.
 */
export class Calendar {
  readonly start: Float64Array;
  /** Of a window that is not worked, its start. */
  readonly end: Float64Array;
  private readonly before: Float64Array;
  private readonly shiftEnd: Float64Array;
  private readonly count: number;
  /** First window of the shift after window i's; `count` for the last shift. */
  private readonly nextShift: Int32Array;
  /** Working time from window i's start to the end of its shift. */
  private readonly restOfShift: Float64Array;
  /** Longest `restOfShift` of window i and all later ones. */
  private readonly longestFrom: Float64Array;
  /** Index last found: a guess for the next search, never an influence on its result. */
  private guess = 0;

  constructor(columns: CalendarColumns) {
    this.start = columns.start;
    this.end = columns.end;
    this.before = columns.before;
    this.shiftEnd = columns.shiftEnd;
    const n = (this.count = this.start.length);
    this.nextShift = new Int32Array(n);
    this.restOfShift = new Float64Array(n);
    this.longestFrom = new Float64Array(n);
    this.sumUpShifts();
  }

  /** The ends of windows were changed: all sums are made anew. */
  refresh(): void {
    for (let i = 1; i < this.count; i++)
      this.before[i] = this.before[i - 1] + (this.end[i - 1] - this.start[i - 1]);
    this.sumUpShifts();
  }

  private sumUpShifts(): void {
    const n = this.count;
    for (let i = n - 1; i >= 0; i--) {
      const length = this.end[i] - this.start[i];
      const goesOn = i + 1 < n && this.shiftEnd[i + 1] === this.shiftEnd[i];
      this.nextShift[i] = goesOn ? this.nextShift[i + 1] : i + 1;
      this.restOfShift[i] = goesOn ? length + this.restOfShift[i + 1] : length;
      this.longestFrom[i] =
        i + 1 < n ? Math.max(this.restOfShift[i], this.longestFrom[i + 1]) : this.restOfShift[i];
    }
  }

  /** Working minutes in [from, to]; 0 where `to` is at or before `from`. */
  worked(from: number, to: number): number {
    if (!(to > from)) return 0;
    const i = this.windowAt(from);
    const firstEnd = i < 0 ? -Infinity : this.end[i];
    if (to <= firstEnd) return to - from;
    const inFirst = from < firstEnd ? firstEnd - from : 0;
    const j = this.windowAt(to);
    if (j <= i) return inFirst;
    const last = this.end[j];
    return inFirst + (this.before[j] - this.before[i + 1]) + ((to < last ? to : last) - this.start[j]);
  }

  /**
   * The earliest time at which `minutes` of working time have passed since `from`; `from` itself for 0
   * minutes. Work that ends exactly with a window ends there, not at the next start. `Infinity` beyond the
   * last window.
   */
  advance(from: number, minutes: number): number {
    if (minutes <= 0) return from;
    const i = this.windowAt(from);
    let rest = minutes;
    if (i >= 0 && from < this.end[i]) {
      const end = this.end[i];
      rest = minutes - (end - from);
      if (rest <= 0) return from + minutes;
      if (rest <= ROUNDING) return end;
    }
    return this.fromWindow(i + 1, rest);
  }

  /**
   * The earliest time from `from` at which `minutes` of work can begin so that they end in the shift they
   * begin in (windows with the same `shiftEnd` are one shift); `Infinity` if no later shift is long enough.
   * Shifts that are too short are passed over one by one.
   */
  startInOneShift(from: number, minutes: number): number {
    if (minutes <= 0) return from;
    let i = this.windowAt(from);
    if (i >= 0 && from < this.end[i]) {
      const rest = this.restOfShift[i] - (from - this.start[i]);
      if (minutes <= rest + ROUNDING) return from;
      i = this.nextShift[i];
    } else {
      i++;
    }
    while (i < this.count && minutes <= this.longestFrom[i] + ROUNDING) {
      if (minutes <= this.restOfShift[i] + ROUNDING) return this.start[i];
      i = this.nextShift[i];
    }
    return Infinity;
  }

  /**
   * `from` if it is in working time, the very end of a window included, else the start of the next one;
   * `Infinity` beyond the last.
   */
  nextAttended(from: number): number {
    const i = this.windowAt(from);
    let last = i;
    while (last >= 0 && this.end[last] === this.start[last]) last--;
    return last >= 0 && from <= this.end[last] + ROUNDING ? from : this.startAfter(i);
  }

  /** `from` if it is in working time, else the start of the next; `Infinity` beyond the last. */
  nextWorking(from: number): number {
    const i = this.windowAt(from);
    return i >= 0 && from < this.end[i] ? from : this.startAfter(i);
  }

  /** Start of the first worked window after window i. */
  private startAfter(i: number): number {
    for (let next = i + 1; next < this.count; next++)
      if (this.end[next] > this.start[next]) return this.start[next];
    return Infinity;
  }

  /** End of `minutes` (> 0) of work begun at the start of window `first`. */
  private fromWindow(first: number, minutes: number): number {
    const { before, start, end, count } = this;
    if (first >= count) return Infinity;
    const target = before[first] + minutes;
    const reach = target - ROUNDING;
    // The last window that begins before the target: one of the next few, as a rule.
    let low = first;
    for (let near = 0; near < NEAR && low + 1 < count && before[low + 1] < reach; near++) low++;
    if (low === first + NEAR) {
      let high = count - 1;
      while (low < high) {
        const middle = (low + high + 1) >>> 1;
        if (before[middle] < reach) low = middle;
        else high = middle - 1;
      }
    }
    const at = start[low] + (target - before[low]);
    if (at <= end[low]) return at;
    return at <= end[low] + 2 * ROUNDING ? end[low] : Infinity;
  }

  /** The last window that starts at or before `at`; -1 if there is none. */
  private windowAt(at: number): number {
    const { start, count } = this;
    const guess = this.guess;
    if (guess >= count) return -1;
    if (start[guess] <= at) {
      if (guess + 1 >= count || start[guess + 1] > at) return guess;
      if (guess + 2 >= count || start[guess + 2] > at) return (this.guess = guess + 1);
      return (this.guess = this.lastStarted(guess + 2, count - 1, at));
    }
    // A time shortly before the guess, which stays where time is.
    if (guess > 0 && start[guess - 1] <= at) return guess - 1;
    if (guess > 1 && start[guess - 2] <= at) return guess - 2;
    const found = this.lastStarted(-1, guess - 1, at);
    if (found < guess - LONG_AGO) this.guess = Math.max(0, found);
    return found;
  }

  /** The same, known to lie from `low` to `high`. */
  private lastStarted(first: number, last: number, at: number): number {
    let low = first;
    let high = last;
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if (this.start[middle] <= at) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** The calendar of an id; null for -1: always. */
export const calendarAt = (calendars: readonly Calendar[], id: number): Calendar | null =>
  id < 0 ? null : calendars[id];

import type { ToCome } from '../../study/asked.js';

/** Seconds that are looked back over, and between two marks. */
const LOOK_BACK = 60,
  BETWEEN_MARKS = 0.25;
/** So many replications tell a pace; where one takes longer than SLOW seconds, so many seconds do. */
const ENOUGH = 5,
  SLOW = 2,
  A_WHILE = 2;

interface Mark {
  readonly done: number;
  readonly at: number;
}

/**
 * How fast replications end: over the later half of the last minute, since the first ones are slow, while
 * threads start, or came from a journal at once. Times are seconds of any clock.
 */
export class Pace {
  private marks: Mark[] = [];
  private before: number | undefined;

  /** So many replications are done, with the parts of those under way. */
  mark(done: number, at: number): void {
    const earlier = this.marks.at(-2);
    // The last one moves on until the next is due.
    if (earlier !== undefined && at - earlier.at < BETWEEN_MARKS) this.marks.pop();
    this.marks.push({ done, at });
    while ((this.marks[1]?.at ?? at) < at - LOOK_BACK) this.marks.shift();
  }

  /** A pause comes, which is no part of the pace; the old one counts until the new one is seen. */
  pause(): void {
    this.before = this.perSecond;
    this.marks = [];
  }

  /** Replications a second, by all threads together; undefined where that is not seen yet. */
  get perSecond(): number | undefined {
    const [first] = this.marks,
      last = this.marks.at(-1);
    if (first === undefined || last === undefined) return this.before;
    const isEnough = last.done - first.done >= ENOUGH || (this.isSlow && last.at - first.at >= A_WHILE);
    if (!isEnough) return this.before;
    const middle = (first.at + last.at) / 2,
      from = this.marks.findLast(({ at }) => at <= middle) ?? first;
    return last.done > from.done && last.at > from.at
      ? (last.done - from.done) / (last.at - from.at)
      : this.before;
  }

  /** Whether one replication alone takes a while. */
  get isSlow(): boolean {
    const [first] = this.marks,
      last = this.marks.at(-1);
    return first !== undefined && last !== undefined && last.at - first.at > SLOW * (last.done - first.done);
  }
}

/** `40 s`, `3 min`, `2 h 10 min`: as exact as a guess of it can be. */
export function inWords(seconds: number): string {
  if (seconds < 55) return `${Math.max(5, 5 * Math.round(seconds / 5))} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const rounded = 5 * Math.round(minutes / 5),
    rest = rounded % 60;
  return `${Math.floor(rounded / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

/** How long the rest takes: `about 3 min`, `8 to 30 min`, `50 s to 2 min`, `at least 3 min`. */
export function timeLeft({ least, most }: ToCome, done: number, perSecond: number): string {
  const time = (total: number): string => inWords(Math.max(0, total - done) / perSecond);
  const low = time(least);
  if (most === null) return `at least ${low}`;
  const high = time(most);
  if (low === high) return `about ${low}`;
  return unitOf(low) !== undefined && unitOf(low) === unitOf(high)
    ? `${parseInt(low, 10)} to ${high}`
    : `${low} to ${high}`;
}

/** Of a time in one unit. */
const unitOf = (time: string): string | undefined => /^\d+ (\S+)$/.exec(time)?.[1];

/** `2630 to 10520`, `at least 300`. */
export const howMany = ({ least, most }: ToCome): string =>
  most === null ? `at least ${least}` : most === least ? String(least) : `${least} to ${most}`;

/** `12 a second`, `one in 3 s`, `one in 2 min`. */
export const atPace = (perSecond: number): string =>
  perSecond >= 1
    ? `${Math.round(perSecond)} a second`
    : `one in ${perSecond > 1 / 55 ? `${Math.round(1 / perSecond)} s` : inWords(1 / perSecond)}`;

import { countWhere } from '../../../flow/model/time.js';
import { type Frame, minutesBetween } from './frame.js';

/** Hours of a calendar that a rule decides on, in the model's time; whether somebody worked in them. */
interface Ruled {
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly isWorked: Uint8Array;
}

/**
 * Working minutes where a rule decides on overtime: such hours count if something begins or ends in them, as
 * no log says whether they were worked.
 */
export class OvertimeSeen {
  /** By calendar; undefined where no rule decides. */
  private readonly ruled: readonly (Ruled | undefined)[];

  constructor(private readonly frame: Frame) {
    this.ruled = frame.model.calendars.map(({ start, end, rules }) => {
      const by = (_: number, w: number): boolean => rules[w] !== 0;
      return rules.some((rule) => rule !== 0)
        ? {
            start: start.filter(by),
            end: end.filter(by),
            isWorked: new Uint8Array(start.filter(by).length),
          }
        : undefined;
    });
  }

  /** Something begins or ends that goes by the calendar. */
  note(calendar: number, at: number): void {
    const ruled = this.ruled[calendar];
    if (ruled === undefined) return;
    const now = at - this.frame.origin,
      w = countWhere(ruled.start, (start) => start <= now) - 1;
    if (w >= 0 && now <= (ruled.end[w] ?? 0)) ruled.isWorked[w] = 1;
  }

  /** Minutes of a calendar (-1: of the clock) between two times of the log, the later one the last noted. */
  minutes(calendar: number, from: number, to: number): number {
    const all = minutesBetween(this.frame, calendar, from, to),
      ruled = this.ruled[calendar];
    if (ruled === undefined) return all;
    const { start, end, isWorked } = ruled,
      since = from - this.frame.origin,
      until = to - this.frame.origin;
    let out = 0;
    for (let w = countWhere(end, (time) => time <= since); w < start.length && (start[w] ?? 0) < until; w++)
      if (isWorked[w] === 0) out += Math.min(until, end[w] ?? 0) - Math.max(since, start[w] ?? 0);
    return all - out;
  }
}

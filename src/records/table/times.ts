import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayOf, isDate } from './civil.js';

/** What a date with strokes begins with: `08/16/2027`, `16/08/2027`. */
export type StrokeOrder = 'month' | 'day';

/** Seconds of a day and their parts: of UTC, or of a wall clock where no offset is written. */
export interface TimeRead {
  /** Minutes since 1970-01-01T00:00, of UTC or of the wall clock. */
  readonly minutes: number;
  readonly isLocal: boolean;
}

/** Parts of a second that are told apart: microseconds. */
export const PER_MINUTE = 60_000_000;

/**
 * Reads dates with a time of day: ISO 8601 (`2027-08-16T06:00:00+02:00`, `2027-08-16 06:00`), `16.08.2027
 * 06:00`, which is always day first, and dates with strokes, of which the file must say which comes first.
 * Seconds may have parts behind a point or a comma; more than six digits are rounded.
 */
export class TimeReader {
  /** Undefined until dates with strokes are known to begin with the month or the day. */
  strokes: StrokeOrder | undefined;

  /** Undefined: it is no time, or none of which the order of day and month is known. */
  read(text: string): TimeRead | undefined {
    const fourth = text.charCodeAt(4);
    return fourth === 45 && text.charCodeAt(7) === 45 ? iso(text) : this.other(text);
  }

  private other(text: string): TimeRead | undefined {
    const [, first, mark, second, year, clock] =
      /^(\d{1,2})([./])(\d{1,2})\2(\d{4})[ T,]+(.+)$/.exec(text) ?? [];
    if (first === undefined || second === undefined || year === undefined || clock === undefined)
      return undefined;
    if (mark === '/' && this.strokes === undefined) return undefined;
    const isMonthFirst = mark === '/' && this.strokes === 'month';
    return together(
      Number(year),
      Number(isMonthFirst ? first : second),
      Number(isMonthFirst ? second : first),
      clock,
    );
  }
}

/** What a date with strokes proves of the order: one of its numbers is no month. */
export function strokesOf(text: string): { readonly proves: StrokeOrder | undefined } | undefined {
  const [, first, second] = /^(\d{1,2})\/(\d{1,2})\/\d{4}[ T,]/.exec(text) ?? [];
  if (first === undefined) return undefined;
  return { proves: Number(first) > 12 ? 'day' : Number(second) > 12 ? 'month' : undefined };
}

function iso(text: string): TimeRead | undefined {
  const year = digits(text, 0, 4),
    month = digits(text, 5, 2),
    day = digits(text, 8, 2),
    between = text.charCodeAt(10);
  // T, t or a space.
  if (between !== 84 && between !== 116 && between !== 32) return undefined;
  // The commonest form by itself: 2027-08-16T06:00:00 and what follows.
  const hour = digits(text, 11, 2),
    minute = digits(text, 14, 2);
  if (!(year >= 0) || text.charCodeAt(13) !== 58 || !(hour <= 23) || !(minute <= 59))
    return together(year, month, day, text.slice(11));
  if (!isDate(year, month, day)) return undefined;
  return timeOf(dayOf(year, month, day), hour, minute, text, 16);
}

/** The clock may have hours of one digit; AM and PM. */
function together(year: number, month: number, day: number, clock: string): TimeRead | undefined {
  const [, hour, minute, rest] = /^(\d{1,2}):(\d{2})(.*)$/.exec(clock) ?? [];
  if (hour === undefined || minute === undefined || rest === undefined || !isDate(year, month, day))
    return undefined;
  const [, seconds, half] = /^(.*?)\s*([AaPp])\.?[Mm]\.?$/.exec(rest) ?? [],
    written = Number(hour);
  if (half === undefined)
    return written > 23 ? undefined : timeOf(dayOf(year, month, day), written, Number(minute), rest, 0);
  if (written < 1 || written > 12) return undefined;
  const hours = (written % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return timeOf(dayOf(year, month, day), hours, Number(minute), seconds ?? '', 0);
}

/** From hour and minute on: seconds, their parts, and the offset, from position `at` of the text on. */
function timeOf(day: number, hour: number, minute: number, text: string, at: number): TimeRead | undefined {
  if (minute > 59) return undefined;
  let to = at,
    micros = 0;
  if (text.charCodeAt(to) === 58) {
    const seconds = digits(text, to + 1, 2);
    if (!(seconds <= 59)) return undefined;
    micros = seconds * 1_000_000;
    to += 3;
    const mark = text.charCodeAt(to);
    if (mark === 46 || mark === 44) {
      const first = ++to;
      while (isDigit(text.charCodeAt(to))) to++;
      if (to === first) return undefined;
      micros += Math.round(Number(`0.${text.slice(first, to)}`) * 1_000_000);
    }
  }
  const minutes = day * MINUTES_PER_DAY + hour * 60 + minute;
  if (to === text.length) return { minutes: exactly(minutes, micros), isLocal: true };
  const offset = offsetOf(text, to);
  return Number.isNaN(offset) ? undefined : { minutes: exactly(minutes - offset, micros), isLocal: false };
}

/** One rounding only, so that it is written again as it was read. */
const exactly = (minutes: number, micros: number): number =>
  micros === 0 ? minutes : (minutes * PER_MINUTE + micros) / PER_MINUTE;

/** `Z`, `+02:00`, `+0200`, `+02`, minutes; NaN where it is none of them. */
function offsetOf(text: string, from: number): number {
  const at = text.charCodeAt(from) === 32 ? from + 1 : from,
    sign = text.charCodeAt(at);
  if ((sign === 90 || sign === 122) && at + 1 === text.length) return 0;
  if (sign !== 43 && sign !== 45) return NaN;
  const hours = digits(text, at + 1, 2),
    colon = text.charCodeAt(at + 3) === 58 ? 1 : 0,
    end = at + 3,
    minutes = end === text.length ? 0 : digits(text, end + colon, 2);
  if (end !== text.length && end + colon + 2 !== text.length) return NaN;
  if (!(hours <= 23) || !(minutes <= 59)) return NaN;
  return (sign === 45 ? -1 : 1) * (hours * 60 + minutes);
}

const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** NaN where there is another character. */
function digits(text: string, from: number, count: number): number {
  let value = 0;
  for (let i = from; i < from + count; i++) {
    const code = text.charCodeAt(i);
    if (!(code >= 48 && code <= 57)) return NaN;
    value = value * 10 + code - 48;
  }
  return value;
}

import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { Cells } from './cells.js';
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
    const codes = new TextEncoder().encode(text);
    return isIso(codes, 0, codes.length) ? iso(codes, 0, codes.length) : this.other(text);
  }

  /** The same of the cell of a row. */
  readCell(cells: Cells, column: number): TimeRead | undefined {
    const read = cells.bytesAt(column, isoIn);
    return read ?? this.read(cells.at(column));
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

const DASH = 45,
  COLON = 58;

const isIso = (codes: Uint8Array, from: number, to: number): boolean =>
  to - from > 10 && codes[from + 4] === DASH && codes[from + 7] === DASH;

const isoIn = (codes: Uint8Array, from: number, to: number): TimeRead | undefined =>
  isIso(codes, from, to) ? iso(codes, from, to) : undefined;

function iso(codes: Uint8Array, from: number, to: number): TimeRead | undefined {
  const year = digits(codes, from, 4, to),
    month = digits(codes, from + 5, 2, to),
    day = digits(codes, from + 8, 2, to),
    between = codes[from + 10];
  // T, t or a space.
  if (between !== 84 && between !== 116 && between !== 32) return undefined;
  // The commonest form by itself: 2027-08-16T06:00:00 and what follows.
  const hour = digits(codes, from + 11, 2, to),
    minute = digits(codes, from + 14, 2, to);
  if (!(year >= 0) || codes[from + 13] !== COLON || !(hour <= 23) || !(minute <= 59))
    return together(year, month, day, new TextDecoder().decode(codes.subarray(from + 11, to)));
  if (!isDate(year, month, day)) return undefined;
  return timeOf(dayOf(year, month, day), hour, minute, codes, from + 16, to);
}

/** The clock may have hours of one digit; AM and PM. */
function together(year: number, month: number, day: number, clock: string): TimeRead | undefined {
  const [, hour, minute, rest] = /^(\d{1,2}):(\d{2})(.*)$/.exec(clock) ?? [];
  if (hour === undefined || minute === undefined || rest === undefined || !isDate(year, month, day))
    return undefined;
  const [, seconds, half] = /^(.*?)\s*([AaPp])\.?[Mm]\.?$/.exec(rest) ?? [],
    written = Number(hour);
  if (half === undefined)
    return written > 23 ? undefined : withText(dayOf(year, month, day), written, Number(minute), rest);
  if (written < 1 || written > 12) return undefined;
  const hours = (written % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return withText(dayOf(year, month, day), hours, Number(minute), seconds ?? '');
}

function withText(day: number, hour: number, minute: number, text: string): TimeRead | undefined {
  const codes = new TextEncoder().encode(text);
  return timeOf(day, hour, minute, codes, 0, codes.length);
}

/** From hour and minute on: seconds, their parts, and the offset, from `at` to `to`. */
function timeOf(
  day: number,
  hour: number,
  minute: number,
  codes: Uint8Array,
  at: number,
  to: number,
): TimeRead | undefined {
  if (minute > 59) return undefined;
  let next = at,
    micros = 0;
  if (next < to && codes[next] === COLON) {
    const seconds = digits(codes, next + 1, 2, to);
    if (!(seconds <= 59)) return undefined;
    micros = seconds * 1_000_000;
    next += 3;
    // A point or a comma.
    if (next < to && (codes[next] === 46 || codes[next] === 44)) {
      const first = next + 1;
      let parts = 0;
      for (next = first; next < to && isDigit(codes[next] ?? 0); next++)
        if (next - first < DIGITS) parts = parts * 10 + (codes[next] ?? 0) - ZERO;
      if (next === first) return undefined;
      const count = Math.min(DIGITS, next - first);
      micros += Math.round(parts * (POWERS[DIGITS - count] ?? 1) * MICROS_OF_LAST);
    }
  }
  const minutes = day * MINUTES_PER_DAY + hour * 60 + minute;
  if (next === to) return { minutes: exactly(minutes, micros), isLocal: true };
  const offset = offsetOf(codes, next, to);
  return Number.isNaN(offset) ? undefined : { minutes: exactly(minutes - offset, micros), isLocal: false };
}

/** One rounding only, so that it is written again as it was read. */
const exactly = (minutes: number, micros: number): number =>
  micros === 0 ? minutes : (minutes * PER_MINUTE + micros) / PER_MINUTE;

/** `Z`, `+02:00`, `+0200`, `+02`, minutes; NaN where it is none of them. */
function offsetOf(codes: Uint8Array, from: number, to: number): number {
  const at = codes[from] === 32 ? from + 1 : from,
    sign = codes[at];
  if ((sign === 90 || sign === 122) && at + 1 === to) return 0;
  if (sign !== 43 && sign !== DASH) return NaN;
  const hours = digits(codes, at + 1, 2, to),
    end = at + 3,
    colon = end < to && codes[end] === COLON ? 1 : 0,
    minutes = end === to ? 0 : digits(codes, end + colon, 2, to);
  if (end !== to && end + colon + 2 !== to) return NaN;
  if (!(hours <= 23) || !(minutes <= 59)) return NaN;
  return (sign === DASH ? -1 : 1) * (hours * 60 + minutes);
}

const ZERO = 48,
  /** Digits of parts of a second that are read; the last of them is a tenth of a microsecond. */
  DIGITS = 7,
  MICROS_OF_LAST = 0.1,
  POWERS = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];

const isDigit = (code: number): boolean => code >= ZERO && code <= ZERO + 9;

/** NaN where there is another character, or the end. */
function digits(codes: Uint8Array, from: number, count: number, to: number): number {
  if (from + count > to) return NaN;
  let value = 0;
  for (let i = from; i < from + count; i++) {
    const code = codes[i] ?? 0;
    if (!isDigit(code)) return NaN;
    value = value * 10 + code - ZERO;
  }
  return value;
}

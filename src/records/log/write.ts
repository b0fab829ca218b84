import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate } from '../../scenario/calendar/date.js';
import { PER_MINUTE } from '../table/times.js';
import { EVENT_COLUMNS } from './columns.js';
import type { FloorEvent } from './event.js';
import { listText, valuesText } from './lists.js';

/** Local minus UTC at an instant, minutes. */
export type OffsetAt = (instant: number) => number;

/** The head of a floor log. */
export const HEAD = EVENT_COLUMNS.join(',');

/** The lines of a floor log in CSV (RFC 4180), without their line ends, the head first. */
export function* logLines(events: Iterable<FloorEvent>, offsetAt: OffsetAt = () => 0): Generator<string> {
  yield HEAD;
  for (const { at, kind, object, type, step, station, others, values } of events)
    yield [isoTime(at, offsetAt(at)), kind, object, type, step, station, listText(others), valuesText(values)]
      .map(cell)
      .join(',');
}

/**
 * `2027-08-16T06:00:00+02:00`, with parts of a second where there are any, to the microsecond: read again it
 * is the same number of minutes, if it was read or written once before.
 */
export function isoTime(minutes: number, offset: number): string {
  const micros = Math.round((minutes + offset) * PER_MINUTE),
    whole = Math.floor(micros / PER_MINUTE),
    parts = micros - whole * PER_MINUTE,
    day = Math.floor(whole / MINUTES_PER_DAY),
    minute = whole - day * MINUTES_PER_DAY,
    seconds = Math.floor(parts / 1_000_000),
    rest = parts - seconds * 1_000_000,
    fraction = rest === 0 ? '' : `.${String(rest).padStart(6, '0').replace(/0+$/, '')}`;
  return `${isoDate(day)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:${two(seconds)}${fraction}${offsetText(offset)}`;
}

/** To the microsecond, as it is written. */
export const asWritten = (minutes: number): number => {
  const whole = Math.floor(minutes),
    micros = Math.round(minutes * PER_MINUTE) - whole * PER_MINUTE;
  return micros === 0 ? whole : (whole * PER_MINUTE + micros) / PER_MINUTE;
};

const two = (number: number): string => String(number).padStart(2, '0');

/** Offsets of some zones of old had seconds; they are written to the minute, and the time by them too. */
function offsetText(offset: number): string {
  if (offset === 0) return 'Z';
  const size = Math.abs(offset);
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** In quotes where it has to be: also with spaces around it, which are cut off otherwise. */
const cell = (text: string): string =>
  /[",;\t\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;

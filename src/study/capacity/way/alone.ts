import type { Calendar } from '../../../flow/floor/calendar.js';
import { countWhere } from '../../../flow/model/time.js';

/**
 * A piece of a unit's way: minutes of a calendar (null: of the clock), or the wait for the next of sorted
 * departures, which `share` of the units have to make.
 */
export type Leg =
  | { readonly calendar: Calendar | null; readonly minutes: number }
  | { readonly departures: Float64Array; readonly share: number };

/**
 * Units sent on their way, evenly over the time in which they can begin: by multiples of the golden ratio, as
 * even steps could keep step with the days.
 */
const SENT = 2000,
  GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Mean time that a unit takes over its legs when nothing else is in its way, in minutes of the calendar
 * `of`. Units begin evenly over the working time of `begins` in [0, span]. Work of w minutes that begins
 * evenly takes w T / W minutes of the clock, with W of T minutes worked: a gap of the calendar is met with
 * chance w / W each (own arithmetic). NaN where none comes to the end of its way.
 */
export function meanTimeAlone(
  legs: readonly Leg[],
  begins: Calendar | null,
  span: number,
  of: Calendar | null,
): number {
  const working = begins === null ? span : begins.worked(0, span);
  let sum = 0,
    arrived = 0;
  for (let n = 0; n < SENT; n++) {
    const at = advance(begins, 0, (((n + 0.5) * GOLDEN) % 1) * working),
      end = legs.reduce(goOn, at);
    // Beyond the end of calendars or timetables nothing is known.
    if (end === Infinity) continue;
    sum += of === null ? end - at : of.worked(at, end);
    arrived++;
  }
  return arrived === 0 ? NaN : sum / arrived;
}

function goOn(at: number, leg: Leg): number {
  if (!('departures' in leg)) return advance(leg.calendar, at, leg.minutes);
  const { departures, share } = leg,
    next = departures[countWhere(departures, (time) => time < at)] ?? Infinity;
  return at + share * (next - at);
}

const advance = (calendar: Calendar | null, at: number, minutes: number): number =>
  calendar === null ? at + minutes : calendar.advance(at, minutes);

/**
 * Units that come one by one, `apart` minutes from each other, and go on together: with `most` of them, or
 * once there are `least` and the first has waited `longest` minutes. How many go, and their mean wait.
 */
export function load(
  apart: number,
  least: number,
  most: number,
  longest: number,
): { readonly together: number; readonly wait: number } {
  const together = Math.min(most, Math.max(least, 1 + Math.floor(longest / apart))),
    leaves = together === most ? (most - 1) * apart : Math.max(longest, (least - 1) * apart);
  return { together, wait: leaves - ((together - 1) * apart) / 2 };
}

import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import type { LeadTime } from '../types/possible.js';
import { readable } from '../values/scalars.js';

const WANTED = 'a number of days, weeks or months, such as "6 weeks" or "5 months"';
const FORM = /^(\d{1,4}) *(day|week|month)s?$/;

/** `5 months`; undefined for anything else, and for none of them. */
export function leadTimeOf(text: string): LeadTime | undefined {
  const [, count, unit] = FORM.exec(text.trim()) ?? [];
  return count === undefined || Number(count) === 0
    ? undefined
    : { count: Number(count), unit: unit as LeadTime['unit'] };
}

export const leadTime = readable(z.string({ error: WANTED }), leadTimeOf, WANTED);

/** `5 months`, `1 week`. */
export const leadTimeText = ({ count, unit }: LeadTime): string =>
  `${count} ${unit}${count === 1 ? '' : 's'}`;

/** The first day on which it is there, ISO, if it is ordered on an ISO date. */
export const readyOn = (ordered: string, { count, unit }: LeadTime): string =>
  Temporal.PlainDate.from(ordered)
    .add({ [`${unit}s`]: count })
    .toString();

/** The longer of two, as they are from a day on; none is the shortest. */
export function longerOf(
  ordered: string,
  one: LeadTime | undefined,
  other: LeadTime | undefined,
): LeadTime | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return readyOn(ordered, one) >= readyOn(ordered, other) ? one : other;
}

/** The last day, ISO, on which it can be ordered to be there on an ISO date. */
export function orderBy(there: string, { count, unit }: LeadTime): string {
  let day = Temporal.PlainDate.from(there).subtract({ [`${unit}s`]: count });
  // A month before the 31st is the 30th, from which a month on it is the 30th again: later would do.
  while (readyOn(day.add({ days: 1 }).toString(), { count, unit }) <= there) day = day.add({ days: 1 });
  while (readyOn(day.toString(), { count, unit }) > there) day = day.subtract({ days: 1 });
  return day.toString();
}

import type { DateQuantile } from '../../study/programme/dates.js';
import { dateText } from './first.js';

/**
 * By when, with a chance of one half and of four in five: `by 27 April 2028 at even odds, by 1 May 2028 at
 * four in five`; null where no date is known.
 */
export function lastUnitText(dates: readonly DateQuantile[]): string | null {
  const [half, most] = [0.5, 0.8].map((share) => dates.find(({ p }) => p === share)?.date ?? null);
  if (half == null) return null;
  return (
    `by ${dateText(half)} at ${half === most ? 'four in five' : 'even odds'}` +
    (most == null || half === most ? '' : `, by ${dateText(most)} at four in five`)
  );
}

/** `; planned: 15 April 2028, kept at four in five`; '' where nothing is planned. */
export function planSays(plannedEnd: string | null, dates: readonly DateQuantile[]): string {
  if (plannedEnd === null) return '';
  const [half, most] = [0.5, 0.8].map((share) => dates.find(({ p }) => p === share)?.date ?? null),
    isKept = (date: string | null | undefined): boolean => (date ?? '9') <= plannedEnd;
  const kept = isKept(most)
    ? ', kept at four in five'
    : isKept(half)
      ? ', kept at even odds'
      : half == null
        ? ''
        : ', more likely missed';
  return `; planned: ${dateText(plannedEnd)}${kept}`;
}

import type { DateQuantile } from '../../study/programme/dates.js';
import { dateText } from './first.js';

/**
 * `by 27 April 2028 in half of the simulated builds, by 1 May 2028 in four of five`; null where no date is
 * known.
 */
export function lastUnitText(dates: readonly DateQuantile[]): string | null {
  const [half, most] = [0.5, 0.8].map((share) => dates.find(({ p }) => p === share)?.date ?? null);
  if (half == null) return null;
  return (
    `by ${dateText(half)} in ${half === most ? 'four of five' : 'half of the'} simulated builds` +
    (most == null || half === most ? '' : `, by ${dateText(most)} in four of five`)
  );
}

/** `; the plan says by 15 April 2028, kept in four of five`; '' where it does not say. */
export function planSays(plannedEnd: string | null, dates: readonly DateQuantile[]): string {
  if (plannedEnd === null) return '';
  const isKept = (share: number): boolean => (dates.find(({ p }) => p === share)?.date ?? '9') <= plannedEnd;
  const kept = isKept(0.8) ? ', kept in four of five' : isKept(0.5) ? ', kept in half of them' : '';
  return `; the plan says by ${dateText(plannedEnd)}${kept}`;
}

import type { DateQuantile } from '../../../study/programme/dates.js';
import { dateBehind, dateText, type Line, NO_LINE, sentences } from '../first.js';

const EVEN = 'at even odds',
  MOST = 'four times in five';

type OutBy = Pick<DateQuantile, 'p' | 'date'>;

/** The days by which it is out at even odds and four times in five; null where one is not known. */
const daysOf = (dates: readonly OutBy[]): (string | null)[] =>
  [0.5, 0.8].map((share) => dates.find(({ p }) => p === share)?.date ?? null);

/** The surer of the two days with its odds: `1 May 2028, four times in five`; null where none is known. */
export function lastUnitText(dates: readonly OutBy[]): string | null {
  const [half, most] = daysOf(dates);
  if (half == null) return null;
  return most == null ? `${dateText(half)}, ${EVEN}` : `${dateText(most)}, ${MOST}`;
}

interface Beside {
  /** Of which build it is told: `at 3.4 a day`. */
  readonly of?: string;
  readonly plannedEnd: string | null;
  /** Of the build as it is, where another one is told. */
  readonly today?: readonly OutBy[];
}

/** By when the last unit is out, and by when it should be; nothing where no date is known. */
export function lastUnitLine(dates: readonly OutBy[], { of = '', plannedEnd, today = [] }: Beside): Line {
  const [half, most] = daysOf(dates),
    out = lastUnitText(dates),
    now = lastUnitText(today);
  if (half == null || out === null) return NO_LINE;
  const odds = most == null ? EVEN : MOST,
    planned = plannedEnd === null ? '' : `; planned ${dateBehind(plannedEnd, most ?? half)}`;
  return {
    brief: `${sentences('Last unit by', dateText(most ?? half), of)}, ${odds}${planned}.`,
    more: sentences(
      most == null
        ? ''
        : half === most
          ? 'That day is also the one at even odds.'
          : `${sentences('By', dateText(half), of)}, ${EVEN}.`,
      now === null ? '' : now === out ? 'Today it is the same.' : `Today: by ${now}.`,
      keptText(plannedEnd, dates),
    ),
  };
}

/** Whether the planned day is kept, by the days themselves; '' where nothing is planned. */
function keptText(plannedEnd: string | null, dates: readonly OutBy[]): string {
  if (plannedEnd === null) return '';
  const [half, most] = daysOf(dates),
    isKept = (date: string | null | undefined): boolean => (date ?? '9') <= plannedEnd;
  if (isKept(most)) return `So the plan is kept, ${MOST}.`;
  return isKept(half) ? `So the plan is kept ${EVEN}.` : 'So the plan is more likely missed.';
}

import type { Basis } from '../../scenario/types/scenario.js';
import { capital, count, exact, intervalName } from '../../study/format.js';

/** Said on every page: what an interval is of, and what it is not of. */
export const inputsNote = (level: number, builds: number): string =>
  `Intervals show how far chance inside the model moves the means ` +
  `(${builds < 2 ? 'none with 1 build' : `${intervalName(level)}, ${count(builds, 'build')}`}). They say ` +
  'nothing of wrong inputs, nor of how far single weeks or units spread. Work times, chances and prices ' +
  'come from the scenario and were not checked against records of real plants; if they are wrong, so is ' +
  'the answer.';

/** Why another page of the same scenario has a slightly different number. */
export const SAME_BASE =
  'Other studies of this scenario try other numbers of builds, or other weeks: what it ships as it is ' +
  'differs a little from page to page, within the intervals.';

/** Where the study does not know which values are guesses. */
export const sourcesElsewhere = (file: string): string =>
  `Which of its values are guesses is not listed here: rateproof simulate ${file} lists them.`;

/** Values on the page; the others stand in a table. */
const MOST = 10;

/** A value that was assumed. */
interface Assumed {
  readonly basis: Basis;
  readonly words: string;
  readonly value: string;
  readonly note?: string | null;
}

/** What was assumed, guesses first, a line each. */
export function valuesTold(said: readonly Assumed[]): string[] {
  const rank = { guess: 0, estimate: 1, measured: 2 } as const,
    sorted = [...said].sort((a, b) => rank[a.basis] - rank[b.basis]);
  return [
    ...sorted.slice(0, MOST).map(({ basis, words, value, note }) => {
      const why = note == null ? '' : ` (${note})`;
      return `${capital(basis)}: ${words}, ${valueTold(value)}${why}.`;
    }),
    ...(sorted.length > MOST
      ? [`And ${exact(sorted.length - MOST)} more: see the table of assumptions.`]
      : []),
  ];
}

/** Forms of a value as a scenario has them, and how one says them. */
const FORMS: readonly (readonly [form: RegExp, said: string])[] = [
  [/^\{ low: ([^,{}]+), likely: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $3, most likely $2'],
  [/^\{ low: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $2'],
  [/^\{ mean: ([^,{}]+), cv: ([^,{}]+) \}$/, '$1 on average, spread $2 of it'],
  [/^\{ exponential: \{ mean: ([^,{}]+) \} \}$/, '$1 on average, exponential'],
];

/** `30 min to 4 h, most likely 75 min`; a form that is not known as the scenario has it. */
export function valueTold(value: string): string {
  const [form, said] = FORMS.find(([each]) => each.test(value)) ?? [];
  return form === undefined || said === undefined ? value : value.replace(form, said);
}

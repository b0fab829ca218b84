import type { Basis, Measured } from '../../scenario/types/scenario.js';
import { capital, count, exact, intervalName, number } from '../../study/format.js';
import type { WeakestResult } from '../../study/reliefs/values/weakest.js';
import { columns, type PageTable } from '../columns.js';
import { valueTold } from '../first/figures.js';
import { difference, written } from '../sheets/cells.js';
import { behindIt } from '../tables/assumptions.js';

/** Said on every page: what an interval is of, and what it is not of. */
export const inputsNote = (level: number, builds: number, upTo = ''): string =>
  `Intervals show how far chance inside the model moves the means ` +
  `(${builds < 2 ? 'none with 1 build' : `${intervalName(level)}, ${upTo}${count(builds, 'build')}`}). ` +
  'They say nothing of wrong inputs, nor of how far single weeks or units spread. Work times, chances ' +
  'and prices come from the scenario and were not checked against records of real plants; if they are ' +
  'wrong, so is the answer.';

/** Why another page of the same scenario has a slightly different number. */
export const SAME_BASE =
  'Other studies of this scenario try other numbers of builds, or other weeks: what it ships as it is ' +
  'differs a little from page to page, within the intervals.';

/** Where the study does not know which values are guesses. */
export const sourcesElsewhere = (file: string): string =>
  `Which of its values are guesses is not listed here: rateproof simulate ${file} lists them.`;

/**
 * The guesses and estimates that were tried, either end, the one that matters most first.
 * @param of which build, where there are several
 */
export function guessesTable(found: WeakestResult | null, of = ''): PageTable {
  const [first] = found?.tried ?? [];
  return {
    id: 'guesses',
    title: 'Guesses and estimates tried',
    note:
      found === null
        ? ''
        : `${of === '' ? '' : `${of}. `}${exact(found.tried.length)} of ${exact(found.stated)} that are ` +
          `stated, those likeliest to matter, at either end of their range in ` +
          `${count(found.replications, 'replication')} with the same chance; units shipped a working day ` +
          'more' +
          (first?.ends[0]?.gain.low == null
            ? ''
            : `, in brackets ${intervalName(first.ends[0].gain.level)}, all to hold together`) +
          `. A difference below ${number(found.zone)} does not matter.`,
    ...columns(
      found?.tried.flatMap(({ ends, ...guess }) => ends.map((end) => ({ ...guess, ...end }))) ?? [],
      [
        ['What', 'words'],
        ['Basis', 'basis'],
        ['Now', ({ now }) => written(valueTold(now))],
        ['Tried', ({ value }) => written(valueTold(value))],
        ['A day more', ({ gain }) => difference(gain)],
      ],
    ),
  };
}

/** Values on the page; the others stand in a table. */
const MOST = 10;

/** A value that was assumed. */
interface Assumed {
  readonly basis: Basis;
  readonly words: string;
  readonly value: string;
  readonly note?: string | null;
  readonly measured?: Measured | undefined;
}

/** What was assumed, guesses first, a line each. */
export function valuesTold(said: readonly Assumed[]): string[] {
  const rank = { guess: 0, estimate: 1, measured: 2 } as const,
    sorted = [...said].sort((a, b) => rank[a.basis] - rank[b.basis]);
  return [
    ...sorted.slice(0, MOST).map(({ basis, words, value, note, measured }) => {
      const why = note == null ? '' : ` (${note})`,
        behind = measured === undefined ? '' : `; ${behindIt(measured)}`;
      return `${capital(basis)}: ${words}, ${valueTold(value)}${behind}${why}.`;
    }),
    ...(sorted.length > MOST
      ? [`And ${exact(sorted.length - MOST)} more: see the table of assumptions.`]
      : []),
  ];
}

import type { JudgedResult } from '../../study/constraint/results.js';
import { asEstimate, count, exact } from '../../study/format.js';
import type { BottleneckResult } from '../../study/sections/bottlenecks.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable } from '../columns.js';
import { percent } from '../sheets/cells.js';

/** What is the bottleneck of the moment for less of the time is left out. */
const LEAST_MOMENTARY = 0.001;

/**
 * Share of the time observed in which something was the bottleneck of the moment, alone or while that moved
 * on.
 */
export const momentaryTime = ({ sole, shifting }: BottleneckResult): number => sole.mean + shifting.mean;

/** Only the first replications are watched so closely. */
export const isFollowed = ({ sole }: BottleneckResult): boolean => sole.n > 0;

/** What was followed, the largest of the moment first. */
export const byMoment = ({ bottlenecks: all }: Pick<Results, 'bottlenecks'>): BottleneckResult[] =>
  all.filter(isFollowed).sort((a, b) => momentaryTime(b) - momentaryTime(a));

/** What was used, with the same over the whole run. */
export interface Used extends BottleneckResult {
  readonly whole: BottleneckResult | null;
}

/** The highest utilisation first, each with its row of the whole run. */
export function byUse(seen: readonly BottleneckResult[], whole: readonly BottleneckResult[]): Used[] {
  const keyOf = ({ kind, name, site }: BottleneckResult): string => JSON.stringify([kind, name, site]),
    rows = new Map(whole.map((row) => [keyOf(row), row]));
  return seen
    .map((row) => ({ ...row, whole: rows.get(keyOf(row)) ?? null }))
    .sort((a, b) => b.active.mean - a.active.mean);
}

const NAMES: readonly Column<BottleneckResult>[] = [
  ['Name', 'name'],
  ['Kind', 'kind'],
  ['Site', 'site'],
];

/** The columns of what is used most; `beside` stand behind the utilisation. */
export const usedColumns = (beside: readonly Column<Used>[] = []): Column<Used>[] => [
  ...NAMES,
  ['Used, %', 'active', percent],
  ...beside,
  ['Most used, % of replications', ({ share }) => percent(asEstimate(share))],
  ['Mean active period, h', 'activePeriodHours'],
];
export const USED_NOTE =
  'Active time over time on shift, of carriers and trucks over all time, of supplies what is used over ' +
  'what came. A hint at what stops the build; what was tried proves it.';

/** In the weeks that are judged, the whole run beside it; where none are judged that alone. */
export function bottlenecks(results: Results, interval: string): PageTable {
  const { constraint, bottlenecks: whole, bottleneckByArithmetic, replications } = results,
    judged = constraint?.judged ?? null,
    over = judged === null ? 'the whole run' : judgedText(judged, replications);
  return {
    id: 'bottlenecks',
    title: 'What is used most',
    note:
      `${USED_NOTE} Over ${over}; most used: share of replications in which it has the highest ` +
      `utilisation, with its Wilson interval; ${interval}. By arithmetic: ` +
      `${bottleneckByArithmetic ?? 'nothing limits'}.`,
    ...columns(byUse(judged?.bottlenecks ?? whole, whole), usedColumns(judged === null ? [] : [WHOLE_RUN])),
  };
}

const WHOLE_RUN: Column<Used> = [
  'Used over the whole run, %',
  ({ whole }) => (whole === null ? '' : percent(whole.active)),
];

/** `the weeks judged (2027-11-22 to 2028-03-19, 20 replications)`; the number if the run has another. */
export const judgedText = (
  { from, to, replications: seen }: Pick<JudgedResult, 'from' | 'to' | 'replications'>,
  replications: number,
): string =>
  `the weeks judged (${from} to ${to}${seen === replications ? '' : `, ${count(seen, 'replication')}`})`;

/** What was the bottleneck of a moment, the most first. */
export function momentary(results: Results, interval: string): PageTable {
  const { replications } = results,
    found = byMoment(results).filter((each) => momentaryTime(each) >= LEAST_MOMENTARY);
  const followed = found[0]?.sole.n ?? 0,
    over = followed < replications ? `, in ${exact(followed)} of ${count(replications, 'replication')}` : '';
  return {
    id: 'momentary',
    title: 'Bottleneck of the moment',
    note:
      'Over the whole run. At each moment, what has the longest active period going on (Roser, Nakano & ' +
      'Tanaka 2002): share of the time observed as the only one, and while it moves on to or from ' +
      `another${over}; ${interval}.`,
    ...columns(found, [
      ...NAMES,
      ['Sole, % of time', 'sole', percent],
      ['Shifting, % of time', 'shifting', percent],
    ]),
  };
}

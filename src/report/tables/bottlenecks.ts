import { asEstimate, count, exact } from '../../study/format.js';
import type { BottleneckResult } from '../../study/sections/bottlenecks.js';
import type { Results } from '../../study/simulate/results.js';
import { type Column, columns, type PageTable, percent } from '../columns.js';

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

const NAMES: readonly Column<BottleneckResult>[] = [
  ['Name', 'name'],
  ['Kind', 'kind'],
  ['Site', 'site'],
];

export function bottlenecks(results: Results, interval: string): PageTable {
  return {
    id: 'bottlenecks',
    title: 'Bottlenecks',
    note:
      'The bottleneck of a replication is what has the highest utilisation, active time over time on ' +
      `shift; share of replications with its Wilson interval; ${interval}. By arithmetic: ` +
      `${results.bottleneckByArithmetic ?? 'nothing limits'}.`,
    ...columns(results.bottlenecks, [
      ...NAMES,
      ['Bottleneck, % of replications', ({ share }) => percent(asEstimate(share))],
      ['Utilisation, %', 'active', percent],
      ['Mean active period, h', 'activePeriodHours'],
    ]),
  };
}

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
      'At each moment, what has the longest active period going on (Roser, Nakano & Tanaka 2002): share ' +
      `of the time observed as the only one, and while it moves on to or from another${over}; ${interval}.`,
    ...columns(found, [
      ...NAMES,
      ['Sole, % of time', 'sole', percent],
      ['Shifting, % of time', 'shifting', percent],
    ]),
  };
}

import { short } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { columns, type PageTable, percent } from '../columns.js';

export function failures(results: Results, interval: string): PageTable {
  return {
    id: 'failures',
    title: 'Failures',
    note:
      'Failures in the time observed, over all places; down: from a failure to the end of its repair, by ' +
      'the clock; available: share of place time on shift, failures and outages both taken off; ' +
      `${interval}.`,
    ...columns(results.failures, [
      ['Station', 'name'],
      ['Site', 'site'],
      ['Places', 'places'],
      ['Failures', (each) => short(each.failures)],
      ['Mean down, h', ({ downHours }) => ifAny(downHours)],
      ['Longest down, h', ({ longestDownHours }) => ifAny(longestDownHours)],
      ['Available, %', 'availability', percent],
    ]),
  };
}

/** `none` where no replication has a value. */
export const ifAny = (estimate: Estimate): string => (estimate.n === 0 ? 'none' : short(estimate));

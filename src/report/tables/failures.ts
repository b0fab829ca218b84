import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { estimated, percent } from '../sheets/cells.js';

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
      ['Failures', (each) => estimated(each.failures)],
      ['Mean down, h', 'downHours'],
      ['Longest down, h', 'longestDownHours'],
      ['Available, %', 'availability', percent],
    ]),
  };
}

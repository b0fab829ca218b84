import { short } from '../../study/format.js';
import type { PulseLineResult } from '../../study/sections/pulse-lines.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { percent, rounded } from '../sheets/cells.js';

export function pulseLines(results: Results, interval: string): PageTable {
  return {
    id: 'pulse-lines',
    title: 'Pulse lines',
    note:
      'Working hours of the line; moves are those with units on it; late: beyond the takt, charged to the ' +
      `station that was the last to be ready, or to want of room ahead; ${interval}.`,
    ...columns(results.pulseLines, [
      ['Line', 'name'],
      ['Takt, h', ({ taktHours }) => rounded(taktHours)],
      ['Moves', 'moves'],
      ['Between moves, h', 'hoursBetween'],
      ['Late, % of moves', 'late', percent],
      ['Late in all, h', 'lateHours'],
      ['Charged to, h', chargedTo],
    ]),
  };
}

function chargedTo({ charged }: PulseLineResult): string {
  const late = charged.filter(({ lateHours }) => lateHours.mean > 0);
  return late.length === 0
    ? 'nothing'
    : late.map(({ station, lateHours }) => `${station ?? 'room ahead'} ${short(lateHours)}`).join('; ');
}

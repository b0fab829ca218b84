import type { Results } from '../../study/simulate/results.js';
import { number, short } from '../../study/format.js';
import type { PageTable } from './overall.js';

export function pulseLines(results: Results, interval: string): PageTable {
  return {
    id: 'pulse-lines',
    title: 'Pulse lines',
    note:
      'Working hours of the line; moves are those with units on it; late: beyond the takt, charged ' +
      `to the station that was the last to be ready, or to want of room ahead; ${interval}.`,
    head: [
      'Line',
      'Takt, h',
      'Moves',
      'Between moves, h',
      'Late, % of moves',
      'Late in all, h',
      'Charged to, h',
    ],
    rows: results.pulseLines.map((line) => [
      line.name,
      number(line.taktHours),
      short(line.moves),
      short(line.hoursBetween),
      short(line.late, 100),
      short(line.lateHours),
      line.charged
        .filter(({ lateHours }) => lateHours.mean > 0)
        .map(({ station, lateHours }) => `${station ?? 'room ahead'} ${short(lateHours)}`)
        .join('; ') || 'nothing',
    ]),
  };
}

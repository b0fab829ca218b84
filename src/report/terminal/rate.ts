import type { Estimate } from '../../study/simulate/results.js';
import type { RateResults } from '../../study/rate/results.js';
import { count, intervalName, mean } from '../../study/format.js';
import { fitColumns } from '../shorten.js';
import { table } from './table.js';

const WIDTH = 100;

/** The answer, then a row a rate, as plain text of at most 100 columns. */
export function rateTable(results: RateResults): string {
  const { answer, ramp, points, replications, mostReplications, seed, window, level } = results;
  const rows = points.map((point) => [
    String(point.perDay),
    point.verdict,
    `${point.keptUp.count} of ${point.replications}`,
    give(point.drift),
    give(point.shippedPerDay),
    give(point.leadDays),
    point.stops[0] === undefined
      ? 'nothing'
      : `${point.stops[0].name}, ${point.stops[0].share.count} of ${point.stops[0].share.n}`,
  ]);
  return [
    ...wrapped(answer.sentence),
    ...wrapped(ramp.sentence),
    `${count(replications, 'replication')} a rate, up to ${mostReplications} where it is not ` +
      `settled, seed ${seed}; ± half of the ${intervalName(level)}`,
    `each rate is watched from ${window.from} to ${window.to}, ${count(window.weeks, 'week')}, ` +
      `after ${count(window.settleWeeks, 'week')} to fill the floor`,
    'growth: of units released and not yet out, a week; WIP by rate is in the report',
    '',
    table(rows, [
      { head: 'a day', align: 'right' },
      { head: 'verdict' },
      { head: 'keep up', align: 'right' },
      { head: 'growth', align: 'right' },
      { head: 'shipped a day', align: 'right' },
      { head: 'lead days', align: 'right' },
      { head: 'constraint', most: 24 },
    ]),
  ]
    .map((line) =>
      line
        .split('\n')
        .map((each) => fitColumns(each, WIDTH))
        .join('\n'),
    )
    .join('\n');
}

/** The mean and half of its interval, `3.44 ±0.01`. */
function give(estimate: Estimate): string {
  const half = estimate.low === null || estimate.high === null ? null : (estimate.high - estimate.low) / 2;
  return half === null
    ? `${mean(estimate)} no interval`
    : `${mean(estimate)} ±${half < 1e-4 ? 0 : Number(half.toPrecision(1))}`;
}

function wrapped(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

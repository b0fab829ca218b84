import { bounds, count, exact, mean, number } from '../../study/format.js';
import { each, inUnit } from '../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../study/rate/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { triedAt } from '../constraint.js';
import { rateFirst } from '../first/rate.js';
import { constraintLines } from './constraint.js';
import { firstPieces } from './first.js';
import { joined } from './lines.js';
import { tableOf } from './table.js';

/** The answer, then a row a rate, as plain text of at most `width` columns. */
export function rateTable(results: RateResults, width?: number): string {
  const { answer, points, replications, mostReplications, seed, window, level, rateUnit } = results,
    { constraint } = results;
  return joined(
    [
      ...firstPieces(rateFirst(results), answer.sentence),
      `up to ${count(replications, 'build')} a rate, ${exact(mostReplications)} where not settled, ` +
        `seed ${seed}; ± half of the ${number(100 * level)} % interval`,
      `each rate is watched from ${window.from} to ${window.to}, ${count(window.weeks, 'week')}, after ` +
        `${count(window.settleWeeks, 'week')} to fill the floor`,
      'can ship: surely at least, in the long run, when more than this rate is asked',
      '',
      tableOf(points, [
        { head: each(rateUnit), align: 'right', cell: ({ perDay }) => exact(inUnit(perDay, rateUnit)) },
        { head: 'verdict', cell: 'verdict' },
        {
          head: 'keep up',
          align: 'right',
          cell: ({ keptUp, replications: n }) => `${exact(keptUp.count)} of ${exact(n)}`,
        },
        {
          head: `shipped ${each(rateUnit)}`,
          align: 'right',
          cell: ({ shippedPerDay }) => give(shippedPerDay, rateUnit.workingDays),
        },
        {
          head: 'can ship',
          align: 'right',
          cell: ({ canShip: { least } }) => (least === null ? '' : number(inUnit(least, rateUnit))),
        },
        { head: 'lead days', align: 'right', cell: ({ leadDays }) => give(leadDays) },
        { head: 'used most', cell: usedMost },
      ]),
      ...(constraint === null ? [] : constraintLines(constraint, triedAt(results))),
    ],
    width,
  );
}

/** A hint: what stops it is told by what was tried. */
function usedMost({ stops: [first] }: RatePoint): string {
  return first === undefined
    ? 'nothing'
    : `${first.name}, ${exact(first.share.count)} of ${exact(first.share.n)}`;
}

/** The mean and half of its interval, `3.44 ±0.01`, or why there is none. */
function give(estimate: Estimate, scale = 1): string {
  const { low, high } = estimate,
    half = low === null || high === null ? null : (scale * (high - low)) / 2;
  return half === null
    ? `${mean(estimate, scale)} ${bounds(estimate)}`
    : `${mean(estimate, scale)} ±${half < 1e-4 ? 0 : Number(half.toPrecision(1))}`;
}

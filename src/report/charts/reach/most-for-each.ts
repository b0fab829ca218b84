import { capital, count } from '../../../study/format.js';
import { defined } from '../../../study/lists.js';
import { each } from '../../../study/planners-unit.js';
import type { FrontierResult, ReachResults } from '../../../study/reach/results.js';
import { isPriced, moneyText, setText } from '../../../study/reach/sentence.js';
import { boundsOf } from '../../../study/statistics/estimate.js';
import { inPlanners, outBy, sumOf, timesIn } from '../../first/reach/told.js';
import { type Chart, chart, intervalNote, intervalWords } from '../chart.js';
import { figures } from '../figures.js';
import { acrossSets } from './across.js';
import { levelLines, spots } from './marks.js';
import { stairs } from './stairs.js';
import { DRAWN_SHARE, lastUnitUpright, plotHeight, shippedUpright, uprightAxis } from './upright.js';

/** The most that was found for each sum of money, or number of changes; null with fewer than two sets. */
export function mostForEach(results: ReachResults): Chart | null {
  const { goal, level } = results,
    all = goal.kind === 'rate' ? null : lastUnitUpright(results),
    sets = results.frontier.filter((set) => all === null || all.of(set) !== null),
    upright = all ?? shippedUpright(results, sets),
    across = acrossSets(sets, results);
  if (sets.length < 2 || across === null || (goal.kind === 'date' && all === null)) return null;
  const { points, datasets } = stairs(upright, sets, across.at, level);
  return chart({
    finding: finding(sets, results),
    how:
      `${goal.kind === 'rate' ? 'The most that was found' : 'The earliest last unit that was found'} ` +
      `${across.by}, with the ${goal.kind === 'rate' ? intervalNote(results) : intervalWords(level)}. ` +
      'Red: the set of the ' +
      `answer. Dashed: asked.${goal.kind === 'rate' ? ' The scale does not begin at 0.' : ''}`,
    bodyHeight: plotHeight(),
    type: 'line',
    data: {
      labels: sets.map((set) =>
        set.made.length === 0 ? 'as it is' : `${sumText(set, results)}: ${setText(set.made)}`,
      ),
      datasets,
    },
    scales: { x: across.axis, y: uprightAxis(upright, sets) },
    plugins: [
      levelLines(upright.levels),
      spots(
        sets.map((set, i) => ({
          ...defined(points[i]),
          text: set.made.length === 0 ? 'as it is' : set.isChosen ? sumText(set, results) : '',
          isChosen: set.isChosen,
        })),
      ),
    ],
  });
}

const sumText = (set: FrontierResult, results: ReachResults): string =>
  isPriced(results) ? moneyText(set.money, results.currency) : count(sumOf(set, results) ?? 0, 'change');

/** What little money brings, and what less than the set of the answer does not; else the most of all. */
function finding(sets: readonly FrontierResult[], results: ReachResults): string {
  const { goal, outcome, rateUnit } = results,
    chosen = sets.find(({ isChosen }) => isChosen),
    sum = chosen === undefined ? null : sumOf(chosen, results),
    less = sets.filter((set) => !set.isChosen && sum !== null && (sumOf(set, results) ?? 0) < sum),
    isBelow = outcome !== 'not reached' && chosen !== undefined && less.length > 0,
    among = isBelow ? less : sets;
  const limit = !isBelow
    ? 'whatever is spent,'
    : isPriced(results)
      ? `for less than ${sumText(chosen, results)}`
      : `with fewer than ${sumText(chosen, results)}`;
  if (goal.kind === 'date') {
    const earliest = among.flatMap((set) => outBy(set, DRAWN_SHARE) ?? []).sort()[0] ?? '';
    return `${capital(limit)} no set found has the last unit out before ${earliest} in four of five builds`;
  }
  const [most] = [...among].sort((a, b) => b.throughput.mean - a.throughput.mean),
    write = figures(sets.map(({ throughput }) => inPlanners(throughput, results))),
    rate = (set: FrontierResult): string =>
      `${write.mean(inPlanners(set.throughput, results))} ${each(rateUnit)}`,
    first = firstSure(sets, results);
  if (most === undefined) return '';
  return capital(
    (first === null || first === most || first.isChosen
      ? ''
      : `${sumText(first, results)} ${verb(first, results)} ${rate(first)}; `) +
      `${limit} no set found ships more than ${rate(most)}`,
  );
}

const verb = ({ made }: FrontierResult, results: ReachResults): string =>
  !isPriced(results) && timesIn(made) === 1 ? 'brings' : 'bring';

/** The cheapest set that surely ships more than the build as it is, if it takes money or a change. */
function firstSure(sets: readonly FrontierResult[], results: ReachResults): FrontierResult | null {
  const now = sets.find(({ made }) => made.length === 0);
  if (now === undefined) return null;
  const { high } = boundsOf(now.throughput);
  return sets.find((set) => (sumOf(set, results) ?? 0) > 0 && boundsOf(set.throughput).low > high) ?? null;
}

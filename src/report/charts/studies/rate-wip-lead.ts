import { count } from '../../../study/format.js';
import { rateText } from '../../../study/planners-unit.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { EMPTY_AXIS, valueAxis } from '../axes.js';
import { type Chart, chart, intervalWords, MARK_LEGEND } from '../chart.js';
import { told } from '../figures.js';
import { intervalsByRate, pointsByRate, rateAxis } from './rate-marks.js';
import { buildsOf } from './rate-scale.js';

/** WIP above, lead time below, over the same axis of rates. */
export function rateWipLead(results: RateResults): Chart {
  const { points, level, window, rateUnit } = results,
    last = points.findLast(({ verdict }) => verdict === 'holds') ?? points[0];
  const wip = (point: RatePoint) => point.wip,
    lead = (point: RatePoint) => point.leadDays,
    highest = (of: typeof wip): number => Math.max(0, ...points.map((point) => of(point).high ?? 0));
  return chart({
    finding:
      last === undefined
        ? 'No rate was looked at'
        : `At ${rateText(last.perDay, rateUnit)} a unit takes ${told(last.leadDays)} days, and ` +
          `${told(last.wip)} units are inside`,
    how:
      `Means against the rate asked, with their ${intervalWords(level)}, ${buildsOf(points)} a rate, ` +
      `${count(window.weeks, 'week')} from ${window.from}. Where a ` +
      'rate does not hold they grow with the weeks.',
    bodyHeight: 560,
    type: 'scatter',
    data: {
      datasets: [
        ...pointsByRate(results, 'wip', wip),
        ...pointsByRate(results, 'lead', lead).map((dataset) => ({ ...dataset, label: '' })),
      ],
    },
    scales: {
      x: rateAxis(results),
      // The first of a stack stands lowest.
      lead: valueAxis('days to get through', {
        axis: 'y',
        stack: 'panels',
        stackWeight: 1,
        grace: '5%',
        suggestedMax: highest(lead),
      }),
      gap: { ...EMPTY_AXIS, stack: 'panels', stackWeight: 0.12, display: true },
      wip: valueAxis('units inside', {
        axis: 'y',
        stack: 'panels',
        stackWeight: 1,
        grace: '5%',
        suggestedMax: highest(wip),
      }),
    },
    legend: MARK_LEGEND,
    plugins: [...intervalsByRate(results, 'wip', wip), ...intervalsByRate(results, 'lead', lead)],
  });
}

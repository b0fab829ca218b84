import {
  asEstimate,
  count,
  exact,
  intervalName,
  number,
  percentWithInterval,
  short,
} from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { SIZE } from '../../style.js';
import { byMoment, isFollowed } from '../../tables/bottlenecks.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead } from '../chart.js';
import { bars } from '../datasets.js';
import { perRow, rowChart, rowsOf, span } from '../row-chart.js';

const MOST_ROWS = 15;
/** So many are shown even if some of them never were the bottleneck. */
const LEAST_ROWS = 5;
/** The largest momentary ones are shown beside them. */
const MOMENTARY_ROWS = 3;
/** A smaller share of time is shown as none. */
const LEAST_TOLD = 0.0005;
/** Room for kind and site, CSS pixels. */
const SITE_ROOM = 150;

/**
 * The likeliest bottlenecks, each with its share of the replications and the Wilson interval of that share.
 */
export function bottlenecks(results: Results): Chart | null {
  const first = results.bottlenecks[0];
  if (first === undefined) return null;
  const momentary = byMoment(results).slice(0, MOMENTARY_ROWS);
  const shown = results.bottlenecks
    .filter((item, index) => index < LEAST_ROWS || item.share.count > 0 || momentary.includes(item))
    .slice(0, MOST_ROWS);
  const left = results.bottlenecks.length - shown.length;
  const rows = rowsOf(shown, ({ name }) => name);
  const ci = intervalName(results.level),
    followed =
      first.sole.n > 0 && first.sole.n < results.replications
        ? `, over ${exact(first.sole.n)} of the replications`
        : '';
  return rowChart({
    finding:
      `Most often the bottleneck: ${first.name}, in ` +
      `${percentWithInterval(asEstimate(first.share))} of ` +
      count(results.replications, 'replication'),
    how:
      'Share of replications in which each was the bottleneck: the one with the highest ' +
      'utilisation, active time over time on shift (Hopp & Spearman, Factory Physics, ch. 7). Bars ' +
      `with ${ci} (Wilson). Sole, shifting: share of time as the momentary bottleneck, the longest ` +
      `active period going on (Roser et al. 2002)${followed}. Active period: mean (Roser et al. ` +
      `2001). Momentary bottleneck the most: ${momentary[0]?.name ?? 'not followed'}. By ` +
      `arithmetic: ${results.bottleneckByArithmetic ?? 'nothing limits'}.` +
      (left > 0 ? ` ${left} more, less likely, are in results.json.` : ''),
    rows,
    columns: [
      [['share, %', `(${ci})`], (item) => short(asEstimate(item.share), 100)],
      [['utilisation, %', intervalHead(results)], (item) => short(item.active, 100)],
      [
        ['sole, % of time', intervalHead(results)],
        (item) => (!isFollowed(item) ? '' : item.sole.mean < LEAST_TOLD ? '0' : short(item.sole, 100)),
      ],
      [
        ['shifting,', '% of time'],
        (item) =>
          !isFollowed(item) ? '' : item.shifting.mean < LEAST_TOLD ? '0' : number(100 * item.shifting.mean),
      ],
      [['active', 'period, h'], (item) => number(item.activePeriodHours.mean)],
      [['kind, site'], (item) => fit(`${item.kind}, ${item.site}`, SITE_ROOM, SIZE.small)],
    ],
    values: valueAxis(`share of ${number(results.replications)} replications, %`, {
      max: 100,
    }),
    datasets: [bars(perRow(rows, ({ share }) => share.share * 100))],
    intervals: [ci, ({ share }) => span(asEstimate(share), 100)],
  });
}

import type { Plugin } from 'chart.js';
import {
  asEstimate,
  exact,
  intervalName,
  number,
  percentWithInterval,
  short,
} from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import { INK, SIZE } from '../../style.js';
import { byMoment, byUse, isFollowed, judgedText, type Used } from '../../tables/bottlenecks.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead } from '../chart.js';
import { bars } from '../datasets.js';
import { diamondPath } from '../marks.js';
import { perRow, type Row, rowChart, rowsOf, span } from '../row-chart.js';

const MOST_ROWS = 15;
/** So many are shown even if some of them never were used most. */
const LEAST_ROWS = 8;
/** The largest momentary ones are shown beside them. */
const MOMENTARY_ROWS = 3;
/** A smaller share of time is shown as none. */
const LEAST_TOLD = 0.0005;
/** Room for kind and site, CSS pixels. */
const SITE_ROOM = 140;

/**
 * What is used most, in the weeks that are judged with the whole run beside, and the bottleneck of the
 * moment: hints at what stops the build.
 */
export function bottlenecks(results: Results): Chart | null {
  const { constraint, bottlenecks: whole, replications } = results,
    judged = constraint?.judged ?? null,
    used = byUse(judged?.bottlenecks ?? whole, whole),
    [first] = used;
  if (first === undefined) return null;
  const momentary = byMoment(results).slice(0, MOMENTARY_ROWS),
    isMomentary = ({ kind, name, site }: Used): boolean =>
      momentary.some((each) => each.kind === kind && each.name === name && each.site === site);
  const shown = used
    .filter((item, index) => index < LEAST_ROWS || item.share.count > 0 || isMomentary(item))
    .slice(0, MOST_ROWS);
  const left = used.length - shown.length,
    rows = rowsOf(shown, ({ name }) => name),
    ci = intervalName(results.level),
    [followed] = momentary;
  return rowChart({
    finding:
      `Used most ${judged === null ? '' : 'in the weeks judged'}: ${first.name}, ` +
      `${percentWithInterval(first.active)} of its time` +
      (judged === null || first.whole === null
        ? ''
        : `; ${percentWithInterval(first.whole.active)} over the whole run`),
    how:
      'Active time over time on shift (Hopp & Spearman, Factory Physics, ch. 7), a hint at what stops the ' +
      `build; bars with ${ci}` +
      (judged === null ? '. ' : `, over ${judgedText(judged, replications)}; diamonds: whole run. `) +
      'Most used: share of replications in which it was the first. Over the whole run, sole and shifting: ' +
      'share of time as the momentary bottleneck, the longest active period going on (Roser et al. 2002)' +
      (followed !== undefined && followed.sole.n < replications
        ? `, over ${exact(followed.sole.n)} of the replications`
        : '') +
      `; the most: ${followed?.name ?? 'not followed'}. By arithmetic: ` +
      `${results.bottleneckByArithmetic ?? 'nothing limits'}.` +
      (left > 0 ? ` ${left} more, used less, are in results.json.` : ''),
    rows,
    columns: [
      [['used, %', intervalHead(results)], ({ active }) => short(active, 100)],
      ...(judged === null ? [] : [WHOLE_COLUMN]),
      [['most used, %', 'of replications'], ({ share }) => number(asEstimate(share).mean * 100)],
      [['sole,', '% of time'], ({ whole: run }) => momentaryShare(run, 'sole')],
      [['shifting,', '% of time'], ({ whole: run }) => momentaryShare(run, 'shifting')],
      [['kind, site'], (item) => fit(`${item.kind}, ${item.site}`, SITE_ROOM, SIZE.small)],
    ],
    values: valueAxis('used, % of time on shift', { max: 100 }),
    datasets: [bars(perRow(rows, ({ active }) => active.mean * 100))],
    intervals: [ci, ({ active }) => span(active, 100)],
    plugins: judged === null ? [] : [wholeRun(rows)],
  });
}

const WHOLE_COLUMN: readonly [readonly string[], (item: Used) => string] = [
  ['whole run, %'],
  ({ whole }) => (whole === null ? '' : short(whole.active, 100)),
];

function momentaryShare(run: Used['whole'], share: 'sole' | 'shifting'): string {
  if (run === null || !isFollowed(run)) return '';
  return run[share].mean < LEAST_TOLD ? '0' : number(100 * run[share].mean);
}

/** A hollow diamond a row at its share of the whole run. */
function wholeRun(rows: readonly Row<Used>[]): Plugin {
  return drawing('whole run', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    context.fillStyle = '#ffffff';
    context.strokeStyle = INK;
    context.lineWidth = 1.4;
    rows.forEach(({ item }, row) => {
      if (item?.whole == null) return;
      diamondPath(context, x.getPixelForValue(item.whole.active.mean * 100), y.getPixelForValue(row), 5);
      context.fill();
      context.stroke();
    });
  });
}

import type { Plugin } from 'chart.js';
import { asEstimate, exact, number } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { axisOf, drawing } from '../../drawing.js';
import { INK, SIZE } from '../../style.js';
import { byUse, judgedText, type Used } from '../../tables/bottlenecks.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote, intervalWords } from '../chart.js';
import { bars } from '../datasets.js';
import { figures, told } from '../figures.js';
import { diamondPath } from '../marks.js';
import { perRow, type Row, rowChart, rowsOf, span } from '../row-chart.js';

const MOST_ROWS = 15;
/** So many are shown even if some of them never were used most. */
const LEAST_ROWS = 8;
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
  const shown = used.filter((item, index) => index < LEAST_ROWS || item.share.count > 0).slice(0, MOST_ROWS);
  const seen = { level: results.level, replications: judged?.replications ?? replications };
  const left = used.length - shown.length,
    rows = rowsOf(shown, ({ name }) => name),
    write = figures(
      shown.flatMap(({ active, whole: run }) => (run === null ? [active] : [active, run.active])),
      100,
    );
  return rowChart({
    finding:
      `Used most${judged === null ? '' : ' in the weeks judged'}: ${first.name}, ` +
      `${told(first.active, 100)} % of its time` +
      (judged === null || first.whole === null
        ? ''
        : `; ${told(first.whole.active, 100)} % over the whole run`),
    how:
      `Time in use over time on shift, with the ${intervalNote(seen)}` +
      (judged === null ? '. ' : `; ${judgedText(judged, judged.replications)}; diamonds: whole run. `) +
      'A hint; what was tried tells what stops it.' +
      (left > 0 ? ` ${exact(left)} used less are in results.json.` : ''),
    rows,
    columns: [
      [['used, %', intervalHead(results)], ({ active }) => write.short(active)],
      ...(judged === null
        ? []
        : [
            [
              ['whole run, %'],
              ({ whole: run }: Used) => (run === null ? '' : write.short(run.active)),
            ] as const,
          ]),
      [['used most, %', 'of builds'], ({ share }) => number(Math.round(asEstimate(share).mean * 100))],
      [['kind, site'], (item) => fit(`${item.kind}, ${item.site}`, SITE_ROOM, SIZE.small)],
    ],
    values: valueAxis('used, % of time on shift', { max: 100 }),
    datasets: [bars(perRow(rows, ({ active }) => active.mean * 100))],
    intervals: {
      of: 'used, %',
      sure: intervalWords(results.level),
      ends: ({ active }) => span(active, 100),
    },
    plugins: judged === null ? [] : [wholeRun(rows)],
  });
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

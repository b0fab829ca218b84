import { capital, exact } from '../../../study/format.js';
import { loadsText } from '../../../study/loads/words.js';
import { daysInBucket, each, shippedOf, unitsEach } from '../../../study/planners-unit.js';
import type { Results } from '../../../study/simulate/results.js';
import { mapped } from '../../../study/statistics/estimate.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, isNarrow, MUTED, PALETTE, SIZE } from '../../style.js';
import { type Chart, intervalNote } from '../chart.js';
import { toldOf } from '../figures.js';
import { type TimeLine, timeChart } from '../over-time/time.js';
import { dipsAfter, weekMarks } from '../over-time/week-marks.js';

/** Room for the bracket over the weeks judged, at the top of the plot. */
const BRACKET = 32;

/**
 * Units shipped per working day or week, week by week, beside the rate asked and the units released. Where a
 * week with a truck is followed by one without, the mean over whole loads is drawn, and the weeks are a thin
 * line.
 */
export function throughputByWeek(results: Results): Chart | null {
  const { series, rateUnit } = results,
    days = (b: number): number => daysInBucket(rateUnit, series, b);
  if (series.labels.length === 0) return null;
  const works = series.workingDays.map((days) => days > 0),
    working = <Value>(values: readonly Value[]) =>
      values.map((value, index) => (works[index] === true ? value : null));
  const short = shortBuckets(series.workingDays),
    smooth = series.shippedOverLoads,
    evened = smooth === null ? '' : evenedOut(results);
  const lines: TimeLine[] = [
    {
      name: 'shipped',
      note: smooth === null ? 'mean' : 'over whole loads',
      colour: PALETTE.blue,
      dash: [],
      width: 2.5,
      ...(smooth === null ? { hollow: short } : {}),
      values: working(
        (smooth ?? series.shippedPerDay).map((value, index) =>
          mapped(value, (perDay) => perDay * days(index)),
        ),
      ),
    },
    ...(smooth === null
      ? []
      : [
          {
            name: 'shipped',
            note: `${series.unit} by ${series.unit}`,
            colour: '#33719a',
            dash: [],
            width: 1.2,
            hollow: short,
            values: working(series.shippedPerDay.map(({ mean: units }, index) => units * days(index))),
          },
        ]),
    {
      name: 'released',
      note: 'mean',
      colour: '#6b6b6b',
      dash: [3, 3],
      width: 1.5,
      stepped: true,
      values: series.released.map((value, index) =>
        works[index] === true ? (days(index) * value.mean) / (series.workingDays[index] ?? 1) : null,
      ),
    },
  ];
  if (series.asked.some((asked) => asked !== null)) {
    lines.push({
      name: 'asked',
      note: 'plan',
      colour: PALETTE.black,
      dash: [],
      width: 1.6,
      stepped: true,
      values: series.asked.map((asked, index) => (asked === null ? null : asked * days(index))),
    });
  }
  return timeChart(results, {
    finding: finding(results),
    how:
      `${rateUnit.per === 'week' && series.unit === 'week' ? 'Units' : capital(unitsEach(rateUnit))} by ` +
      `${series.unit}${evened}. Band: ${intervalNote(results)}.` +
      (short.includes(true) ? ' Hollow marks: less than half of the usual days.' : ''),
    lines,
    valueTitle: unitsEach(rateUnit),
    grace: results.answer.window === null ? '6%' : '16%',
    marked: [...weekMarks(results), ...dipsAfter(results)],
    above: BRACKET,
    plugins: [judgedWindow(results)],
  });
}

/** `, shipped as a mean over whole loads (trucks of 10 on road) around each week`. */
function evenedOut({ answer: { counting } }: Results): string {
  const loads = counting?.loads ?? [],
    named = loads.length === 0 ? '' : ` (${loadsText(loads)})`;
  return `, shipped as a mean over whole loads${named} around each week`;
}

/** Buckets with less than half of the usual working days: their rate rests on little, so they are marked. */
export function shortBuckets(workingDays: readonly number[]): boolean[] {
  const usual = Math.max(...workingDays);
  return workingDays.map((days) => days > 0 && days < usual / 2);
}

function finding(results: Results): string {
  const { asked } = results.answer,
    shipped = toldOf(shippedOf(results), each(results.rateUnit));
  return `Ships ${shipped}${asked === null ? '' : `, ${exact(asked)} asked`}`;
}

/** A bracket over the weeks on which the answer rests. */
function judgedWindow(results: Results) {
  const { window } = results.answer;
  const { starts, unit } = results.series;
  return drawing('judged window', (context, chart) => {
    if (window === null || unit !== 'week') return;
    const inside = [...starts.entries()].filter(([, start]) => start >= window.from && start <= window.to);
    const first = inside[0]?.[0],
      last = inside.at(-1)?.[0];
    if (first === undefined || last === undefined || last === first) return;
    const x = axisOf(chart, 'x'),
      from = x.getPixelForValue(first),
      to = x.getPixelForValue(last),
      { left, right, top } = chart.chartArea,
      y = top + BRACKET - 6;
    context.strokeStyle = INK;
    context.lineWidth = 1;
    polyline(context, [from, y + 6], [from, y], [to, y], [to, y + 6]);
    context.font = font(SIZE.small);
    context.fillStyle = MUTED;
    context.textBaseline = 'bottom';
    context.textAlign = 'center';
    const note = isNarrow() ? 'weeks judged' : 'the rate in the title is from these weeks',
      half = textWidth(note, SIZE.small) / 2;
    context.fillText(note, Math.max(left + half, Math.min(right - half, (from + to) / 2)), y - 3);
  });
}

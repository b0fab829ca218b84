import { bounds, count, intervalName, mean, number } from '../../../study/format.js';
import { loadsText } from '../../../study/loads/words.js';
import type { Results } from '../../../study/simulate/results.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, MUTED, PALETTE, SIZE } from '../../style.js';
import { type Chart, intervalNote } from '../chart.js';
import { type TimeLine, timeChart } from '../time.js';

/**
 * Units shipped per working day, week by week, beside the rate asked and the units released. Where a week with
 * a truck is followed by one without, the mean over whole loads is drawn, and the weeks are a thin line.
 */
export function throughputByWeek(results: Results): Chart | null {
  const { series } = results;
  if (series.labels.length === 0) return null;
  const works = series.workingDays.map((days) => days > 0),
    working = <Value>(values: readonly Value[]) =>
      values.map((value, index) => (works[index] === true ? value : null));
  const short = shortBuckets(series.workingDays),
    smooth = series.shippedOverLoads;
  const lines: TimeLine[] = [
    {
      name: 'shipped',
      note: smooth === null ? 'mean' : 'over whole loads',
      colour: PALETTE.blue,
      dash: [],
      width: 2.5,
      ...(smooth === null ? { hollow: short } : {}),
      values: working(smooth ?? series.shippedPerDay),
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
            values: working(series.shippedPerDay.map(({ mean: units }) => units)),
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
        works[index] === true ? value.mean / (series.workingDays[index] ?? 1) : null,
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
      values: series.asked,
    });
  }
  return timeChart(results, {
    finding: finding(results),
    how:
      `Units per working day by ${series.unit}${smooth === null ? '' : evenedOut(results)}; band: ` +
      `${intervalNote(results)}.` +
      ' Working days are those of the first site.' +
      (works.includes(false) ? ' Gaps: no working day.' : '') +
      (short.includes(true) ? ' Hollow marks: weeks with less than half of the usual working days.' : ''),
    lines,
    valueTitle: 'units per working day',
    grace: results.answer.window === null ? '6%' : '16%',
    plugins: [judgedWindow(results)],
  });
}

/** `, shipped as a mean over whole loads (trucks of 10 on road) around each week`. */
function evenedOut({ answer: { counting } }: Results): string {
  const loads = counting?.loads ?? [];
  return `, shipped as a mean over whole loads${loads.length === 0 ? '' : ` (${loadsText(loads)})`} around each week`;
}

/** Buckets with less than half of the usual working days: their rate rests on little, so they are marked. */
export function shortBuckets(workingDays: readonly number[]): boolean[] {
  const usual = Math.max(...workingDays);
  return workingDays.map((days) => days > 0 && days < usual / 2);
}

function finding(results: Results): string {
  const { askedPerDay, heldPerDay } = results.answer;
  const rate = heldPerDay ?? results.throughput.perDay;
  const interval = rate.low === null ? 'no interval' : `${intervalName(rate.level)} ${bounds(rate)}`;
  const against = askedPerDay === null ? '' : ` against ${number(askedPerDay)} asked`;
  return `Ships ${mean(rate)} a day${against} (${interval}, ${count(results.replications, 'replication')})`;
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
      y = top + 26;
    context.strokeStyle = INK;
    context.lineWidth = 1;
    polyline(context, [from, y + 6], [from, y], [to, y], [to, y + 6]);
    context.font = font(SIZE.small);
    context.fillStyle = MUTED;
    context.textBaseline = 'bottom';
    context.textAlign = 'center';
    const note = 'the rate in the title is from these weeks',
      half = textWidth(note, SIZE.small) / 2;
    context.fillText(note, Math.max(left + half, Math.min(right - half, (from + to) / 2)), y - 3);
  });
}

import type { Plugin } from 'chart.js';
import { number } from '../../../study/format.js';
import type { DateQuantile } from '../../../study/programme/dates.js';
import type { Results } from '../../../study/simulate/results.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { dateText } from '../../first/first.js';
import { faded, INK, PALETTE, SIZE } from '../../style.js';
import { roomForText, valueAxis } from '../axes.js';
import { type Chart, chart, intervalWords } from '../chart.js';
import { band, line } from '../datasets.js';
import { told } from '../figures.js';
import { disc, levelInterval, onWhite } from '../marks.js';
import { dayAxis, momentOf } from '../over-time/days.js';
import { lineNames, type NamedLine, nameRoom } from '../over-time/line-names.js';
import { lineWords } from '../over-time/line-words.js';

type PlanLine = NamedLine & { readonly values: readonly number[]; readonly width: number };
type KnownDate = DateQuantile & { readonly date: string };

/**
 * Units shipped over the programme, added up, beside those released by plan and those due, with the dates of
 * the last one.
 */
export function shippedAgainstPlan(results: Results): Chart | null {
  const { plan } = results;
  if (plan === null) return null;
  const start = momentOf(plan.starts[0] ?? ''),
    ends = plan.ends.map(momentOf),
    points = (values: readonly number[]): { x: number; y: number }[] => [
      { x: start, y: 0 },
      ...values.map((y, i) => ({ x: ends[i] ?? NaN, y })),
    ];
  const lines: PlanLine[] = [
    {
      name: 'shipped',
      note: results.replications < 2 ? '1 build' : 'half of the builds; band: 8 of 10 builds',
      colour: PALETTE.blue,
      dash: [],
      width: 2.5,
      values: plan.shipped.p50,
      at: ends,
    },
  ];
  if (plan.released !== null)
    lines.push({
      name: 'released',
      note: 'plan',
      colour: '#6b6b6b',
      dash: [3, 3],
      width: 1.6,
      values: plan.released,
      at: ends,
    });
  if (plan.due !== null)
    lines.push({
      name: 'due',
      note: 'by date',
      colour: PALETTE.vermillion,
      dash: [8, 3],
      width: 2,
      values: plan.due,
      at: ends,
    });
  const marks = results.lastUnit.filter((each): each is KnownDate => each.p < 0.9 && each.date !== null);
  const to = Math.max(ends.at(-1) ?? start, ...marks.map(({ date, high }) => momentOf(high ?? date) + 1));
  return chart({
    finding: finding(results),
    how:
      `Units added up to the end of each ${plan.unit}.` +
      (results.replications < 2 ? '' : ' Band: 8 of 10 builds.') +
      (marks.length === 0 ? '' : ` Upright: last unit out, with the ${intervalWords(results.level)}.`),
    bodyHeight: 460,
    type: 'line',
    data: {
      datasets: [
        ...band(
          ['shipped, 8 of 10 builds low', points(plan.shipped.p10)],
          ['shipped, 8 of 10 builds high', points(plan.shipped.p90)],
          faded(PALETTE.blue, 0.22),
        ),
        ...lines.map(({ name, values, colour, dash, width }) =>
          line(name, points(values), colour, width, { borderDash: dash }),
        ),
      ],
    },
    scales: {
      x: dayAxis(start, to, 1),
      y: valueAxis('units, added up', { grace: '4%' }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [lastUnitMarks(marks), lineNames(lines), lineWords(lines)],
  });
}

function finding({ lastUnit, due, plan }: Results): string {
  const [half, most] = [lastUnit.find(({ p }) => p === 0.5), lastUnit.find(({ p }) => p === 0.8)];
  const late = due === null || due.late.n === 0 ? '' : `; ${told(due.late, 100)} % of units late`;
  if (half?.date == null)
    return (
      `In half of the builds ${plan?.shipped.p50.at(-1) ?? 0} units are shipped by the end, and the last ` +
      `one has no date${late}`
    );
  const inMost =
    most?.date == null
      ? ''
      : most.date === half.date
        ? ' and in four of five'
        : `, by ${dateText(most.date)} in four of five`;
  return `Last unit out by ${dateText(half.date)} in half of the builds${inMost}${late}`;
}

/** Of so many builds: a quantile in words. */
const buildsUpTo = (p: number): string =>
  p === 0.5 ? 'half of the builds' : `${number(10 * p)} of 10 builds`;

/** An upright line in the middle of the day for each date, and at its foot its name and its interval. */
function lastUnitMarks(marks: readonly KnownDate[]): Plugin {
  return drawing('last unit', (context, chart) => {
    const x = axisOf(chart, 'x'),
      { top, bottom, left } = chart.chartArea;
    const at = (date: string): number => x.getPixelForValue(momentOf(date) + 0.5);
    const first = Math.min(...marks.map(({ date, low }) => at(low ?? date)));
    context.font = font(SIZE.text, '600');
    context.textBaseline = 'middle';
    context.lineWidth = 1.6;
    marks.forEach(({ p, date, low, high }, i) => {
      const row = bottom - 18 - 22 * (marks.length - 1 - i),
        label = `last unit, ${buildsUpTo(p)}`,
        width = textWidth(label, SIZE.text, '600'),
        from = Math.max(left + 4, first - 14 - width);
      context.strokeStyle = context.fillStyle = INK;
      context.setLineDash(i === 0 ? [] : [7, 4]);
      polyline(context, [at(date), top], [at(date), bottom]);
      context.setLineDash([]);
      if (low !== null && high !== null) levelInterval(context, at(low), at(high), row);
      disc(context, at(date), row, 4);
      onWhite(context, label, from, row);
    });
  });
}

import type { ForecastResults } from '../../../study/forecast/forecast.js';
import { dateText } from '../../first/first.js';
import { faded, INK, PALETTE } from '../../style.js';
import { roomForText, valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band, line } from '../datasets.js';
import { dayAxis, momentOf } from '../over-time/days.js';
import { lineNames, type NamedLine, nameRoom } from '../over-time/line-names.js';
import { lineWords } from '../over-time/line-words.js';
import { topWithNames, type UprightLine, uprightLines } from '../upright-lines.js';

const BODY_HEIGHT = 420;

type DayLine = NamedLine & { readonly values: readonly number[] };

/** Units shipped from the moment on, in a band, beside those due, with the days of the last unit. */
export function shippedAhead(results: ForecastResults): Chart | null {
  const { byDay, lastUnit, replications } = results;
  if (byDay.length < 2) return null;
  const start = momentOf(byDay[0]?.date ?? ''),
    at = byDay.map(({ date }) => momentOf(date) + 1),
    due = byDay.flatMap((day) => (day.due === null ? [] : [day.due])),
    points = (values: readonly number[]): { x: number; y: number }[] => [
      { x: start, y: 0 },
      ...values.map((y, i) => ({ x: at[i] ?? NaN, y })),
    ];
  const shipped: DayLine = {
    name: 'shipped',
    note: replications < 2 ? '1 build' : 'half of the builds; band: 8 of 10',
    colour: PALETTE.blue,
    dash: [],
    width: 2.5,
    values: byDay.map(({ p50 }) => p50),
    at,
  };
  const dueLine = { name: 'due', note: 'by date', colour: PALETTE.vermillion, dash: [8, 3], values: due, at },
    lines: readonly DayLine[] = due.length > 0 ? [shipped, dueLine] : [shipped],
    marks = marksOf(lastUnit),
    highest = Math.max(...byDay.map(({ p90 }) => p90), ...due);
  return chart({
    finding: finding(lastUnit),
    how:
      'Units added up to the end of each day.' +
      (replications < 2 ? '' : ' Band: 8 of 10 builds.') +
      (marks.length === 0 ? '' : ' Upright: last unit out.'),
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      datasets: [
        ...band(
          ['shipped, 8 of 10 builds low', points(byDay.map(({ p10 }) => p10))],
          ['shipped, 8 of 10 builds high', points(byDay.map(({ p90 }) => p90))],
          faded(PALETTE.blue, 0.22),
        ),
        ...lines.map(({ name, values, colour, dash, width = 2 }) =>
          line(name, points(values), colour, width, { borderDash: [...dash] }),
        ),
      ],
    },
    scales: {
      x: dayAxis(start, at.at(-1) ?? start + 1, 1),
      y: valueAxis('units, added up', { suggestedMax: topWithNames(highest, marks.length, BODY_HEIGHT) }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [uprightLines(marks), lineNames(lines), lineWords(lines)],
  });
}

/** In the middle of the day. */
const marksOf = ({ half, fourInFive }: ForecastResults['lastUnit']): UprightLine[] =>
  [
    { words: 'half', date: half, dash: [] },
    { words: 'four of five', date: fourInFive, dash: [7, 4] },
  ].flatMap(({ words, date, dash }) =>
    date === null
      ? []
      : [{ name: `last unit, ${words}: ${date}`, at: momentOf(date) + 0.5, colour: INK, dash }],
  );

function finding({ half, fourInFive }: ForecastResults['lastUnit']): string {
  if (half === null) return 'In half of the builds the last unit is not out in the run';
  return (
    `Last unit out by ${dateText(half)} in half of the builds` +
    (fourInFive === null
      ? ', not in the run in four of five'
      : fourInFive === half
        ? ' and in four of five'
        : `, by ${dateText(fourInFive)} in four of five`)
  );
}

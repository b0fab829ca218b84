import type { ForecastResults } from '../../../study/validate/start/forecast.js';
import { dateText } from '../../first/first.js';
import { INK, PALETTE } from '../../style.js';
import type { Chart } from '../chart.js';
import { momentOf } from '../over-time/days.js';
import { topWithNames, type UprightLine, uprightLines } from '../upright-lines.js';
import { addedUp, BODY_HEIGHT, type DayLine } from './added-up.js';

/** Units shipped from the moment on, in a band, beside those due, with the days of the last unit. */
export function shippedAhead(results: ForecastResults): Chart | null {
  const { byDay, lastUnit, replications } = results;
  if (byDay.length < 2) return null;
  const due = byDay.flatMap((day) => (day.due === null ? [] : [day.due])),
    lines: [DayLine, ...DayLine[]] = [
      {
        name: 'shipped',
        note: replications < 2 ? '1 build' : 'half of the builds; band: 8 of 10',
        colour: PALETTE.blue,
        dash: [],
        width: 2.5,
        values: byDay.map(({ p50 }) => p50),
      },
    ];
  if (due.length > 0)
    lines.push({ name: 'due', note: 'by date', colour: PALETTE.vermillion, dash: [8, 3], values: due });
  const marks = [
    { words: 'half of the builds', date: lastUnit.half, dash: [] },
    { words: 'four of five', date: lastUnit.fourInFive, dash: [7, 4] },
  ].flatMap(({ words, date, dash }): UprightLine[] =>
    date === null
      ? []
      : // The middle of the day.
        [{ name: `last unit, ${words}: ${date}`, at: momentOf(date) + 0.5, colour: INK, dash }],
  );
  const highest = Math.max(...byDay.map(({ p90 }) => p90), ...due);
  return addedUp({
    finding: finding(lastUnit),
    how:
      'Units added up to the end of each day.' +
      (replications < 2 ? '' : ' Band: 8 of 10 builds.') +
      (marks.length === 0 ? '' : ' Upright: last unit out.'),
    days: byDay.map(({ date }) => date),
    band: { of: '8 of 10 builds', low: byDay.map(({ p10 }) => p10), high: byDay.map(({ p90 }) => p90) },
    lines,
    plugins: [uprightLines(marks)],
    top: Math.ceil(topWithNames(highest, marks.length, BODY_HEIGHT)),
  });
}

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

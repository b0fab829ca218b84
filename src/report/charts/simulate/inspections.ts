import { intervalName, percentWithInterval, short } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote } from '../chart.js';
import { bars } from '../datasets.js';
import { foremost } from '../foremost.js';
import { perRow, rowChart, rowHeight, rowsBySite, span } from '../row-chart.js';

/** First-time-through of every inspection, and what happens to the rest. */
export function firstTimeThrough(results: Results): Chart | null {
  const { inspections } = results;
  const first = inspections[0];
  if (first === undefined) return null;
  const { shown, note } = foremost(
      inspections,
      ({ ftt }) => -ftt.mean,
      'inspections',
      'least often passed first time',
    ),
    rows = rowsBySite(shown);
  const head = intervalHead(results);
  const lowest = inspections.reduce((least, item) => (item.ftt.mean < least.ftt.mean ? item : least), first);
  const yieldText =
    results.rty === null ? '' : `; over the whole route (RTY) ${percentWithInterval(results.rty)}`;
  return rowChart({
    finding: `Fewest right first time: ${lowest.name}, ${percentWithInterval(lowest.ftt)}${yieldText}`,
    how:
      'First-time-through by inspection: right first time over inspected, first visits only. Bars ' +
      `with ${intervalNote(results)}; send-backs and repairs per 100 inspections.${note}`,
    each: rowHeight(rows.length) + 2,
    rows,
    columns: [
      [['first time', `through, % ${head}`], (item) => short(item.ftt, 100)],
      [['sent back', `per 100 ${head}`], (item) => short(item.sentBackPer100)],
      [['repaired', `per 100 ${head}`], (item) => short(item.repairedPer100)],
    ],
    values: valueAxis('first-time-through, %', { max: 100 }),
    datasets: [bars(perRow(rows, ({ ftt }) => ftt.mean * 100))],
    intervals: [intervalName(results.level), ({ ftt }) => span(ftt, 100)],
  });
}

import { intervalName, percentWithInterval, short } from '../../../study/format.js';
import type { Results } from '../../../study/simulate/results.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote } from '../chart.js';
import { whiskers } from '../marks.js';
import { bars, rowChart, rowHeight, spans } from '../row-chart.js';
import { column, perRow, rowsBySite, span } from '../rows.js';

/** First-time-through of every inspection, and what happens to the rest. */
export function firstTimeThrough(results: Results): Chart | null {
  const { inspections } = results;
  const first = inspections[0];
  if (first === undefined) return null;
  const rows = rowsBySite(inspections);
  const ci = intervalName(results.level);
  const head = intervalHead(results);
  const columns = [
    column(['first time', `through, % ${head}`], rows, (item) => short(item.ftt, 100)),
    column(['sent back', `per 100 ${head}`], rows, (item) => short(item.sentBackPer100)),
    column(['repaired', `per 100 ${head}`], rows, (item) => short(item.repairedPer100)),
  ];
  const lowest = inspections.reduce((least, item) => (item.ftt.mean < least.ftt.mean ? item : least), first);
  const yieldText =
    results.rty === null ? '' : `; over the whole route (RTY) ${percentWithInterval(results.rty)}`;
  return rowChart({
    finding: `Fewest right first time: ${lowest.name}, ${percentWithInterval(lowest.ftt)}${yieldText}`,
    how:
      'First-time-through by inspection: right first time over inspected, first visits only. Bars ' +
      `with ${intervalNote(results)}; send-backs and repairs per 100 inspections.`,
    bodyHeight: 64 + rows.length * (rowHeight(rows.length) + 2),
    rows,
    columns,
    values: valueAxis('first-time-through, %', { position: 'top', max: 100 }),
    datasets: [
      bars(
        'first-time-through, %',
        perRow(rows, ({ ftt }) => ftt.mean * 100),
      ),
      spans(
        ci,
        perRow(rows, ({ ftt }) => span(ftt, 100)),
      ),
    ],
    plugins: [whiskers(1)],
  });
}

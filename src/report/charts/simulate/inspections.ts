import type { Results } from '../../../study/simulate/results.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalHead, intervalNote, intervalWords } from '../chart.js';
import { bars } from '../datasets.js';
import { figures, told } from '../figures.js';
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
  const yieldText = results.rty === null ? '' : `; over the whole route ${told(results.rty, 100)} %`,
    passed = figures(
      shown.map(({ ftt }) => ftt),
      100,
    ),
    sent = figures(shown.map(({ sentBackPer100 }) => sentBackPer100)),
    repaired = figures(shown.map(({ repairedPer100 }) => repairedPer100));
  return rowChart({
    finding: `Fewest right first time: ${lowest.name}, ${told(lowest.ftt, 100)} %${yieldText}`,
    how: `Right first time over inspected, first visits only, with the ${intervalNote(results)}.${note}`,
    each: rowHeight(rows.length) + 2,
    rows,
    columns: [
      [['first time', `through, % ${head}`], (item) => passed.short(item.ftt)],
      [['sent back', `per 100 ${head}`], (item) => sent.short(item.sentBackPer100)],
      [['repaired', `per 100 ${head}`], (item) => repaired.short(item.repairedPer100)],
    ],
    values: valueAxis('first-time-through, %', { max: 100 }),
    datasets: [bars(perRow(rows, ({ ftt }) => ftt.mean * 100))],
    intervals: {
      of: 'right first time, %',
      sure: intervalWords(results.level),
      ends: ({ ftt }) => span(ftt, 100),
    },
  });
}

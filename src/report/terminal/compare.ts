import type { CompareResults } from '../../study/compare/results.js';
import { bounds, count, intervalName, mean, number, signed } from '../../study/format.js';
import { byMeasure, togetherText } from '../compare.js';
import { joined } from './lines.js';
import { table, tableOf } from './table.js';

/** The comparison in short: the answer, the base, then one table with a row for each measure and what-if. */
export function compareTable(results: CompareResults, width?: number): string {
  const measures = byMeasure(results),
    ci = intervalName(results.differenceLevel);
  const rows = measures.flatMap(({ name, unit, whatIfs }) => [
    [`${name}, ${unit}`, '', '', ''],
    ...whatIfs.map(({ whatIf, difference, verdict }) => [
      `  ${whatIf}`,
      signed(difference),
      bounds(difference),
      verdict,
    ]),
  ]);
  return joined(
    [
      results.answer,
      `${count(results.replications, 'replication')} of each, seed ${results.seed}, the same chance in all`,
      `intervals: ${togetherText(results)}`,
      '',
      tableOf(measures, [
        { head: 'base', cell: ({ name, unit }) => `${name}, ${unit}` },
        { head: 'mean', align: 'right', cell: ({ base }) => mean(base) },
        { head: ci, cell: ({ base }) => bounds(base) },
        { head: 'matters beyond', align: 'right', cell: ({ zone }) => number(zone.amount) },
      ]),
      '',
      table(rows, [
        { head: 'what-if minus base' },
        { head: 'difference', align: 'right' },
        { head: ci },
        { head: 'verdict' },
      ]),
      ...results.findings.flatMap((text) => ['', `finding: ${text}`]),
    ],
    width,
  );
}

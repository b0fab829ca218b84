import type { CompareResults } from '../../study/compare/results.js';
import { bounds, count, mean, number, signed } from '../../study/format.js';
import { byMeasure, measureName } from '../compare.js';
import { triedWith } from '../constraint.js';
import { compareFirst } from '../first/compare.js';
import { constraintLines } from './constraint.js';
import { BETWEEN_ALL, firstPieces, plainly } from './first.js';
import { joined } from './lines.js';
import { table, tableOf } from './table.js';

/** The comparison in short: the answer, the base, then one table with a row for each measure and what-if. */
export function compareTable(results: CompareResults, width?: number): string {
  const measures = byMeasure(results),
    { replications, seed, level, constraint } = results;
  const rows = measures.flatMap(({ id, name, unit, whatIfs }) => [
    [`${measureName({ id, name })}, ${unit}`, '', '', ''],
    ...whatIfs.map(({ whatIf, difference, verdict }) => [
      `  ${whatIf}`,
      signed(difference),
      bounds(difference),
      verdict,
    ]),
  ]);
  return joined(
    [
      ...firstPieces(compareFirst(results), results.answer),
      `${count(replications, 'build')} of each tried, seed ${seed}, the same chance in all`,
      `between: all differences hold together, ${number(100 * level)} %`,
      '',
      tableOf(measures, [
        { head: 'base', cell: ({ id, name, unit }) => `${measureName({ id, name })}, ${unit}` },
        { head: 'mean', align: 'right', cell: ({ base }) => mean(base) },
        { head: BETWEEN_ALL, cell: ({ base }) => bounds(base) },
        { head: 'matters beyond', align: 'right', cell: ({ zone }) => number(zone.amount) },
      ]),
      '',
      table(rows, [
        { head: 'what-if minus base' },
        { head: 'difference', align: 'right' },
        { head: BETWEEN_ALL },
        { head: 'verdict' },
      ]),
      ...(constraint === null ? [] : constraintLines(constraint, triedWith(results))),
      ...results.findings.flatMap((text) => ['', `finding: ${plainly(text)}`]),
    ],
    width,
  );
}

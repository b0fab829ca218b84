import type { CompareResults } from '../../study/compare/results.js';
import { bounds, count, intervalName, mean, number, signed } from '../../study/format.js';
import { fitColumns } from '../shorten.js';
import { table } from './table.js';
import { lines } from './simulate.js';

const WIDTH = 100;

/** The comparison in short: the answer, the base, then one table with a row for each measure and what-if. */
export function compareTable(results: CompareResults): string {
  const { base, whatIfs, measures } = results;
  const baseRows = measures.map(({ name, unit }, m) => [
    `${name}, ${unit}`,
    mean(base.values[m]!.value),
    bounds(base.values[m]!.value),
  ]);
  const rows = measures.flatMap(({ name, unit }, m) => [
    [`${name}, ${unit}`, '', '', '', ''],
    ...whatIfs.map(({ name: whatIf, compared }) => {
      const { difference, verdict, pairingGain } = compared[m]!;
      return [
        `  ${whatIf}`,
        signed(difference),
        bounds(difference),
        verdict,
        pairingGain === null ? '' : number(pairingGain),
      ];
    }),
  ]);
  return [
    ...lines(results.answer, ''),
    `${count(results.replications, 'replication')} of each, seed ${results.seed}, the same chance in all`,
    '',
    table(baseRows, [
      { head: 'base', most: 44 },
      { head: 'mean', align: 'right' },
      { head: intervalName(results.level) },
    ]),
    '',
    table(rows, [
      { head: 'what-if minus base', most: 38 },
      { head: 'difference', align: 'right' },
      { head: intervalName(results.differenceLevel), most: 24 },
      { head: 'verdict' },
      { head: 'pairing', align: 'right' },
    ]),
    ...results.findings.flatMap((text) => ['', ...lines(`finding: ${text}`, '  ')]),
  ]
    .map((line) =>
      line
        .split('\n')
        .map((each) => fitColumns(each, WIDTH))
        .join('\n'),
    )
    .join('\n');
}

import type { FitResults } from '../../../study/fit/results.js';
import { count, number } from '../../../study/format.js';
import { factorsTold } from '../../page/records/fit-factors.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';
import { oddRows } from './odd-rows.js';

/** What was found of each step, then what is to be known of it, and of the rows. */
export function fitTable(results: FitResults, width?: number): string {
  const { steps, rows, used, table, oddities, notes } = results;
  const p = (value: number | undefined): string =>
    value === undefined ? '' : value < 0.001 ? '< 0.001' : value.toFixed(value < 0.1 ? 3 : 2);
  return joined(
    [
      `${count(used, 'time')} of ${count(steps.length, 'step')} in ${table}` +
        (used < rows ? `; ${count(rows - used, 'row')} of ${rows} left out` : ''),
      '',
      tableOf(steps, [
        { head: 'step', cell: ({ step }) => step },
        { head: 'n', align: 'right', cell: ({ n }) => String(n) },
        { head: 'mean, min', align: 'right', cell: ({ mean }) => number(mean.mean) },
        ...(steps.some(({ againstScenario }) => againstScenario !== null)
          ? [
              {
                head: 'scenario',
                align: 'right' as const,
                cell: ({ againstScenario: now }: FitResults['steps'][number]) =>
                  now === null ? '' : number(now.now) + (now.differs === null ? '' : ' *'),
              },
            ]
          : []),
        { head: 'cv', align: 'right', cell: ({ cv }) => (cv === null ? '' : number(cv)) },
        { head: 'distribution', cell: ({ distribution }) => distribution },
        { head: 'p', align: 'right', cell: ({ andersonDarling }) => p(andersonDarling?.p) },
        { head: 'warnings', align: 'right', cell: ({ warnings }) => String(warnings.length || '') },
      ]),
      '',
      'p: chance of times that fit as badly, were the distribution the true one (Anderson-Darling)',
      ...(steps.some(({ againstScenario: now }) => now?.differs != null)
        ? ['*: the clocked mean surely differs from that in the scenario']
        : []),
      ...steps.flatMap((result) => [
        ...[
          ...result.warnings.map(({ told }) => told),
          ...factorsTold(result),
          ...result.notes,
          ...(result.notWritten === null ? [] : [result.notWritten]),
        ].map((told) => `${result.step}: ${told}`),
      ]),
      ...notes,
      ...oddRows(oddities),
    ],
    width,
  );
}

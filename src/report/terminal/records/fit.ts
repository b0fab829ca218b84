import type { FitResults } from '../../../study/fit/results.js';
import { count, number } from '../../../study/format.js';
import { joined } from '../lines.js';
import { tableOf } from '../table.js';

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
        { head: 'n', align: 'right', cell: ({ times }) => String(times.length) },
        { head: 'mean, min', align: 'right', cell: ({ mean }) => number(mean) },
        { head: 'cv', align: 'right', cell: ({ cv }) => (cv === null ? '' : number(cv)) },
        { head: 'distribution', cell: ({ distribution }) => distribution },
        { head: 'p', align: 'right', cell: ({ andersonDarling }) => p(andersonDarling?.p) },
        { head: 'warnings', align: 'right', cell: ({ fit }) => String(fit.warnings.length || '') },
      ]),
      '',
      'p: chance of times that fit as badly, were the distribution the true one (Anderson-Darling)',
      ...steps.flatMap(({ step, fit, notWritten }) => [
        ...fit.warnings.map(({ told }) => `${step}: ${told}`),
        ...(notWritten === null ? [] : [`${step}: ${notWritten}`]),
      ]),
      ...notes,
      ...oddities.flatMap(({ count: n, kind, lines, told, example }) => [
        `${kind}, ${count(n, 'row')}: line ${lines.join(', ')}${n > lines.length ? ' and more' : ''}; ` +
          `got ${JSON.stringify(example.slice(0, 60))}. ${told}`,
      ]),
    ],
    width,
  );
}

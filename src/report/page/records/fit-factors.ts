import type { FitResults, StepResult } from '../../../study/fit/results.js';
import { count, number } from '../../../study/format.js';
import { pWords } from '../../charts/records/fit-words.js';
import { columns, type PageTable } from '../../columns.js';
import { counted, rounded, type Valued, valued } from '../../sheets/cells.js';

/** What was done about options that matter, a sentence each. */
export function factorsTold({ factors, factorsKept, factorsNotWritten, n, fitted }: StepResult): string[] {
  const usual = factors.map(({ option, usual: value }) => `${option} ${value}`).join(' and ');
  return [
    ...factors.map(({ option, usual: value, factors: by }) => {
      const each = Object.entries(by).map(([other, factor]) => `${other} ${number(factor)}`);
      return `Written as a work factor by ${option}: ${each.join(', ')}; ${value} counts as 1.`;
    }),
    ...(factors.length > 1
      ? [
          'The factors were fitted together: each tells what the others do not explain, and a unit with ' +
            'several has their product.',
        ]
      : []),
    ...(factors.length > 0
      ? [`What was fitted are times of ${usual}: all others were divided by their factors first.`]
      : []),
    ...factorsKept.map(
      (option) =>
        `The times were divided by the work factor by ${option} that the scenario has, which stays.`,
    ),
    ...(fitted < n
      ? [`${count(n - fitted, 'time')} with a value that is not told, or seldom seen, were not fitted.`]
      : []),
    ...factorsNotWritten.map(({ option, why }) => `Not written by ${option}: ${why}.`),
  ];
}

/** Of each step and option the means of its values. */
export function optionsTable({ steps }: FitResults): PageTable {
  const all = steps.flatMap((result) =>
    result.options.flatMap(({ option, p, levels, isFelt }) =>
      levels.map((level) => ({
        ...level,
        ...{ step: result.step, option, p, isFelt },
        inScenario: factorOf(result, option, level.value),
      })),
    ),
  );
  return {
    id: 'options',
    title: 'Times by option',
    note:
      'Mean, min, and its ratio to that of the commonest value with a 95 % interval; p: chance of such ' +
      'differences, were there none (Kruskal-Wallis, allowing for all options of the step). In the ' +
      'scenario: the factor written, which tells only what other options do not.',
    ...columns(all, [
      ['Step', 'step'],
      ['Option', 'option'],
      ['Value', 'value'],
      ['Times', ({ n }) => counted(n)],
      ['Mean', ({ mean }) => rounded(mean)],
      ['Ratio', ({ factor, low, high }) => ratioCell(factor, low, high)],
      ['p', ({ p }) => (p === null ? '' : pCell(p))],
      ['In the scenario', ({ inScenario }) => (inScenario === null ? '' : rounded(inScenario))],
    ]),
  };
}

/** A p-value; below a thousandth it is only said to be. */
export const pCell = (p: number): Valued => valued(pWords(p), p);

function factorOf({ factors }: StepResult, option: string, value: string): number | null {
  const found = factors.find((each) => each.option === option);
  if (found === undefined) return null;
  return value === found.usual ? 1 : (found.factors[value] ?? null);
}

const ratioCell = (factor: number, low: number | null, high: number | null): Valued => ({
  text: number(factor) + (low === null || high === null ? '' : ` (${number(low)} to ${number(high)})`),
  parts: [
    { name: '', value: factor, form: 'number' },
    { name: 'low', value: low, form: 'number' },
    { name: 'high', value: high, form: 'number' },
  ],
});

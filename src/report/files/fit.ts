import type { FitResults, StepResult } from '../../study/fit/results.js';
import { written } from '../../study/fit/written.js';
import { count } from '../../study/format.js';
import { shownJson } from '../../study/shown.js';
import { stableJson } from '../json.js';
import { csv, fileTable } from './folder/csv.js';

/** Names of files that `fit` writes, with what is in them, but the pictures. */
export function fitFiles(results: FitResults): Map<string, string> {
  return new Map([
    ['results.json', fitJson(results)],
    ['fitted.yaml', fittedYaml(results)],
    ['left-out.csv', leftOutCsv(results)],
  ]);
}

/** What `--json` prints and results.json holds: without the curves, which are functions. */
export const fitJson = ({ steps, leftOut, ...rest }: FitResults): string =>
  stableJson({
    ...rest,
    leftOut: leftOut.map(({ line, kind }) => ({ line, kind })),
    steps: steps.map(({ fit, times, ...step }) => ({
      ...step,
      n: times.length,
      why: fit.why,
      written: written(fit.distribution),
      warnings: fit.warnings.map(({ kind, told }) => ({ kind, told })),
      options: fit.options.map(({ option, adjusted, isFelt, levels }) => ({
        option,
        p: Number.isNaN(adjusted) ? null : adjusted,
        isFelt,
        levels,
      })),
      candidates: fit.candidates.map(({ name, aic, distribution, andersonDarling, kolmogorovSmirnov }) => ({
        name,
        aic,
        written: written(distribution),
        andersonDarling,
        kolmogorovSmirnov,
      })),
    })),
  });

/** A part of a scenario for `include`: the values that were measured, each with what it rests on. */
export function fittedYaml({ table, rows, used, oddities, steps, notes }: FitResults): string {
  const placed = steps.filter(({ path }) => path !== null),
    comment = (text: string): string => `# ${inLine(text)}\n`;
  return [
    comment(`Fitted to the times in ${table}: ${count(used, 'time')} of ${count(rows, 'row')}.`),
    ...oddities.map((odd) => comment(`${count(odd.count, 'row')}, ${odd.kind}, ${odd.rule}.`)),
    ...notes.map(comment),
    ...(placed.length === 0
      ? [comment('No step of the table has a value in the scenario.')]
      : ['measured:\n']),
    ...steps.map((step) => entry(step, table)),
    ...(placed.length === 0 ? ['measured: {}\n'] : []),
  ].join('');
}

function entry({ step, path, notWritten, fit, from, to }: StepResult, file: string): string {
  const remarks = fit.warnings.map(({ told }) => `  # ${inLine(told)}\n`);
  if (path === null) return `  # ${inLine(step)}: ${notWritten ?? 'not written'}\n`;
  const days = from === null || to === null ? '' : `, from: ${from}, to: ${to}`,
    basis = `basis: { measured: ${fit.n}${days}, file: ${quoted(file)} }`,
    value = written(fit.distribution),
    whole = value.startsWith('{') ? `${value.slice(0, -2)}, ${basis} }` : `{ value: ${value}, ${basis} }`;
  return `${remarks.join('')}  ${quoted(path)}: ${whole}\n`;
}

/** A name as YAML takes it: a double-quoted text is that of JSON. */
const quoted = (text: string): string => shownJson(JSON.stringify(text));
/** In a comment, which a line end would end. */
const inLine = (text: string): string => shownJson(JSON.stringify(text)).slice(1, -1).replaceAll('\\"', '"');

function leftOutCsv({ head, leftOut }: FitResults): string {
  return csv(
    fileTable(leftOut, [
      ['line', ({ line }) => line],
      ['why', ({ kind }) => kind],
      ...head.map((name, i) => [name, ({ cells }: (typeof leftOut)[number]) => cells[i] ?? ''] as const),
    ]),
  );
}

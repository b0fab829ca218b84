import type { FitResults, StepResult } from '../../study/fit/results.js';
import { count } from '../../study/format.js';
import { shownJson } from '../../study/shown.js';
import { CHARTS } from '../charts/of-study.js';
import { stableJson } from '../json.js';
import { fitPage } from '../page/records/fit.js';
import { factorsTold } from '../page/records/fit-factors.js';
import { type FileTable, fileTable } from './folder/csv.js';
import { type Files, studyFiles } from './folder/study-files.js';

/** What `--json` prints and results.json holds: without the cells of rows that are left out. */
export const fitKept = ({ leftOut, ...rest }: FitResults): object => ({
  ...rest,
  leftOut: leftOut.map(({ line, kind }) => ({ line, kind })),
});
export const fitJson = (results: FitResults): string => stableJson(fitKept(results));

const report = studyFiles<FitResults>({
  charts: CHARTS.fit,
  page: fitPage,
  data: { 'left-out.csv': leftOutData },
  sheets: ['left-out.csv'],
  kept: fitKept,
});

/** The report of `fit`, with the file that a scenario includes. */
export const fitFiles = async (results: FitResults, notice?: (line: string) => void): Promise<Files> =>
  new Map([...(await report(results, notice)), ['fitted.yaml', fittedYaml(results)]]);

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

function entry(result: StepResult, file: string): string {
  const { step, path, notWritten, fitted, written, warnings, factorsWritten, notes, from, to } = result,
    said = [...warnings.map(({ told }) => told), ...factorsTold(result), ...notes],
    remarks = said.map((told) => `  # ${inLine(told)}\n`).join('');
  if (path === null) return `  # ${inLine(step)}: ${notWritten ?? 'not written'}\n`;
  const days = from === null || to === null ? '' : `, from: ${from}, to: ${to}`,
    basis = `basis: { measured: ${fitted}${days}, file: ${quoted(file)} }`,
    whole = written.startsWith('{')
      ? `${written.slice(0, -2)}, ${basis} }`
      : `{ value: ${written}, ${basis} }`,
    factors = factorsWritten.map(
      (each) => `  ${quoted(each.path)}: ${asYaml(each.value).slice(0, -2)}, ${basis} }\n`,
    );
  return `${remarks}  ${quoted(path)}: ${whole}\n${factors.join('')}`;
}

/** A map of factors on one line; so many digits as times have. */
function asYaml(value: unknown): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(7)));
  const entries = Object.entries(value as object).map(([key, each]) => `${quoted(key)}: ${asYaml(each)}`);
  return `{ ${entries.join(', ')} }`;
}

/** A name as YAML takes it: a double-quoted text is that of JSON. */
const quoted = (text: string): string => shownJson(JSON.stringify(text));
/** In a comment, which a line end would end. */
const inLine = (text: string): string => shownJson(JSON.stringify(text)).slice(1, -1).replaceAll('\\"', '"');

function leftOutData({ head, leftOut }: FitResults): FileTable {
  return fileTable(leftOut, [
    ['line', ({ line }) => line, 'count'],
    ['why', ({ kind }) => kind],
    ...head.map((name, i) => [name, ({ cells }: (typeof leftOut)[number]) => cells[i] ?? ''] as const),
  ]);
}

import { count, exact } from '../../study/format.js';
import { type MeasuredResults, partsOf } from '../../study/measured/results.js';
import { shownJson } from '../../study/shown.js';
import { stableJson } from '../json.js';
import { csv, type FileTable, fileTable } from './folder/csv.js';

/** What `fit` writes of chances, learning and stops: results, a part of a scenario, rows left out. */
export const measuredFiles = (results: MeasuredResults): Map<string, string> =>
  new Map([
    ['results.json', measuredJson(results)],
    ['fitted.yaml', measuredYaml(results)],
    ['left-out.csv', csv(leftOutData(results))],
  ]);

/** What `--json` prints and results.json holds. */
export const measuredJson = ({ leftOut, ...rest }: MeasuredResults): string =>
  stableJson({ ...rest, leftOut: leftOut.map(({ line, kind }) => ({ line, kind })) });

/** A part of a scenario for `include`: values by path; what has no place, and what to know, as remarks. */
export function measuredYaml(results: MeasuredResults): string {
  const parts = partsOf(results),
    isEmpty = parts.every(({ entries }) => entries.length === 0),
    { table, rows, used, oddities, notes, of } = results;
  return [
    remark(`Fitted to ${table} (${of}): ${exact(used)} of ${count(rows, 'row')} used.`),
    ...oddities.map((odd) => remark(`${count(odd.count, 'row')}, ${odd.kind}, ${odd.rule}.`)),
    ...notes.map(remark),
    isEmpty ? 'measured: {}\n' : 'measured:\n',
    ...parts.flatMap((part) => {
      const name = nameOf(part);
      return [
        ...[...part.told, ...part.notWritten].map((told) => `  ${remark(`${name}: ${told}`)}`),
        ...part.entries.map(({ path, value }) => `  ${quoted(path)}: ${value}\n`),
      ];
    }),
  ].join('');
}

/** What a part is about, as a sentence begins. */
export function nameOf(part: object): string {
  if ('station' in part) return String(part.station);
  if ('step' in part) return String(part.step);
  const { defect, madeAt, looks } = part as {
    defect: string;
    madeAt: string | null;
    looks: { step: string }[];
  };
  return madeAt === null
    ? `${defect} at ${looks.map(({ step }) => step).join(', ')}`
    : `${defect} from ${madeAt}`;
}

/** The rows left out, each with its line and why. */
function leftOutData({ head, leftOut }: MeasuredResults): FileTable {
  return fileTable(leftOut, [
    ['line', ({ line }) => line, 'count'],
    ['why', ({ kind }) => kind],
    ...head.map((name, i) => [name, ({ cells }: (typeof leftOut)[number]) => cells[i] ?? ''] as const),
  ]);
}

/** Of a log, which is not kept in memory: what was wrong, how often, and the first lines. */
export const logLeftOut = ({ oddities }: Pick<MeasuredResults, 'oddities'>): string =>
  csv(
    fileTable(oddities, [
      ['why', 'kind'],
      ['rule', 'rule'],
      ['rows', 'count', 'count'],
      ['first_lines', ({ lines }) => lines.join(' ')],
      ['example', 'example'],
      ['told', 'told'],
    ]),
  );

/** In a comment, which a line end would end. */
const remark = (text: string): string =>
  `# ${shownJson(JSON.stringify(text)).slice(1, -1).replaceAll('\\"', '"')}\n`;
/** A name as YAML takes it: a double-quoted text is that of JSON. */
const quoted = (text: string): string => shownJson(JSON.stringify(text));

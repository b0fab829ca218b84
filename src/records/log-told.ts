import type { LogRead } from './log/cleaned.js';
import type { LeftOutRow, Oddity } from './oddity.js';

/** What became of the rows of a log, for whoever reads the answer that rests on it. */
export interface LogTold {
  /** Without the head and blank lines; null where it was never a file. */
  readonly rows: number | null;
  readonly used: number | null;
  /** What was wrong with rows, with the first lines of each. */
  readonly oddities: readonly Oddity[];
  /** Rows that are not used, each with its line; of very many only the first. */
  readonly leftOut: readonly LeftOutRow[];
  /** The same in short, a line each. */
  readonly told: readonly string[];
}

/** Steps without a name in the scenario that are listed. */
const MOST_NAMES = 10;

const count = (n: number, one: string): string => `${n.toLocaleString('en')} ${n === 1 ? one : `${one}s`}`;

export const toldOfLog = (read: LogRead | null): LogTold =>
  read === null
    ? { rows: null, used: null, oddities: [], leftOut: [], told: [] }
    : {
        rows: read.rows,
        used: read.used,
        oddities: read.oddities,
        leftOut: read.leftOut,
        told: linesOf(read),
      };

function linesOf({ rows, used, oddities, unknownSteps, ignored, encoding, form }: LogRead): string[] {
  const others = unknownSteps.slice(1, MOST_NAMES);
  return [
    `${count(rows, form === 'OCEL 2.0' ? 'event' : 'row')}, ` +
      `${used === rows ? 'all' : used.toLocaleString('en')} used`,
    ...(encoding === 'UTF-8' ? [] : [`the file is ${encoding}, and was read so`]),
    ...(ignored.length === 0 ? [] : [`columns that are not read: ${ignored.join(', ')}`]),
    ...oddities.map(
      ({ count: n, lines, told }) =>
        `${count(n, 'row')} (line${lines.length === 1 ? '' : 's'} ${lines.join(', ')}` +
        `${n > lines.length ? ' ..' : ''}): ${told}`,
    ),
    // The first of them is told already.
    ...others.map(
      ({ name, count: n, near }) =>
        `nor has it a step "${name}" (${count(n, 'row')})` +
        (near === undefined ? '' : `, did you mean "${near}"?`),
    ),
    ...(unknownSteps.length > MOST_NAMES ? [`and ${unknownSteps.length - MOST_NAMES} names more`] : []),
  ];
}

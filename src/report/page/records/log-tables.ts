import type { LogTold } from '../../../records/log-told.js';
import { capital, exact } from '../../../study/format.js';
import { columns, type PageTable } from '../../columns.js';
import { counted } from '../../sheets/cells.js';

/** What was wrong with rows of a log, and what became of them; of which the log is `file`. */
export function oddRowsTable({ file, rows, used, oddities }: LogTold & { readonly file: string }): PageTable {
  return {
    id: 'odd-rows',
    title: 'Rows of the log that were mended or left out',
    note:
      (rows === null || used === null ? '' : `${file}: ${exact(used)} of ${exact(rows)} rows are used. `) +
      'Line numbers are those of the file, the first few of each; left-out.csv has every row left out.',
    ...columns(oddities, [
      ['What is wrong', ({ kind }) => capital(kind)],
      ['Rows', ({ count }) => counted(count)],
      ['What became of them', 'rule'],
      ['Lines', ({ lines, count }) => `${lines.join(', ')}${count > lines.length ? ' ..' : ''}`],
      ['In full', ({ told }) => capital(told)],
      ['The first says', 'example'],
    ]),
  };
}

/** A line each, as sentences. */
export const logSentences = ({ told }: LogTold): string[] =>
  told.map((each) => `${capital(each).replace(/\.$/, '')}.`);

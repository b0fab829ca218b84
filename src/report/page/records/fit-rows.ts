import type { FitResults } from '../../../study/fit/results.js';
import { exact } from '../../../study/format.js';
import { columns, type PageTable } from '../../columns.js';
import { counted } from '../../sheets/cells.js';

/** Rows that the page lists; left-out.csv and the workbook have all. */
const MOST = 100;

/** What was wrong with rows, and what became of them. */
export function odditiesTable({ oddities }: FitResults): PageTable {
  return {
    id: 'rows',
    title: 'Rows with something wrong',
    note: 'Lines are those of the first rows of each kind; the head of the table is line 1.',
    ...columns(oddities, [
      ['What', 'kind'],
      ['Rows', ({ count }) => counted(count)],
      ['Became', 'rule'],
      ['First lines', ({ lines }) => lines.join(', ')],
      ['Such as', ({ example }) => example.slice(0, 60)],
      ['In words', 'told'],
    ]),
  };
}

/** The rows that are not used. */
export function leftOutTable({ leftOut, head }: FitResults): PageTable {
  return {
    id: 'left-out',
    title: 'Rows left out',
    note:
      leftOut.length <= MOST
        ? 'As they stand in the table.'
        : `The first ${exact(MOST)} of ${exact(leftOut.length)}, as they stand there; left-out.csv has all.`,
    head: ['Line', 'Why', ...head],
    rows: leftOut
      .slice(0, MOST)
      .map(({ line, kind, cells }) => [counted(line), kind, ...head.map((_, i) => cells[i] ?? '')]),
  };
}

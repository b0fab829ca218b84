import type { BufferResult } from '../../study/sections/buffers.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable } from '../columns.js';
import { type Cell, counted, percent } from '../sheets/cells.js';

export function buffers(results: Results, interval: string): PageTable {
  return {
    id: 'buffers',
    title: 'Buffers and banks',
    note: `Full: share of time without a free space; ${interval}.`,
    ...columns(results.buffers, [
      ['Name', 'name'],
      ['Kind', 'kind'],
      ['Site', 'site'],
      ['Spaces', spacesOf],
      ['Mean units', 'mean'],
      ['Full, % of time', fullOf],
    ]),
  };
}

export const spacesOf = ({ spaces }: BufferResult): Cell => (spaces === null ? 'unlimited' : counted(spaces));

/** How often it is full, in per cent of the time with its interval. */
export const fullOf = ({ full, spaces }: BufferResult): Cell =>
  full !== null ? percent(full) : spaces === null ? 'never' : 'not known';

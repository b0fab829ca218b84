import { short } from '../../study/format.js';
import type { BufferResult } from '../../study/sections/buffers.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../page-table.js';

export function buffers(results: Results, interval: string): PageTable {
  return {
    id: 'buffers',
    title: 'Buffers and banks',
    note: `Full: share of time without a free space; ${interval}.`,
    ...columns(results.buffers, [
      ['Name', ({ name }) => name],
      ['Kind', ({ kind }) => kind],
      ['Site', ({ site }) => site],
      ['Spaces', spacesText],
      ['Mean units', ({ mean }) => short(mean)],
      ['Full, % of time', fullText],
    ]),
  };
}

export const spacesText = ({ spaces }: BufferResult): string =>
  spaces === null ? 'unlimited' : String(spaces);

/** How often it is full, in per cent of the time with its interval. */
export const fullText = ({ full, spaces }: BufferResult): string =>
  full !== null ? percent(full) : spaces === null ? 'never' : 'not known';

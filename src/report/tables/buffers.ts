import { exact } from '../../study/format.js';
import type { BufferResult } from '../../study/sections/buffers.js';
import type { Results } from '../../study/simulate/results.js';
import { columns, type PageTable, percent } from '../columns.js';

export function buffers(results: Results, interval: string): PageTable {
  return {
    id: 'buffers',
    title: 'Buffers and banks',
    note: `Full: share of time without a free space; ${interval}.`,
    ...columns(results.buffers, [
      ['Name', 'name'],
      ['Kind', 'kind'],
      ['Site', 'site'],
      ['Spaces', spacesText],
      ['Mean units', 'mean'],
      ['Full, % of time', fullText],
    ]),
  };
}

export const spacesText = ({ spaces }: BufferResult): string =>
  spaces === null ? 'unlimited' : exact(spaces);

/** How often it is full, in per cent of the time with its interval. */
export const fullText = ({ full, spaces }: BufferResult): string =>
  full !== null ? percent(full) : spaces === null ? 'never' : 'not known';

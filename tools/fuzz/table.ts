import type { Counts } from '../../tests/fuzz/batch.js';

const COLUMNS = ['tried', 'accepted', 'refused', 'run', 'skipped', 'failed'] as const;

/** A line a kind, and one for all. */
export function countsTable(counts: readonly (readonly [name: string, counts: Counts])[]): string {
  const total = (column: (typeof COLUMNS)[number]): number =>
    counts.reduce((sum, [, each]) => sum + each[column], 0);
  const rows = [
    ['kind', ...COLUMNS],
    ...counts.map(([name, each]) => [name, ...COLUMNS.map((column) => String(each[column]))]),
    ['all', ...COLUMNS.map((column) => String(total(column)))],
  ];
  return rows
    .map((row) => row.map((cell, i) => (i === 0 ? cell.padEnd(16) : cell.padStart(9))).join(''))
    .join('\n');
}

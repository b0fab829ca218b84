import { read, type WorkBook, type WorkSheet } from '@e965/xlsx';

/** A workbook as SheetJS has it, which had no part in writing it; `files` are the parts of the zip. */
export type Book = WorkBook & { readonly files: Readonly<Record<string, { readonly content: Uint8Array }>> };

export const readBack = (content: unknown): Book =>
  read(content, { cellNF: true, cellStyles: true, cellFormula: true, bookFiles: true }) as Book;

/** The cell under a head, in a row counted from 1 below it. */
export function under(sheet: WorkSheet, head: string, row: number) {
  const at = headsOf(sheet).indexOf(head);
  if (at === -1) throw new RangeError(`${head}: expected a head, got ${headsOf(sheet).join(' | ')}`);
  return cellsOf(sheet)[row]?.[at];
}

export const headsOf = (sheet: WorkSheet): string[] => cellsOf(sheet)[0].map((cell) => String(cell?.v));

/** Days since 1899-12-30, as a workbook has a date (ECMA-376 part 1, sec. 18.17.4.1). */
export const serial = (date: string): number => Date.parse(date) / 86_400_000 + 25_569;

interface CellRead {
  readonly t: string;
  readonly v: string | number;
  readonly z: string;
  readonly f?: string;
}

/** All cells by row and column. */
export function cellsOf(sheet: WorkSheet): (CellRead | undefined)[][] {
  const rows: (CellRead | undefined)[][] = [];
  for (const [at, cell] of Object.entries(sheet)) {
    const [, letters = '', row = ''] = /^([A-Z]+)(\d+)$/.exec(at) ?? [];
    if (letters === '') continue;
    const column = Array.from(letters).reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0) - 1;
    (rows[Number(row) - 1] ??= [])[column] = cell as CellRead;
  }
  return Array.from(rows, (row) => (row as CellRead[] | undefined) ?? []);
}

export const part = ({ files }: Book, name: string): string =>
  Buffer.from(files[name].content).toString('utf8');

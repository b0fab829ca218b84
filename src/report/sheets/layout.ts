import type { FileTable } from '../files/folder/csv.js';
import type { Cell, Form, Part } from './cells.js';

/** A value of a sheet, and how it is shown: an Excel format, which texts and empty cells have none of. */
export interface SheetCell {
  readonly value: string | number | Date | null;
  readonly format?: string;
}

/** Rows under a head, a value a cell. */
export interface Sheet {
  readonly head: readonly string[];
  readonly rows: readonly (readonly SheetCell[])[];
}

/** What Excel takes (its specifications and limits); CSV files and results.json have the rest. */
const MOST_ROWS = 1_048_576,
  MOST_COLUMNS = 16_384;
/** Excel knows no day before, and none with more digits; it takes 1900 for a leap year. */
const FIRST_DAY = '1900-03-01',
  DAY = /^\d{4}-\d\d-\d\d$/;
const DIGITS = 10;

const FORMATS: Readonly<Record<Exclude<Form, 'number'>, string>> = {
  count: '#,##0',
  share: '0.0%',
  money: '#,##0.00',
  day: 'yyyy-mm-dd',
};
const SMALL = '0.0000';

/**
 * A table as a sheet: every value of its cells has a column of its own, the parts of a column stand side by
 * side, words stand in the first of them. Numbers have 10 significant digits, as in results.json.
 */
export function laidOut(head: readonly string[], rows: readonly (readonly Cell[])[]): Sheet {
  const shown = rows.slice(0, MOST_ROWS - 1),
    places = head
      .flatMap((title, column) =>
        placesOf(
          title,
          column,
          shown.map((row) => row[column] ?? ''),
        ),
      )
      .slice(0, MOST_COLUMNS);
  return {
    head: places.map(({ title }) => title),
    rows: shown.map((row) =>
      places.map(({ column, part, numbers }) => sheetCell(row[column] ?? '', part, numbers)),
    ),
  };
}

/** A CSV file as a sheet, with the same head. */
export const fileSheet = ({ head, forms, rows }: FileTable): Sheet =>
  laidOut(
    head,
    rows.map((row) =>
      row.map((value, column): Cell => {
        const form = forms[column] ?? (typeof value === 'number' ? 'number' : undefined);
        if (form === undefined || value === '') return String(value);
        return { text: '', parts: [{ name: '', value, form }] };
      }),
    ),
  );

/** A column of a sheet: which part of the cells of which column of the table. */
interface Place {
  readonly title: string;
  readonly column: number;
  readonly part: string;
  /** How plain numbers are shown there. */
  readonly numbers: string;
}

function placesOf(title: string, column: number, cells: readonly Cell[]): Place[] {
  const parts = cells.flatMap((cell) => (typeof cell === 'string' ? [] : cell.parts)),
    hasWords = cells.some((cell) => typeof cell === 'string' && cell !== ''),
    names = new Set([...(hasWords || parts.length === 0 ? [''] : []), ...parts.map(({ name }) => name)]);
  const numbers = numberFormat(parts.filter(({ form }) => form === 'number'));
  return [...names].map((part) => ({
    title: part === '' ? title : `${title}: ${part}`,
    column,
    part,
    numbers,
  }));
}

/** The same for all of a column, so that their points stand below each other. */
function numberFormat(parts: readonly Part[]): string {
  if (parts.every(({ value }) => Number.isInteger(value ?? 0))) return FORMATS.count;
  const largest = largestOf(parts);
  return largest < 1 ? SMALL : largest < 10 ? '0.000' : largest < 1000 ? '0.00' : '#,##0.0';
}

const largestOf = (parts: readonly Part[]): number =>
  parts.reduce((most, { value }) => (typeof value === 'number' ? Math.max(most, Math.abs(value)) : most), 0);

/** With more decimals where the column's would leave a digit or none of a number and its interval. */
function ownFormat(parts: readonly Part[], numbers: string): string {
  const largest = largestOf(parts);
  return numbers !== FORMATS.count && largest > 0 && largest < 0.1 ? SMALL : numbers;
}

function sheetCell(cell: Cell, place: string, numbers: string): SheetCell {
  if (typeof cell === 'string') return { value: place === '' && cell !== '' ? cell : null };
  const { value, form } = cell.parts.find(({ name }) => name === place) ?? { value: null, form: 'number' };
  if (value === null) return { value };
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return { value: null };
    const format = form === 'number' ? ownFormat(cell.parts, numbers) : FORMATS[form];
    // No -0.
    return { value: Number(value.toPrecision(DIGITS)) + 0, format };
  }
  return form === 'day' && DAY.test(value) && value >= FIRST_DAY
    ? { value: new Date(`${value}T00:00:00Z`), format: FORMATS.day }
    : { value };
}

import type { CellStyle, Cell as WriterCell, WriteSheet } from 'hucre/xlsx';
import { capital } from '../../study/format.js';
import type { FileTable } from '../files/folder/csv.js';
import type { PageContent } from '../page/page.js';
import { answerSheet, contentsSheet, type Listed } from './front.js';
import { fileSheet, laidOut, type Sheet, type SheetCell } from './layout.js';
import { SheetNames } from './names.js';
import { type Measure, sizes } from './sizes.js';
import { cellText, looksLikeError } from './words.js';

/** The writer takes the clock for a file without a time of its last change; no report has one. */
const NO_TIME = new Date('1980-01-01T00:00:00Z');
const FONT = { name: 'Calibri', size: 11 };
/** A wider first column, in letters, would leave no room for what moves beside it. */
const MOST_FROZEN = 40;
const headStyle = (horizontal: 'left' | 'right'): CellStyle => ({
  font: { ...FONT, bold: true },
  alignment: { wrapText: true, vertical: 'bottom', horizontal },
});
const WORDS: CellStyle = { alignment: { wrapText: true, vertical: 'top' } };

/**
 * A report as a workbook: the answer, the list of sheets, a sheet for each table of the page, and those of
 * the files given by name. The same content gives the same bytes.
 */
export async function workbook(
  content: PageContent,
  files: readonly (readonly [name: string, table: FileTable])[],
): Promise<Buffer> {
  const names = new SheetNames(),
    [answer, contents] = [names.next('Answer'), names.next('Contents')];
  const tables = content.tables.map(({ id, title, note, head, rows }) => ({
    name: names.next(capital(id.replaceAll('-', ' '))),
    title,
    note,
    sheet: laidOut(head, rows),
  }));
  const data = files.map(([file, table]) => ({
    name: names.next(file),
    title: `all of ${file}`,
    note: '',
    sheet: fileSheet(table),
  }));
  const listed: Listed[] = [...tables, ...data];
  // Loaded here: who only looks at numbers does not need it.
  const writer = await import('hucre/xlsx');
  const written = (name: string, sheet: Sheet): WriteSheet =>
    writerSheet(name, sheet, writer.measureValueWidth);
  return Buffer.from(
    await writer.writeXlsx({
      defaultFont: FONT,
      properties: { title: cellText(content.scenario), created: NO_TIME, modified: NO_TIME },
      sheets: [
        written(answer, answerSheet(content)),
        written(contents, contentsSheet(listed)),
        ...[...tables, ...data].map(({ name, sheet }) => written(name, sheet)),
      ],
    }),
  );
}

function writerSheet(name: string, sheet: Sheet, measure: Measure): WriteSheet {
  const cells = new Map<string, Partial<WriterCell>>(),
    { widths, heights } = sizes(sheet, measure);
  sheet.head.forEach((text, column) => {
    const first = sheet.rows.find((row) => (row[column]?.value ?? null) !== null)?.[column]?.value,
      style = headStyle(typeof first === 'string' || first === undefined ? 'left' : 'right');
    cells.set(`0,${column}`, { ...words(text), style });
  });
  sheet.rows.forEach((row, r) => {
    row.forEach((cell, column) => {
      if (cell.value !== null) cells.set(`${r + 1},${column}`, writerCell(cell));
    });
  });
  return {
    name,
    cells,
    rows: [],
    columns: widths.map((width) => ({ width })),
    rowDefs: new Map([...heights].map(([row, height]) => [row, { height }])),
    freezePane: { rows: 1, columns: (widths[0] ?? 0) <= MOST_FROZEN ? 1 : 0 },
    pageSetup: {
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: '1:1',
    },
  };
}

function writerCell({ value, format }: SheetCell): Partial<WriterCell> {
  if (typeof value === 'string') return { ...words(value), style: WORDS };
  const style: CellStyle = {
    alignment: { vertical: 'top' },
    ...(format !== undefined && { numFmt: format }),
  };
  return { value, style };
}

/** Never a formula, whatever it begins with. */
function words(text: string): Partial<WriterCell> {
  const value = cellText(text);
  return looksLikeError(value) ? { richText: [{ text: value }] } : { value };
}

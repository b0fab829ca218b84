import type { PageTable } from '../../../src/report/columns.js';
import { textOf } from '../../../src/report/sheets/cells.js';

/** The rows of a table as the page shows them. */
export const textRows = ({ rows }: Pick<PageTable, 'rows'>): string[][] => rows.map((row) => row.map(textOf));

/** A page as it is read: the spaces at which no line is broken look like any other. */
export const asRead = (page: unknown): string => String(page).replaceAll('\u00a0', ' ');

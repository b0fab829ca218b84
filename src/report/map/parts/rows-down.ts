import { type Arc, reachOf } from '../signs/backs.js';
import { levelsBeside } from '../signs/bracket-levels.js';
import { text } from '../signs/frame.js';
import { glyphLength } from '../signs/glyphs.js';
import { type Label, labelOf, NO_LABEL } from '../signs/labels.js';
import { standingAt } from '../standing.js';
import { sentBackText, toldAt } from '../told.js';
import type { Section, World } from '../world.js';
import { plantHead } from './plant-head.js';

/** Distance between side lines, and between columns, CSS pixels. */
export const GUTTER = 20;
const TRACK = 22,
  DENSE_TRACK = 20;

/** All that a page is drawn from. */
export interface Page {
  readonly world: World;
  readonly sections: readonly Section[];
  readonly arcs: readonly Arc[];
}

/** The head of a plant, a cell, or a lane between plants. */
export type Row =
  | { readonly kind: 'head'; readonly section: number }
  | { readonly kind: 'cell' | 'lane'; readonly section: number; readonly cell: number };

/** Rows of one column that belong to one plant, or one lane, with their labels and heights. */
export interface Piece {
  readonly section: number;
  readonly rows: readonly { readonly row: Row; readonly label: Label; readonly height: number }[];
  /** Where its labels begin, from the left edge of the column. */
  readonly labelAt: number;
}

/** Widths and distances of one column. */
export interface Column {
  readonly inner: number;
  /** Where the way runs, from the left edge; on its left arcs and how many are sent back. */
  readonly wayAt: number;
  readonly reach: number;
  readonly arcSize: number;
  readonly track: number;
  /** Of brackets from the way, by level; the outermost stand at the left edge. */
  readonly bracketAt: (level: number) => number;
  /** Taken by brackets at the left edge. */
  readonly room: number;
}

export function columnOf(world: World, arcs: readonly Arc[], rows: readonly Row[]): Column {
  const { form, brackets } = world,
    count = Math.max(1, form.columns),
    cells = rows.flatMap((row) => (row.kind === 'head' ? [] : [row.cell])),
    [low, high] = [Math.min(...cells), Math.max(...cells)],
    own = arcs.filter(({ side, fromCell, toCell }) => side < 0 && toCell <= high && fromCell >= low),
    arcSize = form.smallSize - 0.5,
    widest = Math.max(0, ...own.map((arc) => text(0, 0, sentBackText(world, arc), { size: arcSize }).width)),
    reach =
      own.length === 0 ? 22 : reachOf({ isAcross: false }, -1, Math.max(...own.map(({ level }) => level))),
    here = brackets.filter(({ side, fromCell, toCell }) => side < 0 && fromCell <= high && toCell >= low),
    { at: levelAt, room } = levelsBeside(here, high),
    wayAt = 6 + (own.length === 0 ? 0 : widest + 5) + reach + room;
  return {
    inner: (form.width - 2 * form.margin - (count - 1) * GUTTER) / count,
    wayAt,
    room,
    bracketAt: (level) => (levelAt.get(level) ?? 0) - wayAt,
    reach,
    arcSize,
    track: form.isDense ? DENSE_TRACK : TRACK,
  };
}

export const rowsOf = (sections: readonly Section[]): Row[] =>
  sections.flatMap((section, i): Row[] =>
    section.kind === 'lane'
      ? [{ kind: 'lane', section: i, cell: section.cell }]
      : [
          { kind: 'head', section: i },
          ...section.cells.map((cell) => ({ kind: 'cell' as const, section: i, cell })),
        ],
  );

/** Rows cut where plants begin and end. */
export function piecesOf(
  world: World,
  column: Column,
  sections: readonly Section[],
  arcs: readonly Arc[],
  rows: readonly Row[],
): Piece[] {
  const bySection = new Map<number, Row[]>();
  for (const row of rows) bySection.set(row.section, [...(bySection.get(row.section) ?? []), row]);
  return [...bySection].map(([section, own]): Piece => {
    const found = sections[section],
      site = found?.kind === 'plant' ? found.site : '',
      cells = own.flatMap((row) => (row.kind === 'cell' ? [row.cell] : [])),
      labelAt = column.wayAt + 18 + column.track * outermost(world, cells),
      width = Math.max(60, column.inner - labelAt - 4);
    return {
      section,
      labelAt,
      rows: own.map((row) => {
        if (row.kind === 'head') {
          const indent = headIndent(world, column, own),
            { height } = plantHead(world, site, isAgain(found), 0, 0, column.inner - indent - 8);
          return { row, label: NO_LABEL, height: height + 8 + (isStart(found) ? WORD : 0) };
        }
        const label = labelOf(world, toldAt(world, row.cell, site), width);
        return { row, label, height: heightOf(world, arcs, row, label) };
      }),
    };
  });
}

/** Room for the word where units start, or leave. */
export const WORD = 16;

/** Whether the unit's way begins in a plant. */
const isStart = (section: Section | undefined): boolean =>
  section?.kind === 'plant' && section.cells[0] === 0;

/** Where the head of a plant begins: beside the brackets that run by. */
export function headIndent({ brackets }: World, { room }: Column, rows: readonly Row[]): number {
  const first = rows.flatMap((row) => (row.kind === 'head' ? [] : [row.cell])).at(0) ?? Infinity;
  return brackets.some(({ side, fromCell, toCell }) => side < 0 && fromCell < first && toCell >= first)
    ? room + 4
    : 8;
}

export const isAgain = (section: Section | undefined): boolean =>
  section?.kind === 'plant' && section.isAgain;

/** Kept free along the strip where a bracket begins or ends, so that another can do so at the next stop. */
function roomForEnds({ brackets }: World, cell: number): number {
  const here = brackets.filter(({ side, fromCell, toCell }) => side < 0 && [fromCell, toCell].includes(cell));
  if (here.length === 0) return 0;
  return here.some(({ back, toCell }) => back !== undefined && toCell === cell) ? 22 : 8;
}

function heightOf(
  world: World,
  arcs: readonly Arc[],
  row: { readonly kind: string; readonly cell: number },
  label: Label,
): number {
  const { isDense } = world.form;
  if (row.kind === 'lane') return Math.max(isDense ? 62 : 78, label.height + 14);
  const standing = standingAt(world, row.cell),
    glyph = standing === undefined ? 24 : glyphLength({ isAcross: false }, standing),
    sent = arcs.filter(({ side, fromCell }) => side < 0 && fromCell === row.cell).length;
  return Math.max(label.height, glyph + roomForEnds(world, row.cell), sent * 12) + (isDense ? 4 : 8);
}

/** The outermost track of cells that follow each other, and of the side lines that run by. */
function outermost({ strip }: World, cells: readonly number[]): number {
  const first = cells[0] ?? 0,
    last = cells.at(-1) ?? -1,
    passing = strip.sides.filter(({ leaves, joins, cells: own }) => {
      const begin = leaves >= 0 ? leaves : (own[0] ?? 0);
      return own.length > 0 && begin <= last && Math.max(joins, ...own) >= first;
    });
  return Math.max(
    0,
    ...cells.map((cell) => strip.cells[cell]?.track ?? 0),
    ...passing.map(({ track }) => track),
  );
}

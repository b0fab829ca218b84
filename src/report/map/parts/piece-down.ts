import { MUTED } from '../../style.js';
import { fit } from '../../text.js';
import { type Drawn, GROUND, type Group } from '../shapes.js';
import { word } from '../signs/ends.js';
import { downFrame, text } from '../signs/frame.js';
import { glyphLength } from '../signs/glyphs.js';
import { drawLabel } from '../signs/labels.js';
import { drawLane } from '../signs/lane.js';
import { standingAt } from '../standing.js';
import type { BracketGround } from './bracket-rows.js';
import { bracketsDown } from './brackets-down.js';
import { plantHead } from './plant-head.js';
import { type Column, headIndent, isAgain, type Page, type Piece, WORD } from './rows-down.js';
import { drawRun, type Spread } from './run.js';
import { texts } from './texts-down.js';

/** Room for the name of a plant that goes on in another column. */
const GOES_ON = 18;

/** The road to the next plant, from a corner of a column on. */
export function lanePiece({ world }: Page, column: Column, { rows }: Piece, x: number, top: number): Drawn {
  const [first] = rows;
  if (first === undefined || first.row.kind === 'head') return { groups: [], height: 0 };
  const { row, label, height } = first;
  const at = x + column.wayAt + 22,
    ends = [top - 6, top + height] as const,
    ground = {
      low: row.cell,
      high: row.cell,
      first: ends[0],
      last: ends[1],
      beginOf: () => ends[0],
      endOf: () => ends[1],
      middleOf: () => ends[0],
    };
  return {
    groups: [
      drawLane(world, row.cell, downFrame(x + column.wayAt), top + 2, top + height - 2),
      ...bracketsDown(world, column, ground, x),
      {
        kind: 'words',
        about: '',
        place: row.cell,
        shapes: drawLabel(label, at, top + (height - label.height) / 2, 'start').shapes,
      },
    ],
    height,
  };
}

/** What stands of a plant in one column. */
export function plantPiece(page: Page, column: Column, piece: Piece, x: number, top: number): Drawn {
  const { world, sections } = page,
    frame = downFrame(x + column.wayAt),
    found = sections[piece.section],
    site = found?.kind === 'plant' ? found.site : '',
    indent = headIndent(
      world,
      column,
      piece.rows.map(({ row }) => row),
    ),
    heads: Group[] = [],
    spreads = new Map<number, Spread>();
  const size = world.form.smallSize;
  let y = top;
  if (piece.rows[0]?.row.kind !== 'head') {
    y += GOES_ON;
    heads.push({
      kind: 'plant',
      about: '',
      shapes: [
        text(x + column.inner - 6, top + size + 2, fit(`${site}, goes on`, column.inner - 12, size), {
          size,
          anchor: 'end',
          colour: MUTED,
        }),
      ],
    });
  }
  for (const { row, height } of piece.rows) {
    if (row.kind === 'head')
      heads.push({
        kind: 'plant',
        about: site,
        shapes: plantHead(world, site, isAgain(found), x + indent, y + 4, column.inner - indent - 8).shapes,
      });
    else {
      const standing = standingAt(world, row.cell),
        glyph = standing === undefined ? height : glyphLength(frame, standing);
      spreads.set(row.cell, { from: y, to: y + height, glyph: y + (height - glyph) / 2 });
    }
    y += height;
  }
  const lastCell = piece.rows.at(-1)?.row,
    isEnd = lastCell?.kind === 'cell' && lastCell.cell === world.strip.cells.length - 1,
    floor: Group = {
      kind: 'ground',
      about: '',
      shapes: [
        {
          kind: 'rect',
          x,
          y: top,
          width: column.inner,
          height: y + 4 - top + (isEnd ? WORD : 0),
          fill: GROUND,
        },
      ],
    };
  if (spreads.size === 0) return { groups: [floor, ...heads], height: y - top + 10 };
  const isWhole = piece.rows[0]?.row.kind === 'head',
    first = isWhole ? Math.min(...[...spreads.values()].map(({ from }) => from)) : top,
    run = { frame, first, last: y + 3, spreads, trackAt: (track: number) => track * column.track },
    drawn = drawRun(world, run, page.arcs),
    written = texts(page, column, piece, x, spreads, drawn.marks),
    ground: BracketGround = {
      low: Math.min(...spreads.keys()),
      high: Math.max(...spreads.keys()),
      first: top + (isWhole ? 0 : GOES_ON),
      last: y + 4,
      beginOf: (cell) => (spreads.get(cell)?.glyph ?? top) - 3,
      endOf: (cell) => (drawn.marks.get(cell)?.end ?? y) + 4,
      middleOf: (cell) => drawn.marks.get(cell)?.middle ?? top,
    };
  return {
    groups: [
      floor,
      ...heads,
      { kind: 'line', about: '', shapes: written.leads },
      ...drawn.groups,
      ...bracketsDown(world, column, ground, x),
      ...written.words,
      {
        kind: 'words',
        about: '',
        shapes: [
          ...(spreads.has(0) ? [word('START', x + column.wayAt, first - 12, size, 'middle')] : []),
          ...(isEnd ? [word('SHIPPED', x + column.wayAt, y + 3 + WORD / 2 + 1, size, 'middle')] : []),
        ],
      },
    ],
    height: y - top + 10 + (isEnd ? WORD : 0),
  };
}

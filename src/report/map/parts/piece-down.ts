import { INK, MUTED } from '../../style.js';
import { fit } from '../../text.js';
import { type Drawn, GROUND, type Group, polyline, type Shape } from '../shapes.js';
import { standingAt } from '../standing.js';
import { sentBackText } from '../told.js';
import type { Section, World } from '../world.js';
import type { Arc } from './backs.js';
import { downFrame, text } from './frame.js';
import { glyphLength } from './glyphs.js';
import { drawLabel } from './labels.js';
import { drawLane } from './lane.js';
import { plantHead } from './plant-head.js';
import { type Columns, isAgain, type Piece } from './rows-down.js';
import { drawRun, type Mark, type Spread } from './run.js';

/** Room for the name of a plant that goes on in another column. */
const GOES_ON = 18;

/** All that a page is drawn from. */
export interface Page {
  readonly world: World;
  readonly columns: Columns;
  readonly sections: readonly Section[];
  readonly arcs: readonly Arc[];
}

/** The road to the next plant, from a corner of a column on. */
export function lanePiece({ world, columns }: Page, { rows }: Piece, x: number, top: number): Drawn {
  const [first] = rows;
  if (first === undefined || first.row.kind === 'head') return { groups: [], height: 0 };
  const { row, label, height } = first;
  const at = x + columns.wayAt + 22;
  return {
    groups: [
      drawLane(world, row.cell, downFrame(x + columns.wayAt), top + 2, top + height - 2),
      {
        kind: 'words',
        about: '',
        shapes: drawLabel(label, at, top + (height - label.height) / 2, 'start').shapes,
      },
    ],
    height,
  };
}

/** What stands of a plant in one column. */
export function plantPiece(page: Page, piece: Piece, x: number, top: number): Drawn {
  const { world, columns, sections } = page,
    frame = downFrame(x + columns.wayAt),
    found = sections[piece.section],
    site = found?.kind === 'plant' ? found.site : '',
    heads: Group[] = [],
    spreads = new Map<number, Spread>();
  let y = top;
  if (piece.rows[0]?.row.kind !== 'head') {
    const size = world.form.smallSize;
    y += GOES_ON;
    heads.push({
      kind: 'plant',
      about: '',
      shapes: [
        text(x + columns.inner - 6, top + size + 2, fit(`${site}, goes on`, columns.inner - 12, size), {
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
        shapes: plantHead(world, site, isAgain(found), x + 8, y + 4, columns.inner - 16).shapes,
      });
    else {
      const standing = standingAt(world, row.cell),
        glyph = standing === undefined ? height : glyphLength(frame, standing);
      spreads.set(row.cell, { from: y, to: y + height, glyph: y + (height - glyph) / 2 });
    }
    y += height;
  }
  const ground: Group = {
    kind: 'ground',
    about: '',
    shapes: [{ kind: 'rect', x, y: top, width: columns.inner, height: y + 4 - top, fill: GROUND }],
  };
  if (spreads.size === 0) return { groups: [ground, ...heads], height: y - top + 10 };
  const isWhole = piece.rows[0]?.row.kind === 'head',
    first = isWhole ? Math.min(...[...spreads.values()].map(({ from }) => from)) : top,
    run = { frame, first, last: y + 3, spreads, trackAt: (track: number) => track * columns.track },
    drawn = drawRun(world, run, page.arcs),
    written = texts(page, piece, x, spreads, drawn.marks);
  return {
    groups: [
      ground,
      ...heads,
      { kind: 'line', about: '', shapes: written.leads },
      ...drawn.groups,
      { kind: 'words', about: '', shapes: written.words },
    ],
    height: y - top + 10,
  };
}

/** Labels of a piece with what leads to them, and how many are sent back. */
function texts(
  { world, columns, arcs }: Page,
  { rows, labelAt }: Piece,
  x: number,
  spreads: ReadonlyMap<number, Spread>,
  marks: ReadonlyMap<number, Mark>,
): { readonly leads: Shape[]; readonly words: Shape[] } {
  const leads: Shape[] = [],
    words: Shape[] = [];
  for (const { row, label } of rows) {
    if (row.kind === 'head') continue;
    const { from = 0, to = 0 } = spreads.get(row.cell) ?? {},
      { shapes, stubs, frame } = drawLabel(label, x + labelAt, (from + to - label.height) / 2, 'start'),
      line = x + columns.wayAt + (world.strip.cells[row.cell]?.track ?? 0) * columns.track,
      middle = marks.get(row.cell)?.middle ?? from;
    words.push(...shapes);
    for (const stub of stubs)
      leads.push(
        ...supply(
          Math.abs(stub - middle) < 9 ? Math.min(line + 13, x + labelAt - 11) : line + 3,
          stub,
          x + labelAt - 3,
        ),
      );
    if (frame !== undefined)
      leads.push(lead([line + 13, middle], [x + labelAt, (frame.top + frame.bottom) / 2]));
    const sent = arcs.filter(({ side, fromCell }) => side < 0 && fromCell === row.cell);
    sent.forEach((arc, i) => {
      const base = middle + 3.5 + 12 * (i - (sent.length - 1) / 2);
      words.push(
        text(x + columns.wayAt - columns.reach - 4, base, sentBackText(world, arc), {
          size: columns.arcSize,
          anchor: 'end',
          colour: MUTED,
        }),
      );
    });
  }
  return { leads, words };
}

/** From what stops the build to its frame. */
const lead = (from: readonly [number, number], to: readonly [number, number]): Shape => ({
  kind: 'path',
  d: polyline([from, to]),
  stroke: INK,
  strokeWidth: 1.5,
  fill: 'none',
});

/** A supply: a short line from its text, with an arrow at the line that takes it. */
const supply = (at: number, y: number, from: number): Shape[] => [
  {
    kind: 'path',
    d: `${polyline([
      [from, y],
      [at, y],
    ])} ${polyline([
      [at + 5, y - 3],
      [at, y],
      [at + 5, y + 3],
    ])}`,
    stroke: INK,
    strokeWidth: 1,
    fill: 'none',
  },
];

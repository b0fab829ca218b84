import { type Drawn, GROUND, type Group } from '../shapes.js';
import type { Arc } from '../signs/backs.js';
import { beginOfRow, type End, endOfRow, letterOf } from '../signs/ends.js';
import { acrossFrame } from '../signs/frame.js';
import { glyphLength } from '../signs/glyphs.js';
import { drawLabel, type Label, labelOf, NO_LABEL } from '../signs/labels.js';
import { drawLane } from '../signs/lane.js';
import { standingAt } from '../standing.js';
import { toldAt } from '../told.js';
import type { Section, World } from '../world.js';
import { BEGIN, band, END, LINE_AT, TIP } from './band-across.js';
import { bracketRows } from './bracket-rows.js';
import { cuts } from './breaks.js';
import { crossing } from './crossing.js';
import { plantHead } from './plant-head.js';

/** Names of plants and lanes stand in a column of their own, on the left. */
const LEFT = 232,
  PAD = 10,
  WIDTHS = [72, 84, 96, 110, 126],
  MOST_LINES = 6;

/** The strip across the page, plant below plant, from `top` on; a plant that is too long goes on below. */
export function across(world: World, sections: readonly Section[], arcs: readonly Arc[], top: number): Drawn {
  const groups: Group[] = [];
  let y = top,
    cut = 0;
  sections.forEach((section, i) => {
    const isLast = i === sections.length - 1,
      drawn =
        section.kind === 'lane'
          ? laneRow(world, section.cell, y, endsOf(cut, isLast))
          : plantRows(world, section, arcs, y, (row, rows) => endsOf(cut + row, isLast && row === rows - 1));
    groups.push(...drawn.groups);
    y += drawn.height;
    cut += drawn.rows;
  });
  return { groups, height: y - top };
}

interface Ends {
  readonly begin: End;
  readonly end: End;
}
const endsOf = (row: number, isLast: boolean): Ends => ({
  begin: row === 0 ? 'START' : { letter: letterOf(row - 1) },
  end: isLast ? 'SHIPPED' : { letter: letterOf(row) },
});

type Rows = Drawn & { readonly rows: number };

function laneRow(world: World, cell: number, top: number, ends: Ends): Rows {
  const { margin, width } = world.form,
    label = labelOf(world, toldAt(world, cell, ''), LEFT - 2 * PAD),
    first = margin + LEFT + LINE_AT,
    last = width - margin - END + TIP,
    below = (from: number) =>
      bracketRows(
        world,
        {
          low: cell,
          high: cell,
          first,
          last,
          beginOf: () => first,
          endOf: () => last,
          middleOf: () => first,
        },
        from,
      ),
    // Brackets stand below the road.
    height = Math.max(label.height + 16, 2 * below(0).height + 30),
    middle = top + height / 2,
    brackets = below(middle + 8),
    size = world.form.smallSize;
  return {
    groups: [
      drawLane(world, cell, acrossFrame(middle), first, last),
      ...brackets.groups,
      {
        kind: 'words',
        about: '',
        place: cell,
        shapes: drawLabel(label, margin + PAD, top + 8, 'start').shapes,
      },
      {
        kind: 'words',
        about: '',
        shapes: [...beginOfRow(ends.begin, first, middle, size), ...endOfRow(ends.end, last, middle, size)],
      },
    ],
    height,
    rows: 1,
  };
}

function plantRows(
  world: World,
  { site, isAgain, cells }: Section & { kind: 'plant' },
  arcs: readonly Arc[],
  top: number,
  ends: (row: number, rows: number) => Ends,
): Rows {
  const { margin, width } = world.form,
    head = plantHead(world, site, isAgain, margin + PAD, top + 8, LEFT - 2 * PAD),
    labels = cells.map((cell) => cellLabel(world, cell, site)),
    widths = cells.map((cell, i) => {
      const standing = standingAt(world, cell),
        glyph = standing === undefined ? 40 : glyphLength({ isAcross: true }, standing);
      return Math.max(labels[i]?.width ?? 0, glyph, 56) + PAD;
    }),
    room = width - 2 * margin - LEFT - BEGIN - END,
    starts = cuts(
      widths,
      cells.map((cell) => crossing(world, arcs, cell)),
      room,
    );
  const groups: Group[] = [];
  let y = top + 6;
  starts.forEach((start, i) => {
    const end = starts[i + 1] ?? cells.length;
    const drawn = band(
      world,
      new Map(
        cells.slice(start, end).map((cell, k) => [
          cell,
          {
            label: labels[start + k] ?? NO_LABEL,
            width: widths[start + k] ?? 0,
          },
        ]),
      ),
      arcs,
      margin + LEFT,
      y,
      ends(i, starts.length),
    );
    groups.push(...drawn.groups);
    y += drawn.height;
  });
  const height = Math.max(y - top, head.height + 8);
  return {
    groups: [
      {
        kind: 'ground',
        about: '',
        shapes: [{ kind: 'rect', x: margin, y: top, width: width - 2 * margin, height, fill: GROUND }],
      },
      { kind: 'plant', about: site, shapes: head.shapes },
      ...groups,
    ],
    height,
    rows: starts.length,
  };
}

/** The narrowest label of few lines, no word of its name cut. */
function cellLabel(world: World, cell: number, site: string): Label {
  const told = toldAt(world, cell, site);
  const [least = 72, ...wider] = told.some(({ kind }) => kind === 'stops' || kind === 'mark')
    ? [150]
    : WIDTHS;
  let label = labelOf(world, told, least);
  for (const width of wider) {
    if (label.lines.length <= MOST_LINES && !label.isCut) break;
    label = labelOf(world, told, width);
  }
  return label;
}

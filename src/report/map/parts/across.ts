import { type Drawn, GROUND, type Group } from '../shapes.js';
import type { Arc } from '../signs/backs.js';
import { acrossFrame } from '../signs/frame.js';
import { glyphLength } from '../signs/glyphs.js';
import { drawLabel, type Label, labelOf, NO_LABEL } from '../signs/labels.js';
import { drawLane } from '../signs/lane.js';
import { standingAt } from '../standing.js';
import { toldAt } from '../told.js';
import type { Section, World } from '../world.js';
import { band, ENDS } from './band-across.js';
import { bracketPitch, bracketRows } from './bracket-rows.js';
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
  let y = top;
  for (const section of sections) {
    const drawn =
      section.kind === 'lane' ? laneRow(world, section.cell, y) : plantRows(world, section, arcs, y);
    groups.push(...drawn.groups);
    y += drawn.height;
  }
  return { groups, height: y - top };
}

function laneRow(world: World, cell: number, top: number): Drawn {
  const { margin, width } = world.form,
    label = labelOf(world, toldAt(world, cell, ''), LEFT - 2 * PAD),
    first = margin + LEFT + PAD,
    last = width - margin - PAD,
    passing = world.brackets.filter((each) => each.fromCell <= cell && each.toCell >= cell).length,
    // Brackets stand below the road.
    height = Math.max(label.height + 16, 2 * passing * bracketPitch(world) + 30),
    frame = acrossFrame(top + height / 2),
    brackets = bracketRows(
      world,
      { low: cell, high: cell, first, last, beginOf: () => first, endOf: () => last, middleOf: () => first },
      top + height / 2 + 8,
    );
  return {
    groups: [
      drawLane(world, cell, frame, first, last),
      ...brackets.groups,
      {
        kind: 'words',
        about: '',
        place: cell,
        shapes: drawLabel(label, margin + PAD, top + 8, 'start').shapes,
      },
    ],
    height,
  };
}

function plantRows(
  world: World,
  { site, isAgain, cells }: Section & { kind: 'plant' },
  arcs: readonly Arc[],
  top: number,
): Drawn {
  const { margin, width } = world.form,
    head = plantHead(world, site, isAgain, margin + PAD, top + 8, LEFT - 2 * PAD),
    labels = cells.map((cell) => cellLabel(world, cell, site)),
    widths = cells.map((cell, i) => {
      const standing = standingAt(world, cell),
        glyph = standing === undefined ? 40 : glyphLength({ isAcross: true }, standing);
      return Math.max(labels[i]?.width ?? 0, glyph, 56) + PAD;
    }),
    room = width - 2 * margin - LEFT - 2 * ENDS,
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

import { INK, MUTED } from '../../style.js';
import { wrap } from '../../text.js';
import { type Group, polyline, type Shape } from '../shapes.js';
import { sentBackText, toldAt } from '../told.js';
import type { Section, World } from '../world.js';
import { type Arc, reachOf } from './backs.js';
import { cuts } from './breaks.js';
import { crossing } from './crossing.js';
import { acrossFrame, text } from './frame.js';
import { glyphLength } from './glyphs.js';
import { drawLabel, type Label, labelOf, NO_LABEL } from './labels.js';
import { drawLane, laneTold } from './lane.js';
import { plantHead } from './plant-head.js';
import { drawRun, GROUND, type Spread } from './run.js';
import { standingAt } from './standing.js';
import { LABEL_GAP, tracksAcross } from './tracks-across.js';

/** Names of plants and lanes stand in a column of their own, on the left. */
const LEFT = 232,
  PAD = 10,
  ENDS = 18,
  WIDTHS = [72, 84, 96, 110, 126],
  MOST_LINES = 6;

interface Drawn {
  readonly groups: Group[];
  readonly height: number;
}

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
    label = labelOf(world, laneTold(world, cell), LEFT - 2 * PAD),
    height = label.height + 16,
    frame = acrossFrame(top + height / 2);
  return {
    groups: [
      drawLane(world, cell, frame, margin + LEFT + PAD, width - margin - PAD),
      { kind: 'words', about: '', shapes: drawLabel(label, margin + PAD, top + 8, 'start').shapes },
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
      cells.map((cell) => crossing(world.strip, arcs, cell)),
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
  const [least = 72, ...wider] = told.some(({ kind }) => kind === 'stops') ? [150] : WIDTHS;
  let label = labelOf(world, told, least);
  for (const width of wider) {
    if (label.lines.length <= MOST_LINES && !label.isCut) break;
    label = labelOf(world, told, width);
  }
  return label;
}

/** One row of cells with their lines, arcs and texts. */
function band(
  world: World,
  cells: ReadonlyMap<number, { readonly label: Label; readonly width: number }>,
  arcs: readonly Arc[],
  left: number,
  top: number,
): Drawn {
  const { strip, form } = world,
    labels = new Map([...cells].map(([cell, { label }]) => [cell, label])),
    tracks = tracksAcross(world, labels),
    trackOf = (cell: number): number => tracks[strip.cells[cell]?.track ?? 0] ?? 0,
    above = Math.max(
      ...tracks.map((each) => each + 8),
      ...[...labels].map(([cell, { height }]) => trackOf(cell) + LABEL_GAP + height),
    ),
    y = Math.round(top + above + 6),
    frame = acrossFrame(y),
    spreads = new Map<number, Spread>();
  let x = left + ENDS;
  for (const [cell, { width }] of cells) {
    const standing = standingAt(world, cell),
      glyph = standing === undefined ? width : glyphLength(frame, standing);
    spreads.set(cell, { from: x, to: x + width, glyph: x + (width - glyph) / 2 });
    x += width;
  }
  const run = {
      frame,
      first: left + ENDS / 2,
      last: x + ENDS / 2,
      spreads,
      trackAt: (track: number) => tracks[track] ?? 0,
    },
    drawn = drawRun(world, run, arcs),
    leads: Shape[] = [],
    words: Group[] = [];
  for (const [cell, label] of labels) {
    const { from = 0, to = 0 } = spreads.get(cell) ?? {},
      line = y - trackOf(cell),
      bottom = line - LABEL_GAP,
      middle = (from + to) / 2,
      { shapes, stubs, frame: box } = drawLabel(label, middle, bottom - label.height, 'middle');
    words.push({ kind: 'words', about: '', shapes });
    if (stubs.length > 0) leads.push(stub(middle, bottom - 1, line - 6));
    if (box !== undefined)
      leads.push({
        kind: 'path',
        d: polyline([
          [middle, box.bottom],
          [middle, line],
        ]),
        stroke: INK,
        strokeWidth: 1.5,
        fill: 'none',
      });
  }
  const texts = arcTexts(world, arcs, spreads, drawn.marks, y);
  return {
    groups: [{ kind: 'line', about: '', shapes: leads }, ...drawn.groups, ...words, ...texts.groups],
    height: y - top + Math.max(form.smallSize + 12, texts.bottom - y) + 8,
  };
}

/** How many are sent back, below the deepest arc of a band. */
function arcTexts(
  world: World,
  arcs: readonly Arc[],
  spreads: ReadonlyMap<number, Spread>,
  marks: ReadonlyMap<number, { readonly middle: number }>,
  y: number,
): { groups: Group[]; bottom: number } {
  const cells = [...spreads.keys()],
    own = arcs.filter(
      ({ side, fromCell, toCell }) =>
        side < 0 && fromCell >= Math.min(...cells) && toCell <= Math.max(...cells),
    ),
    size = world.form.smallSize,
    deepest =
      own.length === 0 ? y : y + reachOf({ isAcross: true }, -1, Math.max(...own.map(({ level }) => level))),
    shapes: Shape[] = [],
    lower = new Map<number, number>();
  for (const arc of own) {
    const spread = spreads.get(arc.fromCell),
      mark = marks.get(arc.fromCell);
    if (spread === undefined || mark === undefined) continue;
    const isHere = spreads.has(arc.toCell),
      words = `${sentBackText(world, arc)}${isHere ? '' : ` to ${arc.to}`}`;
    for (const line of wrap(words, spread.to - spread.from - 4, size)) {
      const base = (lower.get(arc.fromCell) ?? deepest + 2) + Math.round(1.2 * size);
      lower.set(arc.fromCell, base);
      shapes.push(text((spread.from + spread.to) / 2, base, line, { size, anchor: 'middle', colour: MUTED }));
    }
  }
  return {
    groups: [{ kind: 'words', about: '', shapes }],
    bottom: Math.max(deepest + 4, ...lower.values()),
  };
}

/** A supply: a short line down to the mark, with an arrow. */
const stub = (x: number, from: number, to: number): Shape => ({
  kind: 'path',
  d: `${polyline([
    [x, from],
    [x, to],
  ])} M${x - 3} ${to - 4} L${x} ${to} L${x + 3} ${to - 4}`,
  stroke: INK,
  strokeWidth: 1,
  fill: 'none',
});

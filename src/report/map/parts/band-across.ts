import { INK, MUTED } from '../../style.js';
import { fit, wrap } from '../../text.js';
import { type Drawn, type Group, polyline, type Shape } from '../shapes.js';
import { type Arc, reachOf } from '../signs/backs.js';
import { beginOfRow, type End, endOfRow } from '../signs/ends.js';
import { acrossFrame, text } from '../signs/frame.js';
import { glyphLength } from '../signs/glyphs.js';
import { drawLabel, type Label } from '../signs/labels.js';
import { standingAt } from '../standing.js';
import { isRoomAt, sentBackText } from '../told.js';
import { byText } from '../words.js';
import type { World } from '../world.js';
import { bracketRows } from './bracket-rows.js';
import { drawRun, type Run, type Spread } from './run.js';
import { LABEL_GAP, tracksAcross } from './tracks-across.js';

/** Room before the first cell of a row and behind its last, for what goes on from row to row. */
export const BEGIN = 52,
  END = 74;
/** From the left edge to where the line of a row begins, and from its last cell to the tip of its arrow. */
export const LINE_AT = 24,
  TIP = 10;

/** One row of cells with their lines, arcs and texts. */
export function band(
  world: World,
  cells: ReadonlyMap<number, { readonly label: Label; readonly width: number }>,
  arcs: readonly Arc[],
  left: number,
  top: number,
  ends: { readonly begin: End; readonly end: End },
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
  let x = left + BEGIN;
  for (const [cell, { width }] of cells) {
    const standing = standingAt(world, cell),
      glyph = standing === undefined ? width : glyphLength(frame, standing);
    spreads.set(cell, { from: x, to: x + width, glyph: x + (width - glyph) / 2 });
    x += width;
  }
  const run = {
      frame,
      first: left + LINE_AT,
      last: x + TIP,
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
      { shapes, stubs, frames } = drawLabel(label, middle, bottom - label.height, 'middle');
    words.push({ kind: 'words', about: '', place: cell, shapes });
    if (stubs.length > 0) leads.push(stub(middle, bottom - 1, line - 6));
    const box = frames.at(-1);
    if (box !== undefined) {
      // A room is pointed at in the middle of all that is drawn, anything else at its places.
      const at = isRoomAt(world, cell) ? middle : (drawn.marks.get(cell)?.middle ?? middle);
      leads.push({
        kind: 'path',
        d: polyline([
          [at, box.bottom],
          [at, line],
        ]),
        stroke: INK,
        strokeWidth: box.kind === 'stops' ? 1.5 : 1.1,
        fill: 'none',
      });
    }
  }
  const start = spreads.get(strip.cells.findIndex(({ side }) => side < 0));
  words.push({
    kind: 'words',
    about: '',
    shapes: [
      ...(ends.begin !== 'START' || start !== undefined
        ? beginOfRow(ends.begin, ends.begin === 'START' ? (start?.from ?? 0) : run.first, y, form.smallSize)
        : []),
      ...endOfRow(ends.end, run.last, y, form.smallSize),
    ],
  });
  words.push({
    kind: 'words',
    about: '',
    shapes: namesOfLines(world, run, [...cells.keys()], run.first + 3),
  });
  const texts = arcTexts(world, arcs, spreads, drawn.marks, y),
    below = y + Math.max(form.smallSize + 12, texts.bottom - y),
    brackets = bracketRows(
      world,
      {
        low: Math.min(...cells.keys()),
        high: Math.max(...cells.keys()),
        first: run.first,
        last: run.last,
        beginOf: (cell) => (spreads.get(cell)?.glyph ?? left) - 3,
        endOf: (cell) => (drawn.marks.get(cell)?.end ?? x) + 4,
        middleOf: (cell) => drawn.marks.get(cell)?.middle ?? left,
      },
      below,
    );
  return {
    groups: [
      { kind: 'line', about: '', shapes: leads },
      ...drawn.groups,
      ...words,
      ...texts.groups,
      ...brackets.groups,
    ],
    height: below + brackets.height - top + 8,
  };
}

/** Names of side lines that go on from the row above. */
const namesOfLines = (
  { strip, form }: World,
  { frame, trackAt }: Run,
  cells: readonly number[],
  x: number,
): Shape[] =>
  strip.sides.flatMap(({ line, track, leaves, joins, cells: own }) => {
    const begin = leaves >= 0 ? leaves : (own[0] ?? Infinity),
      [first = 0] = cells,
      isFree = cells.slice(0, 3).every((cell) => strip.cells[cell]?.track !== track),
      end = joins >= 0 ? joins : (own.at(-1) ?? -1),
      [, y] = frame.at(0, trackAt(track));
    return begin < first && end > first && isFree && own.length > 0
      ? [text(x, y - 4, fit(line.name, 180, form.smallSize), { size: form.smallSize, colour: MUTED })]
      : [];
  });

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
      words = `${sentBackText(world, arc)}${isHere ? '' : ` to ${arc.to}`}${byText(arc.by)}`;
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

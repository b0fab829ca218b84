import { MUTED } from '../../style.js';
import { wrap } from '../../text.js';
import { type Group, type Shape, type TextShape, textBox } from '../shapes.js';
import { type Bracket, type BracketPiece, drawBracket, HOOK_ROOM, wordsInLine } from '../signs/brackets.js';
import { acrossFrame, text } from '../signs/frame.js';
import type { World } from '../world.js';

/** Where a row of the strip lies, and where the cells of its own begin and end in it. */
export interface BracketGround {
  readonly low: number;
  readonly high: number;
  readonly first: number;
  readonly last: number;
  readonly beginOf: (cell: number) => number;
  readonly endOf: (cell: number) => number;
  readonly middleOf: (cell: number) => number;
}

/** What a bracket shows of itself in the cells from `low` to `high`; null: nothing. */
export function pieceOf(world: World, bracket: Bracket, ground: BracketGround): BracketPiece | null {
  const { fromCell, toCell, side, kind } = bracket,
    { low, high, first, last, beginOf, endOf, middleOf } = ground;
  if (side >= 0 || fromCell > high || toCell < low) return null;
  const isBegin = fromCell >= low,
    isEnd = toCell <= high;
  return {
    from: isBegin ? beginOf(fromCell) : first,
    to: isEnd ? endOf(toCell) : last,
    isBegin,
    isEnd,
    ticks:
      kind === 'pulse line'
        ? world.strip.cells.flatMap(({ side: of }, cell) =>
            of === side && cell >= Math.max(low, fromCell) && cell <= Math.min(high, toCell)
              ? [middleOf(cell)]
              : [],
          )
        : [],
  };
}

/** Words below a bracket that is shorter are no wider than this. */
const LEAST_WORDS = 130;

/** Brackets below a row of the strip that runs across, as few lines as they need. */
export function bracketRows(
  world: World,
  ground: BracketGround,
  top: number,
): { readonly groups: Group[]; readonly height: number } {
  const { brackets } = world,
    pitch = Math.round(world.form.smallSize + HOOK_ROOM - 1),
    rows: { readonly from: number; readonly to: number; readonly drawn: Sketch }[][] = [];
  for (const bracket of brackets) {
    const piece = pieceOf(world, bracket, ground);
    if (piece === null) continue;
    const draw = (y: number) => pieceAcross(world, bracket, piece, y),
      [from, to, bottom] = extent(draw(0)),
      isFree = (row: (typeof rows)[number]): boolean =>
        row.every((each) => each.from > to + 12 || each.to < from - 12);
    let row = rows.findIndex(isFree);
    if (row < 0) row = rows.push([]) - 1;
    rows[row]?.push({ from, to, drawn: { about: bracket.about, bottom, draw } });
  }
  let y = top + 9;
  const groups = rows.flatMap((row) => {
    const at = y;
    y += Math.max(pitch, ...row.map(({ drawn }) => drawn.bottom + HOOK_ROOM));
    return row.map(({ drawn }): Group => ({ kind: 'bracket', about: drawn.about, shapes: drawn.draw(at) }));
  });
  return { groups, height: y - top - 9 };
}
/** A bracket that is drawn once it is known how far down, and how far it reaches below its line. */
interface Sketch {
  readonly about: string;
  readonly bottom: number;
  readonly draw: (y: number) => Shape[];
}

/** From its left to its right, and the lower edge of its words. */
function extent(shapes: readonly Shape[]): [from: number, to: number, bottom: number] {
  const boxes = shapes.flatMap((shape) => (shape.kind === 'text' ? [textBox(shape)] : [])),
    points = shapes.flatMap((shape) =>
      shape.kind === 'path'
        ? [...shape.d.matchAll(/[MLQ ](-?[\d.]+) -?[\d.]+/g)].map(([, x]) => Number(x))
        : [],
    );
  return [
    Math.min(...points, ...boxes.map(({ left }) => left)),
    Math.max(...points, ...boxes.map(({ right }) => right)),
    Math.max(0, ...boxes.map(({ bottom }) => bottom)),
  ];
}

/** Its words stand in the line where there is room, else below it. */
function pieceAcross({ form }: World, bracket: Bracket, piece: BracketPiece, y: number): Shape[] {
  const { words, name, back } = bracket,
    { from, to, isBegin, isEnd } = piece,
    size = form.smallSize,
    drop = isEnd && back !== undefined ? HOOK_ROOM : 4,
    said = isBegin ? words : name,
    inLine = wordsInLine(said, piece, y, size),
    under = [...(inLine === null ? [said] : []), ...(isEnd && back !== undefined ? [back] : [])].join(', '),
    lines = under === '' ? [] : wrap(under, Math.max(LEAST_WORDS, to - from), size),
    shapes = (x: number): TextShape[] =>
      lines.map((line, i) =>
        text(x, y + drop + size + i * Math.round(1.2 * size), line, {
          size,
          colour: MUTED,
          anchor: 'middle',
        }),
      ),
    middle = inLine === null ? (from + to) / 2 : to,
    boxes = shapes(middle).map(textBox),
    // Words at an end of the row are drawn in.
    over = Math.max(0, ...boxes.map(({ right }) => right - (form.width - form.margin - 4)));
  return [
    ...drawBracket(acrossFrame(y), 0, bracket, piece, inLine === null ? [] : [inLine.gap]),
    ...(inLine === null ? [] : [inLine.shape]),
    ...shapes(middle - over),
  ];
}

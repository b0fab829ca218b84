import { MUTED } from '../../style.js';
import { type Group, type Shape, textBox } from '../shapes.js';
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

export const bracketPitch = ({ form }: World): number => Math.round(form.smallSize + HOOK_ROOM - 1);

/** Brackets below a row of the strip that runs across, as few lines as they need. */
export function bracketRows(
  world: World,
  ground: BracketGround,
  top: number,
): { readonly groups: Group[]; readonly height: number } {
  const { brackets } = world,
    pitch = bracketPitch(world),
    rows: { readonly from: number; readonly to: number }[][] = [],
    groups: Group[] = [];
  for (const bracket of brackets) {
    const piece = pieceOf(world, bracket, ground);
    if (piece === null) continue;
    const drawn = (y: number) => pieceAcross(world, bracket, piece, y),
      [from, to] = extent(drawn(0)),
      isFree = (row: (typeof rows)[number]): boolean =>
        row.every((each) => each.from > to + 12 || each.to < from - 12);
    let row = rows.findIndex(isFree);
    if (row < 0) row = rows.push([]) - 1;
    rows[row]?.push({ from, to });
    groups.push({ kind: 'bracket', about: bracket.about, shapes: drawn(top + 9 + row * pitch) });
  }
  return { groups, height: rows.length * pitch };
}

function extent(shapes: readonly Shape[]): [number, number] {
  const boxes = shapes.flatMap((shape) => (shape.kind === 'text' ? [textBox(shape)] : [])),
    points = shapes.flatMap((shape) =>
      shape.kind === 'path'
        ? [...shape.d.matchAll(/[MLQ ](-?[\d.]+) -?[\d.]+/g)].map(([, x]) => Number(x))
        : [],
    );
  return [
    Math.min(...points, ...boxes.map(({ left }) => left)),
    Math.max(...points, ...boxes.map(({ right }) => right)),
  ];
}

/** Its words stand in the line where there is room, else behind its end, or ahead of its begin. */
function pieceAcross({ form }: World, bracket: Bracket, piece: BracketPiece, y: number): Shape[] {
  const { words, name, back } = bracket,
    { from, to, isBegin, isEnd } = piece,
    size = form.smallSize,
    said = isBegin ? words : name,
    inLine = wordsInLine(said, piece, y, size),
    after = [...(inLine === null ? [said] : []), ...(isEnd && back !== undefined ? [back] : [])].join(', '),
    base = y + 0.34 * size + (back !== undefined && isEnd ? 3 : 0),
    behind = text(to + 12, base, after, { size, colour: MUTED }),
    isOut = textBox(behind).right > form.width - form.margin - 4;
  return [
    ...drawBracket(acrossFrame(y), 0, bracket, piece, inLine === null ? [] : [inLine.gap]),
    ...(inLine === null ? [] : [inLine.shape]),
    ...(after === ''
      ? []
      : [isOut ? text(from - 8, base, after, { size, colour: MUTED, anchor: 'end' }) : behind]),
  ];
}

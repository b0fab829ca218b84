import { type Group, type Shape, textBox } from '../shapes.js';
import { type Bracket, type BracketPiece, drawBracket, freeOf } from '../signs/brackets.js';
import { downFrame, text } from '../signs/frame.js';
import type { World } from '../world.js';
import { type BracketGround, pieceOf } from './bracket-rows.js';
import type { Column } from './rows-down.js';

/** Brackets beside a piece of the strip that runs down, its column at `x`. */
export const bracketsDown = (world: World, column: Column, ground: BracketGround, x: number): Group[] =>
  world.brackets.flatMap((bracket): Group[] => {
    const piece = pieceOf(world, bracket, ground);
    return piece === null
      ? []
      : [{ kind: 'bracket', about: bracket.about, shapes: pieceDown(world, column, bracket, piece, x) }];
  });

/** Its name stands in the line, read upwards, as often as there is room; its words are at the stops. */
function pieceDown(
  { form }: World,
  column: Column,
  bracket: Bracket,
  piece: BracketPiece,
  x: number,
): Shape[] {
  const size = form.smallSize,
    c = column.bracketAt(bracket.level),
    frame = downFrame(x + column.wayAt),
    free = freeOf(piece),
    long = free.to - free.from,
    length = text(0, 0, bracket.name, { size }).width,
    times = length + 24 > long ? 0 : Math.max(1, Math.round(long / AGAIN)),
    names = Array.from({ length: times }, (_, i) => {
      const [at, middle] = frame.at(free.from + ((i + 0.5) * long) / times, c);
      return text(at + 0.34 * size, middle, bracket.name, { size, anchor: 'middle', isUpright: true });
    }),
    gaps = names.map((name) => {
      const { top, bottom } = textBox(name);
      return { from: top - 4, to: bottom + 4 };
    });
  return [...drawBracket(frame, c, bracket, piece, gaps), ...names];
}

/** A screen of a phone never lacks the name. */
const AGAIN = 600;

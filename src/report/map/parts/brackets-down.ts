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

/** Its name stands in the line, read upwards, where there is room; its words are at the stops. */
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
    [left, middle] = frame.at((free.from + free.to) / 2, c),
    name = text(left + 0.34 * size, middle, bracket.name, { size, anchor: 'middle', isUpright: true }),
    { top, bottom } = textBox(name),
    isRoom = bottom - top + 24 < free.to - free.from;
  return [
    ...drawBracket(frame, c, bracket, piece, isRoom ? { from: top - 4, to: bottom + 4 } : undefined),
    ...(isRoom ? [name] : []),
  ];
}

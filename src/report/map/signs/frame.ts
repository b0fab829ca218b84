import { shown } from '../../../study/shown.js';
import { textWidth } from '../../canvas.js';
import { INK } from '../../style.js';
import { px, type RectShape, type TextShape } from '../shapes.js';

/** Where a strip lies: `a` runs along it, `c` from the unit's way to its side lines. */
export interface Frame {
  readonly isAcross: boolean;
  readonly at: (a: number, c: number) => readonly [x: number, y: number];
}

export const acrossFrame = (y: number): Frame => ({ isAcross: true, at: (a, c) => [a, y - c] });
export const downFrame = (x: number): Frame => ({ isAcross: false, at: (a, c) => [x + c, a] });

/** A rectangle around a point of a frame, with its sides along the strip and across. */
export function block(
  { isAcross, at }: Frame,
  a: number,
  c: number,
  along: number,
  over: number,
  look: Omit<RectShape, 'kind' | 'x' | 'y' | 'width' | 'height'>,
): RectShape {
  const [x, y] = at(a, c),
    [width, height] = isAcross ? [along, over] : [over, along];
  return { kind: 'rect', x: px(x - width / 2), y: px(y - height / 2), width, height, ...look };
}

export interface TextLook {
  readonly size: number;
  readonly weight?: 'normal' | '600';
  readonly anchor?: TextShape['anchor'];
  readonly colour?: string;
  readonly isUpright?: boolean;
}

/** One line of text that can stand anywhere, measured. */
export function text(
  x: number,
  y: number,
  words: string,
  { size, weight = 'normal', anchor = 'start', colour = INK, isUpright = false }: TextLook,
): TextShape {
  const safe = shown(words);
  return {
    kind: 'text',
    text: safe,
    x: px(x),
    y: px(y),
    size,
    weight,
    anchor,
    colour,
    width: Math.ceil(textWidth(safe, size, weight)),
    ...(isUpright ? { isUpright } : {}),
  };
}

import { INK, PALETTE } from '../../style.js';
import { polyline, px, type Shape } from '../shapes.js';
import { UNLIMITED_TEXT } from '../words.js';
import { block, type Frame, text } from './frame.js';

/** A mark of a station, a waiting space, and what stands between them, CSS pixels. */
const MARK = 9,
  MARK_PITCH = 10.5,
  SQUARE = 6,
  SQUARE_PITCH = 7.5,
  DIAMOND = 7.5,
  GAP = 3,
  NUMBER = { width: 19, height: 11 };
/** More than so many spaces or places are a number. */
export const MOST_DRAWN = 10;
/** How far places reach from the line, and the spaces of units sent back on the other side. */
export const HALF = 11;
const REWORK_AT = -13,
  EDGE = { stroke: INK, strokeWidth: 0.9 },
  /** How far the box of a number runs to a point, where it is of units sent back. */
  POINT = 4;

export interface Standing {
  readonly places: number;
  /** Spaces ahead; Infinity: no limit. */
  readonly spaces: number;
  readonly reworkSpaces: number;
  /** Units in the places and in the spaces, on average; undefined: nothing was run. */
  readonly inPlaces: number | undefined;
  readonly inSpaces: number | undefined;
  readonly isTest: boolean;
  /** The spaces of units sent back stand on the line too, ahead of the others: there is no room beside it. */
  readonly isInLine: boolean;
}

/** Length along the line of spaces, marks and the bar of a test. */
export function glyphLength(frame: Pick<Frame, 'isAcross'>, standing: Standing): number {
  const { places, isTest } = standing,
    ahead = lengthAhead(frame, standing);
  return ahead + (ahead > 0 ? GAP : 0) + groupLength(frame, places, 'mark') + (isTest ? GAP + 2 : 0);
}

function lengthAhead(frame: Pick<Frame, 'isAcross'>, { spaces, reworkSpaces, isInLine }: Standing): number {
  const own = groupLength(frame, spaces, 'space'),
    rework = groupLength(frame, reworkSpaces, 'rework');
  return isInLine ? own + rework + (own > 0 && rework > 0 ? 1 : 0) : Math.max(own, rework);
}

type Kind = 'mark' | 'space' | 'rework';

function groupLength(frame: Pick<Frame, 'isAcross'>, count: number, kind: Kind): number {
  if (count <= 0) return 0;
  if (count > mostDrawn(frame, kind)) return frame.isAcross ? NUMBER.width : NUMBER.height;
  if (kind === 'rework') return count * SQUARE_PITCH;
  return Math.ceil(count / 2) * (kind === 'mark' ? MARK_PITCH : SQUARE_PITCH);
}

export const mostDrawn = ({ isAcross }: Pick<Frame, 'isAcross'>, kind: Kind): number =>
  kind === 'rework' ? (isAcross ? 4 : 2) : MOST_DRAWN;

/** Spaces, marks and bar of a station on its line, from `a` on. Tells where its marks are in the middle. */
export function drawGlyph(
  frame: Frame,
  a: number,
  c: number,
  standing: Standing,
): { shapes: Shape[]; middle: number; end: number } {
  const { places, spaces, reworkSpaces, inPlaces, inSpaces, isTest, isInLine } = standing,
    shapes: Shape[] = [],
    ahead = lengthAhead(frame, standing),
    marksFrom = a + ahead + (ahead > 0 ? GAP : 0),
    marks = groupLength(frame, places, 'mark');
  if (spaces > 0) shapes.push(...group(frame, a + ahead, c, spaces, inSpaces, 'space'));
  if (reworkSpaces > 0)
    shapes.push(
      ...(isInLine
        ? group(frame, a + groupLength(frame, reworkSpaces, 'rework'), c, reworkSpaces, undefined, 'rework')
        : group(frame, a + ahead, c + besideAt(frame, reworkSpaces), reworkSpaces, undefined, 'rework')),
    );
  shapes.push(...group(frame, marksFrom + marks, c, places, inPlaces, 'mark'));
  const end = marksFrom + marks;
  if (isTest) shapes.push(block(frame, end + GAP, c, 2.5, 2 * HALF, { fill: INK }));
  return { shapes, middle: marksFrom + marks / 2, end: isTest ? end + GAP + 2 : end };
}

/** How far from the line spaces for units sent back stand. */
function besideAt(frame: Frame, count: number): number {
  const isNumber = count > mostDrawn(frame, 'rework');
  return REWORK_AT - (isNumber ? (frame.isAcross ? 2 : 6) : 0);
}

/** Spaces of a bank on its line, from `a` on. */
export const drawBank = (frame: Frame, a: number, count: number, inside: number | undefined): Shape[] =>
  count <= 0 ? [] : group(frame, a + bankLength(frame, count), 0, count, inside, 'space');
export const bankLength = (frame: Pick<Frame, 'isAcross'>, count: number): number =>
  groupLength(frame, count, 'space');

/** Marks or spaces that end at `a`, two beside each other; the first to be filled is the one at the end. */
function group(
  frame: Frame,
  a: number,
  c: number,
  count: number,
  inside: number | undefined,
  kind: Kind,
): Shape[] {
  if (count > mostDrawn(frame, kind)) return numberBox(frame, a, c, count, inside, kind);
  const pitch = kind === 'mark' ? MARK_PITCH : SQUARE_PITCH,
    isOneRow = kind === 'rework';
  return Array.from({ length: count }, (_, i): Shape[] => {
    const over = isOneRow || count === 1 ? 0 : i % 2 === 0 ? pitch / 2 : -pitch / 2,
      along = a - pitch * ((isOneRow ? i : Math.floor(i / 2)) + 0.5),
      left = (inside ?? 0) - i,
      fill = left >= 0.75 ? 1 : left >= 0.25 ? 0.5 : 0;
    if (kind === 'rework') return [pointed(...frame.at(along, c + over), DIAMOND, DIAMOND, DIAMOND / 2)];
    return kind === 'mark' ? disc(frame, along, c + over, fill) : square(frame, along, c + over, fill);
  }).flat();
}

function square(frame: Frame, a: number, c: number, fill: number): Shape[] {
  const open = block(frame, a, c, SQUARE, SQUARE, { fill: '#ffffff', ...EDGE });
  if (fill === 0) return [open];
  if (fill === 1) return [{ ...open, fill: PALETTE.blue }];
  return [open, { ...open, width: SQUARE / 2, fill: PALETTE.blue }];
}

/** A box that runs to a point on its left and its right; as long as its points it is a diamond. */
const pointed = (x: number, y: number, width: number, height: number, point: number): Shape => ({
  kind: 'path',
  d: polyline(
    [
      [x - width / 2, y],
      [x - width / 2 + point, y - height / 2],
      [x + width / 2 - point, y - height / 2],
      [x + width / 2, y],
      [x + width / 2 - point, y + height / 2],
      [x - width / 2 + point, y + height / 2],
    ],
    ' Z',
  ),
  fill: '#ffffff',
  ...EDGE,
});

/** A round mark; half of one is filled on its left. */
function disc(frame: Frame, a: number, c: number, fill: number): Shape[] {
  const [x, y] = frame.at(a, c),
    r = MARK / 2,
    ring = `M${px(x)} ${px(y - r)} A${r} ${r} 0 0 0 ${px(x)} ${px(y + r)} `,
    look = { stroke: INK, strokeWidth: 1.6 };
  const whole: Shape = {
    kind: 'path',
    d: `${ring}A${r} ${r} 0 0 0 ${px(x)} ${px(y - r)} Z`,
    fill: fill === 1 ? PALETTE.blue : '#ffffff',
    ...look,
  };
  return fill === 0.5 ? [whole, { kind: 'path', d: `${ring}Z`, fill: PALETTE.blue, ...look }] : [whole];
}

/** Too many to draw: their number in one box, filled as far as they are. */
function numberBox(
  frame: Frame,
  a: number,
  c: number,
  count: number,
  inside: number | undefined,
  kind: Kind,
): Shape[] {
  const { width, height } = NUMBER,
    [x, y] = frame.at(a - (frame.isAcross ? width : height) / 2, c),
    left = px(x - width / 2),
    top = px(y - height / 2),
    share = count < Infinity ? Math.min(1, (inside ?? 0) / count) : 0;
  const edge = kind === 'mark' ? { stroke: INK, strokeWidth: 1.6 } : EDGE,
    words = count === Infinity ? UNLIMITED_TEXT : String(count),
    size = count === Infinity ? 11 : words.length > 3 ? 7 : words.length > 2 ? 8 : 9;
  return [
    kind === 'rework'
      ? pointed(x, y, width, height, POINT)
      : { kind: 'rect', x: left, y: top, width, height, fill: '#ffffff', ...edge },
    ...(share > 0
      ? [
          {
            kind: 'rect' as const,
            x: left,
            y: px(top + height - 2.5),
            width: px(width * share),
            height: 2.5,
            fill: PALETTE.blue,
          },
        ]
      : []),
    text(x, y + 0.34 * size, words, { size, anchor: 'middle' }),
  ];
}

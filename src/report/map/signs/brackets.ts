import { INK } from '../../style.js';
import { polyline, px, type Shape, textBox } from '../shapes.js';
import { type Frame, text } from './frame.js';

/** What stays with a unit from one stop to a later one, or moves units on together. */
export interface Bracket {
  readonly kind: 'carrier' | 'team' | 'pulse line';
  readonly name: string;
  /** For where it begins; and all of it. */
  readonly words: string;
  readonly about: string;
  /** Of carriers: when they can be used again, `back in 4 h`. */
  readonly back: string | undefined;
  /** The line on which it lies; -1: the unit's way. */
  readonly side: number;
  readonly fromCell: number;
  readonly toCell: number;
  /** 0, 1, ..: those whose cells meet have levels of their own. */
  readonly level: number;
}

/** The part of a bracket in one stretch of a strip, at `c` beside its line. */
export interface BracketPiece {
  /** Where it begins and ends here; `isBegin`, `isEnd`: it does so for good. */
  readonly from: number;
  readonly to: number;
  readonly isBegin: boolean;
  readonly isEnd: boolean;
  /** Of a pulse line: the middles of its stations. */
  readonly ticks: readonly number[];
}

const TICK = 6,
  /** A hook that turns back, along and across. */
  HOOK = { along: 6, over: 6.5, back: 9 };
/** Room that a bracket takes across its line, on the side away from the strip. */
export const HOOK_ROOM = HOOK.over + 4;

/**
 * A thin line with ticks towards the strip at its ends, dashed for people; `gaps` are left free for words.
 * Carriers turn back at the end.
 */
export function drawBracket(
  frame: Frame,
  c: number,
  { kind }: Pick<Bracket, 'kind'>,
  { from, to, isBegin, isEnd, ticks }: BracketPiece,
  gaps: readonly { readonly from: number; readonly to: number }[] = [],
): Shape[] {
  const look = { stroke: INK, strokeWidth: 1.1, fill: 'none' },
    line = (a: number, b: number): Shape => ({
      kind: 'path',
      d: polyline([frame.at(a, c), frame.at(b, c)]),
      ...look,
      ...(kind === 'team' ? { dash: [4, 3] } : {}),
    }),
    tick = (a: number, length: number): Shape => ({
      kind: 'path',
      d: polyline([frame.at(a, c), frame.at(a, c + length)]),
      ...look,
    });
  // A pulse line has a tick a station, and none at its ends.
  const ends = kind === 'pulse line' ? [] : [...(isBegin ? [from] : []), ...(isEnd ? [to] : [])],
    bounds = [from, ...gaps.flatMap((gap) => [gap.from, gap.to]), to];
  return [
    ...gaps.concat([{ from: to, to }]).map((_, i) => line(bounds[2 * i] ?? from, bounds[2 * i + 1] ?? to)),
    ...ends.map((a) => tick(a, TICK)),
    ...ticks.map((a) => tick(a, TICK)),
    ...(kind === 'carrier' && isEnd ? hook(frame, to, c) : []),
  ];
}

function hook(frame: Frame, a: number, c: number): Shape[] {
  const { along, over, back } = HOOK,
    at = (da: number, dc: number): string =>
      frame
        .at(a + da, c - dc)
        .map(px)
        .join(' '),
    tip = a - back;
  return [
    {
      kind: 'path',
      d:
        `M${at(0, 0)} Q${at(along, 0)} ${at(along, over / 2)} Q${at(along, over)} ${at(0, over)} ` +
        `L${at(-back + 4, over)}`,
      stroke: INK,
      strokeWidth: 1.1,
      fill: 'none',
    },
    {
      kind: 'path',
      d: polyline(
        [frame.at(tip, c - over), frame.at(tip + 5, c - over - 2.6), frame.at(tip + 5, c - over + 2.6)],
        ' Z',
      ),
      fill: INK,
    },
  ];
}

/** The longest part of a piece without a tick, for words. */
export function freeOf({ from, to, ticks }: BracketPiece): { readonly from: number; readonly to: number } {
  const ends = [from, ...ticks, to].sort((a, b) => a - b);
  return ends
    .slice(1)
    .map((end, i) => ({ from: ends[i] ?? end, to: end }))
    .reduce((best, each) => (each.to - each.from > best.to - best.from ? each : best));
}

/** Words in a gap of a level line, and the gap; null where there is no room for them. */
export function wordsInLine(
  words: string,
  piece: BracketPiece,
  y: number,
  size: number,
): { readonly shape: Shape; readonly gap: { readonly from: number; readonly to: number } } | null {
  const { from, to } = freeOf(piece),
    shape = text((from + to) / 2, y + 0.34 * size, words, { size, anchor: 'middle' }),
    { left, right } = textBox(shape);
  return right - left + 24 > to - from ? null : { shape, gap: { from: left - 4, to: right + 4 } };
}

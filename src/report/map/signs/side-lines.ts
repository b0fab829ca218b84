import { INK } from '../../style.js';
import { GROUND, px, type Shape } from '../shapes.js';
import type { Frame } from './frame.js';

const ROUND = 7;
export const SIDE_STROKE = 1.6,
  WAY_STROKE = 3;

/** One stretch of a side line: along its own track, from and to the lines beside it. */
export interface Stretch {
  /** Where it begins and ends on its own track. */
  readonly from: number;
  readonly to: number;
  readonly track: number;
  /** The track that it leaves at its begin, and joins at its end; undefined: it does not. */
  readonly leaves: number | undefined;
  readonly joins: number | undefined;
}

/** Tracks are told by their distance from the way. A rim of ground parts a line from what it crosses. */
export function drawStretch(frame: Frame, { from, to, track, leaves, joins }: Stretch): Shape[] {
  const parts: string[] = [],
    add = (command: string, ...places: (readonly [a: number, c: number])[]): void => {
      parts.push(
        command +
          places
            .map((place) =>
              frame
                .at(...place)
                .map(px)
                .join(' '),
            )
            .join(' '),
      );
    };
  if (leaves === undefined) add('M', [from, track]);
  else {
    add('M', [from - ROUND, leaves]);
    add('Q', [from, leaves], [from, leaves + ROUND]);
    add('L', [from, track - ROUND]);
    add('Q', [from, track], [from + ROUND, track]);
  }
  if (joins === undefined) add('L', [to, track]);
  else {
    add('L', [to - ROUND, track]);
    add('Q', [to, track], [to, track - ROUND]);
    add('L', [to, joins + ROUND]);
    add('Q', [to, joins], [to + ROUND, joins]);
  }
  const d = parts.join(' ');
  return [
    { kind: 'path', d, stroke: GROUND, strokeWidth: SIDE_STROKE + 4, fill: 'none' },
    { kind: 'path', d, stroke: INK, strokeWidth: SIDE_STROKE, fill: 'none' },
  ];
}

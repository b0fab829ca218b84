import { MUTED } from '../../style.js';
import { polyline, px, type Shape } from '../shapes.js';
import type { Strip } from '../strip.js';
import type { Frame } from './frame.js';

/** A send-back between two cells of one line; those to the same step share a level. */
export interface Arc {
  readonly side: number;
  readonly from: string;
  readonly to: string;
  readonly fromCell: number;
  readonly toCell: number;
  readonly chance: number;
  readonly by: readonly string[];
  /** 0, 1, ..: how far out it runs. */
  readonly level: number;
}

const LEVEL = 7;

/** All send-backs of a strip. Those whose ways meet have levels of their own, the shortest the innermost. */
export function arcsOf(strip: Strip, lines: readonly { readonly backs: readonly Back[] }[]): Arc[] {
  return lines.flatMap(({ backs }, line) => {
    const cellOf = (entry: number): number =>
      strip.cells.findIndex((cell) => cell.side === line - 1 && cell.entry === entry);
    const trunks = new Map<number, { to: number; from: number; level: number }>();
    for (const { fromEntry, toEntry } of backs) {
      const trunk = trunks.get(toEntry),
        from = cellOf(fromEntry);
      trunks.set(toEntry, { to: cellOf(toEntry), from: Math.max(from, trunk?.from ?? from), level: 0 });
    }
    const laid: { to: number; from: number; level: number }[] = [];
    for (const trunk of [...trunks.values()].sort((a, b) => a.from - a.to - (b.from - b.to))) {
      const isTaken = (): boolean =>
        laid.some(({ to, from, level }) => level === trunk.level && to <= trunk.from && from >= trunk.to);
      while (isTaken()) trunk.level++;
      laid.push(trunk);
    }
    return backs.map(({ from, to, fromEntry, toEntry, chance, by }) => ({
      side: line - 1,
      from,
      to,
      fromCell: cellOf(fromEntry),
      toCell: cellOf(toEntry),
      chance,
      by,
      level: trunks.get(toEntry)?.level ?? 0,
    }));
  });
}
interface Back {
  readonly from: string;
  readonly to: string;
  readonly fromEntry: number;
  readonly toEntry: number;
  readonly chance: number;
  readonly by: readonly string[];
}

/** How far arcs run from their line: the innermost, and what levels add. */
export const reachOf = ({ isAcross }: Pick<Frame, 'isAcross'>, side: number, level: number): number =>
  (side >= 0 ? 14 : isAcross ? 23 : 31) + level * (side >= 0 ? 3 : LEVEL);

/**
 * The part of an arc in one stretch of a strip that runs from `first` to `last`: from where it leaves the
 * line, or from the end of the stretch, to where it comes back to it, or to the beginning.
 */
export function drawArc(
  frame: Frame,
  c: number,
  arc: Arc,
  {
    from,
    to,
    first,
    last,
  }: {
    readonly from: number | undefined;
    readonly to: number | undefined;
    readonly first: number;
    readonly last: number;
  },
): Shape[] {
  const out = c - reachOf(frame, arc.side, arc.level),
    isLoop = from !== undefined && to !== undefined && from - to < 12,
    // Beside the outer one of two marks.
    near = c - (isLoop && arc.side >= 0 ? 10.5 : 8),
    start = isLoop ? from + 7 : from,
    end = isLoop ? to - 7 : to,
    r = isLoop ? 3 : 5,
    points: string[] = [],
    move = (command: string, ...places: (readonly [a: number, c: number])[]): void => {
      points.push(
        command +
          places
            .map(([a, over]) =>
              frame
                .at(a, over)
                .map((each) => px(each))
                .join(' '),
            )
            .join(' '),
      );
    };
  if (start === undefined) move('M', [last, out]);
  else {
    move('M', [start, near]);
    move('L', [start, out + r]);
    move('Q', [start, out], [start - r, out]);
  }
  if (end === undefined) move('L', [first, out]);
  else {
    move('L', [end + r, out]);
    move('Q', [end, out], [end, out + r]);
    move('L', [end, near]);
  }
  const shapes: Shape[] = [
    { kind: 'path', d: points.join(' '), stroke: MUTED, strokeWidth: 1.1, fill: 'none' },
  ];
  const tip = end === undefined ? ([first, out] as const) : ([end, near] as const),
    barbs =
      end === undefined
        ? ([
            [first + 5, out - 3],
            [first + 5, out + 3],
          ] as const)
        : ([
            [end - 3, near - 5],
            [end + 3, near - 5],
          ] as const);
  shapes.push({
    kind: 'path',
    d: polyline([frame.at(...tip), frame.at(...barbs[0]), frame.at(...barbs[1])], ' Z'),
    fill: MUTED,
  });
  return shapes;
}

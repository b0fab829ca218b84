import type { Plugin } from 'chart.js';
import { font, textWidth } from '../canvas.js';
import { axisOf, drawing, polyline } from '../drawing.js';
import { SIZE } from '../style.js';
import { fit } from '../text.js';
import { onWhite } from './marks.js';

/**
 * A line from the top of the plot down to the axis, with its name at the head. `at` is a value of the axis x.
 */
export interface UprightLine {
  readonly name: string;
  readonly at: number;
  readonly colour: string;
  readonly dash: readonly number[];
}

/**
 * Height of the row of a name, its distance from a line, what the axis below a plot takes at most. CSS
 * pixels.
 */
export const ROW = 20;
const GAP = 7,
  AXIS = 60;

/**
 * How high the axis of values, which begins at `lowest`, has to go for the names of so many lines to stand
 * above the highest value, in a chart of that `bodyHeight`.
 */
export function topWithNames(highest: number, lines: number, bodyHeight: number, lowest = 0): number {
  return lowest + (highest - lowest) / (1 - (ROW * lines) / (bodyHeight - AXIS));
}

/** Upright lines and their names, each in a row of its own and none across another line. */
export function uprightLines(unsorted: readonly UprightLine[]): Plugin {
  const lines = [...unsorted].sort((a, b) => a.at - b.at);
  return drawing('upright lines', (context, chart) => {
    const x = axisOf(chart, 'x'),
      { left, right, top, bottom } = chart.chartArea;
    const marks = lines.map((line) => {
      const name = fit(line.name, right - left - 2 * GAP, SIZE.small, '600');
      return {
        ...line,
        name,
        at: Math.max(left, Math.min(right, x.getPixelForValue(line.at))),
        width: textWidth(name, SIZE.small, '600'),
      };
    });
    context.font = font(SIZE.small, '600');
    context.textBaseline = 'middle';
    context.lineWidth = 1.6;
    for (const { name, colour, dash, at, x: from, row } of nameSpots(marks, left, right)) {
      const head = top + ROW * row;
      context.strokeStyle = colour;
      context.setLineDash([...dash]);
      polyline(context, [at, head], [at, bottom]);
      onWhite(context, name, from, head + ROW / 2, colour);
    }
  });
}

interface NamedPlace {
  readonly at: number;
  readonly width: number;
}

/**
 * Where the names of upright lines stand: left end and row, counted from the top. A line begins at the row of
 * its name, so a name may pass over lines that begin below it: over the earlier ones where later lines are
 * higher, else over the later ones.
 * @param marks in the order of `at`, all within [left, right]
 */
export function nameSpots<Mark extends NamedPlace>(
  marks: readonly Mark[],
  left: number,
  right: number,
): (Mark & { readonly x: number; readonly row: number })[] {
  const under = (laterHigher: boolean) =>
    marks.map((mark, i) => {
      const { at, width } = mark,
        room = width + 2 * GAP,
        from = laterHigher ? left : (marks[i - 1]?.at ?? left),
        to = laterHigher ? (marks[i + 1]?.at ?? right) : right;
      const atRight = at + room <= to,
        atLeft = at - room >= from;
      return {
        ...mark,
        x: atRight || !atLeft ? Math.max(left, Math.min(at + GAP, right - width)) : at - GAP - width,
        row: laterHigher ? marks.length - 1 - i : i,
        isFree: atRight || atLeft,
      };
    });
  const later = under(true),
    earlier = under(false),
    free = [later, earlier].find((spots) => spots.every(({ isFree }) => isFree));
  return free ?? later;
}

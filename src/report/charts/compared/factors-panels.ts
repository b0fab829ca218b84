import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Plugin } from 'chart.js';
import { number } from '../../../study/format.js';
import { font } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { GRID, INK, LINES, MUTED, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { write } from '../marks.js';

/** A panel: two factors, with the mean of each combination of their levels. */
export interface Panel {
  readonly title: string;
  /** What they do together, with its interval. */
  readonly note: string;
  readonly across: { readonly name: string; readonly levels: readonly string[] };
  /** The second factor, of which each line is a level. */
  readonly along: string;
  readonly lines: readonly { readonly name: string; readonly values: readonly (number | null)[] }[];
  readonly column: number;
  readonly row: number;
}
/** Parts of a panel that hold no line: above (title), below (levels), left (numbers), right (names). */
const ABOVE = 0.24,
  BELOW = 0.2,
  LEFT = 0.13,
  RIGHT = 0.36;
/** Where a level stands across its panel, and a value along it, in panels from the lower left. */
export const acrossAt = ({ column, across: { levels } }: Panel, level: number): number =>
  column + LEFT + 0.06 + ((1 - LEFT - RIGHT - 0.08) * level) / Math.max(1, levels.length - 1);
export function upAt({ row }: Panel, value: number, ticks: readonly number[], rows: number): number {
  const [low = 0, high = 1] = [ticks[0], ticks.at(-1)];
  return rows - 1 - row + BELOW + ((1 - ABOVE - BELOW) * (value - low)) / (high - low);
}

/** Titles, scales and names of the lines of all panels. */
export function frames(panels: readonly Panel[], ticks: readonly number[], rows: number): Plugin {
  return drawing(
    'panels',
    (context, live) => {
      const x = axisOf(live, 'x'),
        y = axisOf(live, 'y');
      context.textBaseline = 'middle';
      for (const panel of panels) {
        const place = (value: number): number => y.getPixelForValue(upAt(panel, value, ticks, rows)),
          wide = x.getPixelForValue(1) - x.getPixelForValue(0),
          left = x.getPixelForValue(panel.column),
          top = y.getPixelForValue(rows - panel.row);
        write(
          context,
          fit(panel.title, wide - 14, SIZE.text, '600'),
          left + 4,
          top + 12,
          INK,
          font(SIZE.text, '600'),
        );
        write(context, fit(panel.note, wide - 14, SIZE.small), left + 4, top + 30, MUTED, font(SIZE.small));
        const from = left + LEFT * wide,
          to = left + (1 - RIGHT) * wide + 8;
        context.strokeStyle = GRID;
        context.lineWidth = 1;
        context.textAlign = 'right';
        for (const tick of ticks) {
          polyline(context, [from, place(tick)], [to, place(tick)]);
          write(context, number(tick), from - 6, place(tick), MUTED, font(SIZE.small));
        }
        levelNames(
          context,
          panel,
          (level) => x.getPixelForValue(acrossAt(panel, level)),
          place(ticks[0] ?? 0),
          wide,
        );
        lineNames(context, panel, place, to + 2, RIGHT * wide - 12);
      }
    },
    'beforeDatasetsDraw',
  );
}

function levelNames(
  context: SKRSContext2D,
  { across: { name, levels } }: Panel,
  at: (level: number) => number,
  bottom: number,
  wide: number,
): void {
  context.textAlign = 'center';
  const room = ((1 - LEFT - RIGHT) * wide) / levels.length + 12;
  levels.forEach((level, l) => {
    write(context, fit(level, room, SIZE.small), at(l), bottom + 14, INK, font(SIZE.small));
  });
  const middle = (at(0) + at(levels.length - 1)) / 2;
  write(context, fit(name, wide * 0.8, SIZE.small), middle, bottom + 31, MUTED, font(SIZE.small));
  context.textAlign = 'left';
}

/** At the right ends of the lines, far enough from one another to be read. */
function lineNames(
  context: SKRSContext2D,
  { along, lines }: Panel,
  place: (value: number) => number,
  left: number,
  room: number,
): void {
  const ends = lines
    .map(({ name, values }, l) => ({
      name,
      colour: LINES[l]?.colour ?? INK,
      at: place(values.at(-1) ?? NaN),
    }))
    .filter(({ at }) => Number.isFinite(at))
    .sort((a, b) => a.at - b.at);
  const [first] = ends;
  if (first !== undefined)
    write(context, fit(along, room, SIZE.small), left, first.at - 16, MUTED, font(SIZE.small));
  ends.reduce((above, { name, colour, at }) => {
    const here = Math.max(at, above + 16);
    write(context, fit(name, room, SIZE.small), left, here, colour, font(SIZE.small));
    return here;
  }, -Infinity);
}

/** Round values that hold these, three to six of them. */
export function ticksOver(low: number, high: number): number[] {
  const span = high > low ? high - low : Math.max(1e-9, Math.abs(high) / 10),
    rough = 10 ** Math.floor(Math.log10(span / 3)),
    step = [1, 2, 5, 10].map((times) => times * rough).find((each) => span / each <= 4) ?? 10 * rough,
    from = Math.floor((high > low ? low : low - span / 2) / step);
  const ticks: number[] = [];
  for (let i = from; ticks.length < 2 || (ticks.at(-1) ?? 0) < high; i++)
    ticks.push(Number((i * step).toPrecision(12)));
  return ticks;
}

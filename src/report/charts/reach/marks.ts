import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Plugin } from 'chart.js';
import { font, textWidth } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, PALETTE, SIZE } from '../../style.js';
import { disc, onWhite, uprightInterval } from '../marks.js';
import type { Level, Told } from './upright.js';

/** A build where it is drawn, with what is written at it; '' for nothing. */
export interface Spot {
  readonly x: number;
  readonly told: Told | null;
  readonly text: string;
  readonly isChosen: boolean;
}

const NEARLY = '#dcdcdc';

/** What is asked and planned, as lines across; what is nearly enough as a band below. */
export const levelLines = (levels: readonly Level[]): Plugin =>
  drawing(
    'levels',
    (context, chart) => {
      const y = axisOf(chart, 'y'),
        { left, right } = chart.chartArea;
      context.font = font(SIZE.small, '600');
      context.textBaseline = 'middle';
      levels.forEach(({ name, at, nearly }, i) => {
        const [line, end] = [at, nearly].map((value) => y.getPixelForValue(value)) as [number, number],
          colour = i === 0 ? PALETTE.vermillion : INK;
        context.fillStyle = NEARLY;
        context.fillRect(left, line, right - left, end - line);
        context.strokeStyle = colour;
        context.lineWidth = 1.6;
        context.setLineDash([7, 4]);
        polyline(context, [left, line], [right, line]);
        context.setLineDash([]);
        onWhite(context, name, left + 6, line - 10, colour);
      });
    },
    'beforeDatasetsDraw',
  );

/** Points with their intervals, and what is written at them, beside each other. */
export const spots = (all: readonly Spot[]): Plugin =>
  drawing('spots', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y'),
      drawn = all.flatMap(({ told, ...rest }) =>
        told === null
          ? []
          : [{ ...rest, told, across: x.getPixelForValue(rest.x), down: y.getPixelForValue(told.mean) }],
      );
    context.strokeStyle = INK;
    context.lineWidth = 1.4;
    for (const { told, across } of drawn)
      if (told.low !== null && told.high !== null)
        uprightInterval(context, y.getPixelForValue(told.low), y.getPixelForValue(told.high), across);
    for (const { across, down, isChosen } of drawn) {
      context.fillStyle = isChosen ? PALETTE.vermillion : PALETTE.blue;
      disc(context, across, down, isChosen ? 6.5 : 4.5);
    }
    write(context, drawn, chart.chartArea);
  });

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Half of the height of what is written, and of a point. CSS pixels. */
const HALF = 8,
  POINT = 7;
/** Where a text may stand from its point: where no staircase is, above at the left or below at the right. */
const PLACES: readonly (readonly [side: -1 | 1, across: number, down: number])[] = [
  [-1, 8, -11],
  [1, 9, 13],
  [-1, 10, 0],
  [-1, 8, -25],
  [1, 9, 27],
  [-1, 24, -11],
  [1, 24, 13],
  [-1, 8, -39],
  [1, 9, 41],
];

function write(
  context: SKRSContext2D,
  drawn: readonly { readonly across: number; readonly down: number; readonly text: string }[],
  { left, right, top, bottom }: Area,
): void {
  const taken: Area[] = drawn.map(({ across, down }) => ({
    left: across - POINT,
    right: across + POINT,
    top: down - POINT,
    bottom: down + POINT,
  }));
  context.font = font(SIZE.text, '600');
  context.textBaseline = 'middle';
  for (const { across, down, text } of drawn) {
    if (text === '') continue;
    const width = textWidth(text, SIZE.text, '600'),
      boxes = PLACES.map(([side, by, lower]): Area => {
        const from = side < 0 ? across - by - width : across + by;
        return { left: from, right: from + width, top: down + lower - HALF, bottom: down + lower + HALF };
      }),
      inside = boxes.filter(
        (box) => box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom,
      ),
      isOwn = (box: Area): boolean =>
        drawn.every((other) => distance(box, { across, down }) <= distance(box, other)),
      free = inside.filter((box) => taken.every((other) => !overlap(box, other))),
      spot = free.find(isOwn) ?? free[0] ?? inside[0];
    if (spot === undefined) continue;
    taken.push(spot);
    onWhite(context, text, spot.left, (spot.top + spot.bottom) / 2, INK);
  }
}

/** From what is written to a point, squared: a text is taken to belong to the nearest. */
function distance(
  { left, right, top, bottom }: Area,
  { across, down }: { readonly across: number; readonly down: number },
): number {
  const x = across - Math.max(left, Math.min(across, right)),
    y = down - Math.max(top, Math.min(down, bottom));
  return x * x + y * y;
}

const overlap = (a: Area, b: Area): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Plugin } from 'chart.js';
import { axisOf, drawing } from '../drawing.js';
import { paint } from '../hatch.js';
import { type Fill, INK } from '../style.js';

/** An interval that goes on beyond the plot has no end there. CSS pixels. */
const BESIDE = 5;

/**
 * Interval bars over the floating bars [low, high] of one horizontal dataset, which itself stays unpainted.
 */
export function whiskers(dataset: number): Plugin {
  return drawing(
    'whiskers',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        { left, top, width, height } = chart.chartArea;
      context.beginPath();
      context.rect(left - BESIDE, top, width + 2 * BESIDE, height);
      context.clip();
      context.lineCap = 'square';
      chart.getDatasetMeta(dataset).data.forEach(({ y }, index) => {
        const span = chart.data.datasets[dataset]?.data[index];
        if (!Array.isArray(span)) return;
        for (const [colour, width] of [
          ['#ffffff', 4.5],
          [INK, 1.6],
        ] as const) {
          context.strokeStyle = colour;
          context.lineWidth = width;
          levelInterval(context, x.getPixelForValue(span[0]), x.getPixelForValue(span[1]), y);
        }
      });
    },
    'afterDatasetsDraw',
  );
}

/** A level line with an upright one across each end. */
export function levelInterval(context: SKRSContext2D, from: number, to: number, y: number): void {
  context.beginPath();
  context.moveTo(from, y);
  context.lineTo(to, y);
  for (const end of [from, to]) {
    context.moveTo(end, y - 4);
    context.lineTo(end, y + 4);
  }
  context.stroke();
}

const WITHOUT_END = { top: -Infinity, bottom: Infinity };

/**
 * An upright line from a lower end to an upper one, each with a level one across it, or with an arrow, in the
 * fill of the context, where it is beyond the plot.
 */
export function uprightInterval(
  context: SKRSContext2D,
  from: number,
  to: number,
  at: number,
  { top, bottom }: { readonly top: number; readonly bottom: number } = WITHOUT_END,
): void {
  const ends = [
    { end: from, edge: bottom, inwards: -1, isOut: from > bottom },
    { end: to, edge: top, inwards: 1, isOut: to < top },
  ];
  context.beginPath();
  context.moveTo(at, Math.min(from, bottom));
  context.lineTo(at, Math.max(to, top));
  for (const { end, isOut } of ends) {
    if (isOut) continue;
    context.moveTo(at - 4, end);
    context.lineTo(at + 4, end);
  }
  context.stroke();
  for (const { edge, inwards, isOut } of ends) {
    if (!isOut) continue;
    context.beginPath();
    context.moveTo(at, edge);
    context.lineTo(at - 3.5, edge + 7 * inwards);
    context.lineTo(at + 3.5, edge + 7 * inwards);
    context.closePath();
    context.fill();
  }
}

/** The path of a diamond around a point, to be filled or stroked. */
export function diamondPath(context: SKRSContext2D, x: number, y: number, radius: number): void {
  context.beginPath();
  context.moveTo(x, y - radius);
  context.lineTo(x + radius, y);
  context.lineTo(x, y + radius);
  context.lineTo(x - radius, y);
  context.closePath();
}

/** A full disc. */
export function disc(context: SKRSContext2D, x: number, y: number, radius: number): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fill();
}

/**
 * Text on a white ground, so that neither grid nor hatching runs through it, in the font of the context; `x`
 * is its left end, `y` its middle.
 */
export function onWhite(
  context: SKRSContext2D,
  text: string,
  x: number,
  y: number,
  colour: string = INK,
): void {
  context.fillStyle = '#ffffff';
  context.fillRect(x - 3, y - 8, context.measureText(text).width + 6, 16);
  context.fillStyle = colour;
  context.fillText(text, x, y);
}

/** Text in a CSS font, at the text baseline and alignment of the context. */
export function write(
  context: SKRSContext2D,
  text: string,
  x: number,
  y: number,
  ink: string,
  face: string,
): void {
  context.font = face;
  context.fillStyle = ink;
  context.fillText(text, x, y);
}

/** A filled box with its edge; nothing where it has no width. */
export function box(
  context: SKRSContext2D,
  x: number,
  y: number,
  width: number,
  height: number,
  fill: Fill,
): void {
  if (width <= 0) return;
  context.fillStyle = paint(fill);
  context.fillRect(x, y, width, height);
  context.strokeStyle = fill.edge;
  context.lineWidth = 0.8;
  context.strokeRect(x, y, width, height);
}

import type { SKRSContext2D } from '@napi-rs/canvas';
import { devicePixelTransform, newCanvas, PIXEL_RATIO } from './canvas.js';
import type { Fill, Hatch } from './style.js';

const TILE = 8 * PIXEL_RATIO;
/** A repeated tile, as the canvas makes it. */
type Pattern = NonNullable<ReturnType<SKRSContext2D['createPattern']>>;
type Line = readonly [x1: number, y1: number, x2: number, y2: number];
/** Strokes in a tile of side 1; slanted ones run over the corners so that tiles join without a notch. */
const RISING: readonly Line[] = [
  [-0.25, 0.25, 0.25, -0.25],
  [-0.25, 1.25, 1.25, -0.25],
  [0.75, 1.25, 1.25, 0.75],
];
const FALLING: readonly Line[] = RISING.map(([x1, y1, x2, y2]) => [1 - x1, y1, 1 - x2, y2]);
const STROKES: Readonly<Record<Exclude<Hatch, 'plain' | 'dots'>, readonly Line[]>> = {
  rising: RISING,
  falling: FALLING,
  crossed: [...RISING, ...FALLING],
  upright: [
    [0.25, 0, 0.25, 1],
    [0.75, 0, 0.75, 1],
  ],
  level: [
    [0, 0.25, 1, 0.25],
    [0, 0.75, 1, 0.75],
  ],
  grid: [
    [0.5, 0, 0.5, 1],
    [0, 0.5, 1, 0.5],
  ],
};

/** What a chart paints an area with: a plain colour, or a pattern of it. */
export function paint(fill: Fill): string | Pattern {
  if (fill.hatch === 'plain') return fill.colour;
  const pattern = painted.get(fill) ?? patternOf(fill, fill.hatch);
  painted.set(fill, pattern);
  return pattern;
}

const painted = new Map<Fill, Pattern>();

function patternOf(fill: Fill, hatch: Exclude<Hatch, 'plain'>): Pattern {
  const canvas = newCanvas(TILE, TILE);
  const context = canvas.getContext('2d');
  context.fillStyle = fill.colour;
  context.fillRect(0, 0, TILE, TILE);
  context.fillStyle = context.strokeStyle = fill.hatchColour;
  context.lineWidth = 1.2 * PIXEL_RATIO;
  if (hatch === 'dots') {
    for (const [x, y] of [
      [0.25, 0.25],
      [0.75, 0.75],
    ] as const) {
      context.beginPath();
      context.arc(x * TILE, y * TILE, PIXEL_RATIO, 0, 2 * Math.PI);
      context.fill();
    }
  } else {
    for (const [x1, y1, x2, y2] of STROKES[hatch]) {
      context.beginPath();
      context.moveTo(x1 * TILE, y1 * TILE);
      context.lineTo(x2 * TILE, y2 * TILE);
      context.stroke();
    }
  }
  const pattern = context.createPattern(canvas, 'repeat');
  if (pattern === null)
    throw new Error(
      'pattern of the canvas: expected one, got none\nhint: run npm ci to restore the canvas package',
    );
  pattern.setTransform(devicePixelTransform());
  return pattern;
}

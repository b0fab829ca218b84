import { createRequire } from 'node:module';
import { type Canvas, createCanvas, DOMMatrix, GlobalFonts, type SKRSContext2D } from '@napi-rs/canvas';
import type { ChartConfiguration } from 'chart.js';
import Live from 'chart.js/auto';
import { shown } from '../study/shown.js';
import { drawing } from './drawing.js';

/**
 * Drawing surface: canvas, fonts, PNG bytes. Everything that draws or measures goes through here, so that
 * fonts are registered once and before use. The fonts are files of two packages: a machine without any font
 * gives the same picture. Only letters that neither has (Chinese, Japanese, Korean, Thai ..) are taken from
 * a font of the machine, where it has one.
 */

const require = createRequire(import.meta.url);

/** Device pixels per CSS pixel of every picture. */
export const PIXEL_RATIO = 2;

/** Inter for text; DejaVu Sans behind it for letters that Inter lacks or misplaces. */
export const FONT_FAMILY = '"Report Inter", "Report DejaVu"';

const FONT_FILES: readonly (readonly [file: string, family: string])[] = [
  ['@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf', 'Report Inter'],
  ['@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf', 'Report Inter'],
  ['dejavu-fonts-ttf/ttf/DejaVuSans.ttf', 'Report DejaVu'],
  ['dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf', 'Report DejaVu'],
];

let registered = false;
function registerFonts(): void {
  if (registered) return;
  for (const [file, family] of FONT_FILES) {
    const path = require.resolve(file);
    if (GlobalFonts.registerFromPath(path, family) === null) {
      throw new Error(
        `package file ${file}: expected a font, got none that can be read\n` +
          'hint: run npm ci to restore the packages',
      );
    }
  }
  registered = true;
}

/** A blank canvas of that many device pixels, with the report's fonts at hand. */
export function newCanvas(width: number, height: number): Canvas {
  registerFonts();
  return createCanvas(width, height);
}

/** A transform for patterns drawn in device pixels, so that they stay sharp under the pixel ratio. */
export function devicePixelTransform(): DOMMatrix {
  return new DOMMatrix([1 / PIXEL_RATIO, 0, 0, 1 / PIXEL_RATIO, 0, 0]);
}

let ruler: SKRSContext2D | undefined;
/** Width of a line of text, CSS pixels. */
export function textWidth(text: string, size: number, weight: 'normal' | '600' = 'normal'): number {
  ruler ??= newCanvas(1, 1).getContext('2d');
  ruler.font = font(size, weight);
  return ruler.measureText(text).width;
}

/** CSS font of the report, size in CSS pixels. */
export function font(size: number, weight: 'normal' | '600' = 'normal'): string {
  return `${weight} ${size}px ${FONT_FAMILY}`;
}

const GROUND = drawing(
  'ground',
  (context, { width, height }) => {
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, width, height);
  },
  'beforeDraw',
);

// A legend does not ask for the fonts of its chart, and would take one of the machine.
Live.defaults.font.family = FONT_FAMILY;

/**
 * PNG bytes of a chart on white, `PIXEL_RATIO` device pixels per pixel of width and height. It is drawn
 * before this returns and encoded, which takes longer, in another thread, so that the next may be drawn
 * meanwhile. `onText` is given every text of it.
 */
export async function renderPng(
  configuration: ChartConfiguration,
  width: number,
  height: number,
  onText?: (text: string) => void,
): Promise<Buffer> {
  const canvas = newCanvas(width, height),
    context = canvas.getContext('2d'),
    fillText = context.fillText.bind(context);
  context.fillText = (text, ...where) => {
    onText?.(text);
    fillText(shown(text), ...where);
  };
  const live = new Live(context, {
    ...configuration,
    plugins: [GROUND, ...(configuration.plugins ?? [])],
    options: { ...configuration.options, devicePixelRatio: PIXEL_RATIO, responsive: false, animation: false },
  });
  try {
    return await canvas.encode('png');
  } finally {
    // Not before: it wipes the canvas.
    live.destroy();
  }
}

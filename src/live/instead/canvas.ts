/**
 * What `report/canvas.ts` is for pictures in a page: the build of the page puts this file in its place, so
 * that one definition of a picture is drawn there and in PNG files.
 */

/** Device pixels per CSS pixel of patterns. */
export const PIXEL_RATIO = 2;

/** As the text around the pictures. */
export const FONT_FAMILY = 'system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';

/** A blank canvas of that many device pixels. */
export function newCanvas(width: number, height: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  return canvas;
}

/** A transform for patterns drawn in device pixels. */
export const devicePixelTransform = (): DOMMatrix =>
  new DOMMatrix([1 / PIXEL_RATIO, 0, 0, 1 / PIXEL_RATIO, 0, 0]);

/** CSS font of the pictures, size in CSS pixels. */
export const font = (size: number, weight: 'normal' | '600' = 'normal'): string =>
  `${weight} ${size}px ${FONT_FAMILY}`;

let ruler: CanvasRenderingContext2D | undefined;
/** Width of a line of text, CSS pixels. */
export function textWidth(text: string, size: number, weight: 'normal' | '600' = 'normal'): number {
  ruler ??= newCanvas(1, 1).getContext('2d') ?? undefined;
  if (ruler === undefined) return 0;
  ruler.font = font(size, weight);
  return ruler.measureText(text).width;
}

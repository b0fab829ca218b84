import { Path2D } from '@napi-rs/canvas';
import { font, newCanvas, PIXEL_RATIO } from '../canvas.js';
import type { Drawing, Shape } from './shapes.js';

type Context = ReturnType<ReturnType<typeof newCanvas>['getContext']>;

/** PNG bytes of a drawing on white, `PIXEL_RATIO` device pixels per pixel. `onText` is given every text. */
export async function mapPng(
  { width, height, groups }: Drawing,
  onText?: (text: string) => void,
): Promise<Buffer> {
  const canvas = newCanvas(width * PIXEL_RATIO, height * PIXEL_RATIO),
    context = canvas.getContext('2d');
  context.scale(PIXEL_RATIO, PIXEL_RATIO);
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width, height);
  for (const { shapes } of groups)
    for (const shape of shapes) {
      if (shape.kind === 'text') onText?.(shape.text);
      draw(context, shape);
    }
  return canvas.encode('png');
}

function draw(context: Context, shape: Shape): void {
  if (shape.kind === 'text') {
    context.font = font(shape.size, shape.weight);
    context.fillStyle = shape.colour;
    context.textAlign = shape.anchor === 'middle' ? 'center' : shape.anchor;
    context.save();
    context.translate(shape.x, shape.y);
    if (shape.isUpright === true) context.rotate(-Math.PI / 2);
    context.fillText(shape.text, 0, 0);
    context.restore();
    return;
  }
  const path = new Path2D(shape.kind === 'path' ? shape.d : undefined);
  if (shape.kind === 'rect') path.rect(shape.x, shape.y, shape.width, shape.height);
  if (shape.fill !== undefined && shape.fill !== 'none') {
    context.fillStyle = shape.fill;
    context.fill(path);
  }
  if (shape.stroke === undefined) return;
  context.strokeStyle = shape.stroke;
  context.lineWidth = shape.strokeWidth ?? 1;
  context.setLineDash([...(shape.dash ?? [])]);
  context.stroke(path);
}

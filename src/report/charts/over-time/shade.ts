import type { SKRSContext2D } from '@napi-rs/canvas';
import { faded, PALETTE } from '../../style.js';

/** Distance of the strokes, CSS pixels. */
const STROKES = 12;

/** Hatches a time over the height of a plot, lightly, to lie behind its lines. */
export function shadeTime(
  context: SKRSContext2D,
  { left, right, top, bottom }: Record<'left' | 'right' | 'top' | 'bottom', number>,
): void {
  const height = bottom - top;
  context.save();
  context.beginPath();
  context.rect(left, top, Math.max(2, right - left), height);
  context.fillStyle = faded(PALETTE.black, 0.07);
  context.fill();
  context.clip();
  context.strokeStyle = faded(PALETTE.black, 0.22);
  context.beginPath();
  for (let at = left - height; at < right; at += STROKES) {
    context.moveTo(at, bottom);
    context.lineTo(at + height, top);
  }
  context.stroke();
  context.restore();
}

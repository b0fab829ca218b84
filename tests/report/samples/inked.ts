import Live from 'chart.js/auto';
import { newCanvas } from '../../../src/report/canvas.js';
import type { Chart } from '../../../src/report/charts/chart.js';
import type { Box } from '../../../src/report/map/shapes.js';

export interface InkedText {
  readonly text: string;
  readonly box: Box;
}
/** Where a line goes up or down, in the colour in which it is drawn. */
export interface Upright {
  readonly colour: string;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}
export interface Inked {
  readonly texts: readonly InkedText[];
  readonly uprights: readonly Upright[];
  /** The plot. */
  readonly area: Box;
}

/** What a picture writes and where, as the canvas measures it, and its upright lines; CSS pixels. */
export function inked({ configuration, width, height }: Chart): Inked {
  const context = newCanvas(width, height).getContext('2d'),
    texts: InkedText[] = [],
    uprights: Upright[] = [],
    at = (x: number, y: number): [number, number] => {
      const { a, b, c, d, e, f } = context.getTransform();
      return [a * x + c * y + e, b * x + d * y + f];
    };
  const fillText = context.fillText.bind(context),
    moveTo = context.moveTo.bind(context),
    lineTo = context.lineTo.bind(context);
  context.fillText = (text, x, y, ...rest) => {
    const {
        actualBoundingBoxLeft,
        actualBoundingBoxRight,
        actualBoundingBoxAscent,
        actualBoundingBoxDescent,
      } = context.measureText(text),
      corners = [
        at(x - actualBoundingBoxLeft, y - actualBoundingBoxAscent),
        at(x + actualBoundingBoxRight, y + actualBoundingBoxDescent),
      ],
      xs = corners.map(([across]) => across),
      ys = corners.map(([, down]) => down);
    texts.push({
      text,
      box: { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) },
    });
    fillText(text, x, y, ...rest);
  };
  let from: [number, number] = [0, 0];
  context.moveTo = (x, y) => {
    from = at(x, y);
    moveTo(x, y);
  };
  context.lineTo = (x, y) => {
    const to = at(x, y);
    if (Math.abs(to[0] - from[0]) < 0.01 && Math.abs(to[1] - from[1]) > 0.01)
      uprights.push({
        colour: (context.strokeStyle as string).toLowerCase(),
        x: to[0],
        top: Math.min(from[1], to[1]),
        bottom: Math.max(from[1], to[1]),
      });
    from = to;
    lineTo(x, y);
  };
  const live = new Live(context, {
    ...configuration,
    options: { ...configuration.options, devicePixelRatio: 1, responsive: false, animation: false },
  });
  const { left, right, top, bottom } = live.chartArea;
  live.destroy();
  return { texts, uprights, area: { left, right, top, bottom } };
}

/** Texts that lie over one another by more than a pixel. */
export function textsOver(texts: readonly InkedText[]): string[] {
  return texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .filter(({ box }) => meets(one.box, box))
      .map(({ text }) => `${text} over ${one.text}`),
  );
}

export const meets = (a: Box, b: Box): boolean =>
  a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1;

import type { Plugin } from 'chart.js';
import { axisOf, drawing } from '../../drawing.js';
import { type Judged } from '../../first/records/validate-told.js';
import { PALETTE } from '../../style.js';
import { diamondPath, disc } from '../marks.js';

/** Mark of a value within its band, and out of it: shape and colour differ together. */
export const IN_WORDS = 'Disc: in its band; diamond: out of it.';

/** The log, a mark a row, at a value of the axis x. */
export function logMarks(rows: readonly (Pick<Judged, 'agrees'> & { readonly x: number })[]): Plugin {
  return drawing('log', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    for (const [row, each] of rows.entries()) {
      const [left, top] = [x.getPixelForValue(each.x), y.getPixelForValue(row)];
      context.fillStyle = each.agrees ? PALETTE.blue : PALETTE.vermillion;
      if (each.agrees) disc(context, left, top, 5);
      else {
        diamondPath(context, left, top, 7);
        context.fill();
      }
    }
  });
}

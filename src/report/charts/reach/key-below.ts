import type { Plugin } from 'chart.js';
import { font } from '../../canvas.js';
import { drawing } from '../../drawing.js';
import { INK, LAYOUT, SIZE } from '../../style.js';
import { wrap } from '../../text.js';
import { type Axis, EMPTY_AXIS } from '../axes.js';

/** A number in the plot, and what it stands for, which may take several lines. */
interface Entry {
  readonly number: string;
  readonly text: string;
}

/** CSS pixels: a line, the gap between entries and above them, room of the numbers, and of both edges. */
const LINE = 17,
  GAP = 4,
  ABOVE = 12,
  NUMBER = 26,
  EDGES = 44;

/** What numbers in a plot stand for, written below it: no name is cut. */
export function keyBelow(entries: readonly Entry[]): {
  readonly height: number;
  readonly axis: Axis;
  readonly plugin: Plugin;
} {
  const rows = entries.map(({ number, text }) => ({
      number,
      lines: wrap(text, LAYOUT.width - NUMBER - EDGES, SIZE.text),
    })),
    height = rows.reduce((sum, { lines }) => sum + LINE * lines.length + GAP, ABOVE);
  return {
    height,
    // Holds the room free below the axis and its title.
    axis: {
      ...EMPTY_AXIS,
      axis: 'x',
      position: 'bottom',
      weight: 10,
      afterFit: (scale: { height: number }) => {
        scale.height = height;
      },
    },
    plugin: drawing('key below', (context, chart) => {
      const from = LAYOUT.hasTitles ? EDGES / 2 : 4;
      let y = chart.height - (LAYOUT.hasTitles ? EDGES / 2 - 6 : 2) - height + ABOVE + LINE / 2;
      context.fillStyle = INK;
      context.textBaseline = 'middle';
      for (const { number, lines } of rows) {
        context.font = font(SIZE.text, '600');
        context.fillText(number, from, y);
        context.font = font(SIZE.text);
        for (const line of lines) {
          context.fillText(line, from + NUMBER, y);
          y += LINE;
        }
        y += GAP;
      }
    }),
  };
}

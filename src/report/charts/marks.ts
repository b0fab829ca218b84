import type { Chart as LiveChart, Plugin } from 'chart.js';
import type { SKRSContext2D } from '@napi-rs/canvas';
import { INK } from '../style.js';

/**
 * Interval bars over the floating bars [low, high] of one horizontal dataset, which itself stays unpainted.
 */
export function whiskers(dataset: number): Plugin {
  return {
    id: 'whiskers',
    afterDatasetsDraw(chart) {
      const { ctx } = chart;
      const scale = chart.scales['x'];
      if (scale === undefined) return;
      chart.getDatasetMeta(dataset).data.forEach((element, index) => {
        const span = chart.data.datasets[dataset]?.data[index];
        if (!Array.isArray(span)) return;
        const from = scale.getPixelForValue(span[0]),
          to = scale.getPixelForValue(span[1]),
          y = element.y;
        for (const [colour, width] of [
          ['#ffffff', 4.5],
          [INK, 1.6],
        ] as const) {
          ctx.save();
          ctx.strokeStyle = colour;
          ctx.lineWidth = width;
          ctx.lineCap = 'square';
          ctx.beginPath();
          ctx.moveTo(from, y);
          ctx.lineTo(to, y);
          ctx.moveTo(from, y - 4);
          ctx.lineTo(from, y + 4);
          ctx.moveTo(to, y - 4);
          ctx.lineTo(to, y + 4);
          ctx.stroke();
          ctx.restore();
        }
      });
    },
  };
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

/** A plugin that draws on top of everything else. */
export function drawing(id: string, draw: (context: SKRSContext2D, chart: LiveChart) => void): Plugin {
  return {
    id,
    afterDraw(chart) {
      chart.ctx.save();
      draw(chart.ctx as SKRSContext2D, chart);
      chart.ctx.restore();
    },
  };
}

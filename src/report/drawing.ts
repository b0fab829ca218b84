import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Chart as LiveChart, Plugin, Scale } from 'chart.js';

/** When a drawing is made: on top of everything, just over the data, behind them, or first of all. */
type Moment = 'afterDraw' | 'afterDatasetsDraw' | 'beforeDatasetsDraw' | 'beforeDraw';

/** A plugin that draws; it leaves the context as it was. */
export function drawing(
  id: string,
  draw: (context: SKRSContext2D, chart: LiveChart) => void,
  moment: Moment = 'afterDraw',
): Plugin {
  return {
    id,
    [moment](chart: LiveChart) {
      chart.ctx.save();
      draw(chart.ctx, chart);
      chart.ctx.restore();
    },
  };
}

/** An axis of a chart by its name; a chart without it throws a RangeError. */
export function axisOf({ scales }: LiveChart, name: string): Scale {
  const axis = scales[name];
  if (axis === undefined)
    throw new RangeError(`axes of a chart: expected ${name}, got ${Object.keys(scales).join(', ')}`);
  return axis;
}

/** A line through points, in the stroke of the context. */
export function polyline(
  context: SKRSContext2D,
  ...points: readonly (readonly [x: number, y: number])[]
): void {
  context.beginPath();
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.stroke();
}

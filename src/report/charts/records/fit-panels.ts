import type { SKRSContext2D } from '@napi-rs/canvas';
import type { ChartOptions, Chart as LiveChart, Plugin } from 'chart.js';
import { number } from '../../../study/format.js';
import { font } from '../../canvas.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { GRID, INK, isNarrow, LAYOUT, MUTED, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { EMPTY_AXIS } from '../axes.js';
import { write } from '../marks.js';

/** A small plot of one step, with scales of its own. */
export interface Panel {
  readonly title: string;
  /** Two lines below it; the second stands out. */
  readonly note: string;
  readonly warning: string;
  readonly x: Scale;
  readonly y: Scale;
}

interface Scale {
  readonly low: number;
  readonly high: number;
  /** Of whole numbers. */
  readonly isCount?: boolean;
}

/** Where values of a panel are, in pixels, and its plot. */
export interface Spot {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

/** Height of a panel, and of what stands above and below its plot, beside it at the left; CSS pixels. */
const HEIGHT = 212,
  ABOVE = 58,
  BELOW = 34,
  LEFT = 46,
  RIGHT = 14;
/** Three panels side by side need more; paper has it. */
const WIDE = 700;

/** Panels in rows; a dataset has its values in `x` and `y`, and where they are drawn in `to` and `at`. */
export class FitPanels {
  private readonly columns: number;
  private readonly rows: number;
  private readonly width: number;

  constructor(private readonly panels: readonly Panel[]) {
    this.columns = isNarrow() ? 1 : Math.min(LAYOUT.width < WIDE ? 2 : 3, panels.length);
    this.rows = Math.ceil(panels.length / this.columns);
    // A single one would be as wide as the page.
    this.width = LAYOUT.width / Math.max(this.columns, isNarrow() ? 1 : 2);
  }

  get bodyHeight(): number {
    return this.rows * HEIGHT;
  }

  /** A point of a panel, for a dataset with `PARSING`. */
  point(panel: number, x: number, y: number): { x: number; y: number; to: number; at: number } {
    const { to, at } = this.placeOf(panel);
    return { x, y, to: to(x), at: at(y) };
  }

  get scales(): NonNullable<ChartOptions['scales']> {
    const across = LAYOUT.width / this.width;
    return {
      x: { ...EMPTY_AXIS, axis: 'x', display: false, min: 0, max: across },
      y: { ...EMPTY_AXIS, display: false, min: 0, max: this.rows },
    };
  }

  /** Names, scales and what is drawn of each panel, behind the datasets. */
  drawn(xTitle: string, draw: (context: SKRSContext2D, panel: number, spot: Spot) => void): Plugin {
    return drawing(
      'panels',
      (context, live) => {
        context.textBaseline = 'middle';
        this.panels.forEach((panel, p) => {
          const spot = this.spotOf(live, p);
          context.save();
          frame(context, panel, spot, this.width - LEFT - RIGHT, xTitle);
          draw(context, p, spot);
          context.restore();
        });
      },
      'beforeDatasetsDraw',
    );
  }

  private spotOf(live: LiveChart, panel: number): Spot {
    const x = axisOf(live, 'x'),
      y = axisOf(live, 'y'),
      { to, at } = this.placeOf(panel);
    return { x: (value) => x.getPixelForValue(to(value)), y: (value) => y.getPixelForValue(at(value)) };
  }

  private placeOf(panel: number): { to: (x: number) => number; at: (y: number) => number } {
    const { x, y } = this.panels[panel] ?? { x: { low: 0, high: 1 }, y: { low: 0, high: 1 } },
      column = panel % this.columns,
      row = Math.floor(panel / this.columns),
      share = (value: number, { low, high }: Scale): number => (value - low) / (high - low);
    return {
      to: (value) => column + LEFT / this.width + (1 - (LEFT + RIGHT) / this.width) * share(value, x),
      at: (value) => this.rows - 1 - row + BELOW / HEIGHT + (1 - (ABOVE + BELOW) / HEIGHT) * share(value, y),
    };
  }
}

/** How datasets of panels are read. */
export const PARSING = { xAxisKey: 'to', yAxisKey: 'at' } as const;

function frame(context: SKRSContext2D, panel: Panel, { x, y }: Spot, room: number, xTitle: string): void {
  const left = x(panel.x.low),
    right = x(panel.x.high),
    top = y(panel.y.high),
    bottom = y(panel.y.low),
    small = font(SIZE.small);
  write(context, fit(panel.title, room, SIZE.text, '600'), left, top - 46, INK, font(SIZE.text, '600'));
  write(context, fit(panel.note, room, SIZE.small), left, top - 30, MUTED, small);
  write(context, fit(panel.warning, room, SIZE.small), left, top - 14, PALETTE.vermillion, small);
  context.lineWidth = 1;
  context.strokeStyle = GRID;
  context.textAlign = 'right';
  for (const tick of ticksIn(panel.y, 4)) {
    polyline(context, [left, y(tick)], [right, y(tick)]);
    write(context, number(tick), left - 6, y(tick), MUTED, small);
  }
  context.textAlign = 'center';
  const ticks = ticksIn(panel.x, room < 220 ? 3 : 5);
  ticks.forEach((tick, t) => {
    const isLast = t === ticks.length - 1;
    write(context, isLast ? `${number(tick)} ${xTitle}` : number(tick), x(tick), bottom + 14, MUTED, small);
  });
  context.strokeStyle = MUTED;
  polyline(context, [left, bottom], [right, bottom]);
  context.textAlign = 'left';
}

/** Round values within a scale, at most about so many. */
export function ticksIn({ low, high, isCount = false }: Scale, most: number): number[] {
  const rough = Math.max((high - low) / most, isCount ? 1 : 0),
    ten = 10 ** Math.floor(Math.log10(rough)),
    step = [1, 2, 5, 10].map((times) => times * ten).find((each) => each >= rough) ?? 10 * ten,
    first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: Math.max(0, Math.floor(high / step + 1e-9) - first + 1) }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
}

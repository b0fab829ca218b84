import type { ChartOptions, Chart as LiveChart, Plugin } from 'chart.js';
import { number } from '../../study/format.js';
import { font, textWidth } from '../canvas.js';
import { axisOf, drawing, polyline } from '../drawing.js';
import { GRID, INK, isNarrow, MUTED, PALETTE, SIZE } from '../style.js';
import { fit } from '../text.js';
import { type Axis, valueAxis } from './axes.js';
import { onWhite, write } from './marks.js';

/** A small plot of one thing, beside others on the same scale. */
export interface Panel {
  readonly name: string;
  /** By step of its axis: what stands below it; null: nothing is there. */
  readonly foot: readonly (string | null)[];
  /** By step. */
  readonly values: readonly (number | null)[];
}

/** The values that each panel shows. */
export interface PanelScale {
  readonly low: number;
  readonly high: number;
}

/** Height of a panel, and of its name above and what stands below it. CSS pixels. */
const HEIGHT = 210,
  NAME = 26,
  FOOT = 22;
/** Room of the axis at the left. */
const AXIS = 66;
/** Between panels, at each side. */
const GAP = 10;
const ZONE_FILL = '#dcdcdc';

/** Where panels stand and how they are drawn. */
export class Panels {
  readonly columns: number;
  private readonly rows: number;

  /**
   * @param main step whose foot stands out
   * @param zone values nearer to 0 do not matter
   */
  constructor(
    private readonly panels: readonly Panel[],
    private readonly scale: PanelScale,
    private readonly main: number,
    private readonly zone: number,
  ) {
    this.columns = isNarrow() ? 1 : Math.min(3, panels.length);
    this.rows = Math.ceil(panels.length / this.columns);
  }

  get bodyHeight(): number {
    return this.rows * HEIGHT + 8;
  }

  /** For the datasets of a panel: its axes; nothing runs through what stands below it. */
  of(panel: number): object {
    return {
      xAxisID: `x${panel % this.columns}`,
      yAxisID: `y${Math.floor(panel / this.columns)}`,
      clip: { left: 0, right: 0, top: 0, bottom: -FOOT },
    };
  }

  axes(title: string): NonNullable<ChartOptions['scales']> {
    const { columns, rows, scale } = this;
    return Object.fromEntries([
      ...Array.from({ length: columns }, (_, c) => [`x${c}`, levelAxis(c)] as const),
      ...Array.from({ length: rows }, (_, r) => [`y${r}`, uprightAxis(r, scale, title)] as const),
    ]);
  }

  get plugins(): Plugin[] {
    return [
      drawing(
        'grounds',
        (context, live) => {
          const { low, high } = this.scale;
          for (const { y, left, right } of this.plots(live)) {
            const at = (value: number): number => y.getPixelForValue(value);
            context.fillStyle = ZONE_FILL;
            context.fillRect(left, at(this.zone), right - left, at(-this.zone) - at(this.zone));
            context.lineWidth = 1;
            for (const { value } of [...y.ticks, { value: low }, { value: high }]) {
              context.strokeStyle = value === 0 ? MUTED : GRID;
              polyline(context, [left, at(value)], [right, at(value)]);
            }
          }
        },
        'beforeDatasetsDraw',
      ),
      drawing('texts', (context, live) => {
        const { low, high } = this.scale;
        context.textBaseline = 'middle';
        for (const { panel, x, y, left, right } of this.plots(live)) {
          const top = y.getPixelForValue(high),
            bottom = y.getPixelForValue(low);
          context.textAlign = 'left';
          const bold = font(SIZE.text, '600'),
            small = font(SIZE.small, '600');
          write(context, fit(panel.name, right - left, SIZE.text, '600'), left, top - NAME / 2, INK, bold);
          context.textAlign = 'center';
          for (const [step, foot] of panel.foot.entries()) {
            const at = x.getPixelForValue(step),
              value = panel.values[step] ?? 0,
              [ink, face] = step === this.main ? [INK, small] : [MUTED, font(SIZE.small)];
            if (foot !== null) write(context, foot, at, bottom + FOOT / 2, ink, face);
            // It runs out of its panel.
            if (value < low) {
              const text = number(Number(value.toPrecision(2))),
                from = Math.max(left + 3, at - textWidth(text, SIZE.small, '600') / 2);
              context.font = small;
              context.textAlign = 'left';
              onWhite(context, text, from, bottom - 10, PALETTE.vermillion);
              context.textAlign = 'center';
            }
          }
        }
      }),
    ];
  }

  private plots(live: LiveChart) {
    return this.panels.map((panel, i) => {
      const x = axisOf(live, `x${i % this.columns}`),
        y = axisOf(live, `y${Math.floor(i / this.columns)}`);
      return { panel, x, y, left: x.left + GAP, right: x.right - GAP };
    });
  }
}

const levelAxis = (column: number): Axis => ({
  type: 'category',
  position: 'bottom',
  stack: 'across',
  weight: column,
  offset: true,
  clip: true,
  grid: { display: false },
  border: { display: false },
  ticks: { display: false },
});

const uprightAxis = (row: number, { low, high }: PanelScale, title: string): Axis => {
  const pixel = (high - low) / (HEIGHT - NAME - FOOT);
  return valueAxis(title, {
    stack: 'down',
    weight: -row,
    clip: true,
    min: low - FOOT * pixel,
    max: high + NAME * pixel,
    grid: { display: false },
    // Axes one above the other would share out the room that one has.
    afterFit: (axis: { width: number }) => {
      axis.width = AXIS;
    },
    afterBuildTicks: (axis: { ticks: { value: number }[] }) => {
      axis.ticks = axis.ticks.filter(({ value }) => value >= low && value <= high);
    },
  });
};

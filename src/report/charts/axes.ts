import type { ChartOptions } from 'chart.js';
import { GRID, isNarrow, MUTED, SIZE } from '../style.js';

/** An axis as a chart is given it. */
export type Axis = NonNullable<NonNullable<ChartOptions['scales']>[string]>;

const SMALL = { size: SIZE.small };
const titled = (text: string) => ({ display: true, text, color: MUTED, font: SMALL });
/** How the values beside an axis are written. */
export const TICKS = { color: MUTED, padding: 6, maxRotation: 0, autoSkipPadding: 12, font: SMALL } as const;
/** A grid whose line at zero stands out, for differences. */
export const ZERO_GRID = {
  color: ({ tick }: { tick: { value: number } }) => (tick.value === 0 ? MUTED : GRID),
  drawTicks: false,
};

/** An axis of values from zero, its title with the unit. */
export function valueAxis(title: string, rest: Partial<Record<string, unknown>> = {}): Axis {
  return {
    type: 'linear',
    beginAtZero: true,
    title: titled(title),
    grid: { color: GRID, drawTicks: false },
    border: { display: false },
    ticks: { ...TICKS, maxTicksLimit: isNarrow() ? 6 : 11 },
    ...rest,
  };
}

/** An axis of weeks, days or parts of a run, as many of them named as there is room for. */
export function categoryAxis(title: string): Axis {
  return {
    type: 'category',
    grid: { display: false },
    title: titled(title),
    ticks: { autoSkip: true, autoSkipPadding: 22, maxRotation: 0, color: MUTED, font: SMALL },
  };
}

/** What the weeks of a programme, or the parts of a run, are called under their axis. */
export const bucketTitle = (unit: string): string => (unit === 'week' ? 'ISO week' : 'part of the run');

/** An axis that shows nothing. */
export const EMPTY_AXIS = {
  type: 'linear',
  axis: 'y',
  grid: { display: false },
  border: { display: false },
  ticks: { display: false },
} as const;

/** An axis that shows nothing but keeps `width` CSS pixels beside the plot free, for text. */
export function roomForText(width: number, position: 'left' | 'right' = 'right'): Axis {
  return {
    ...EMPTY_AXIS,
    position,
    afterFit: (scale: { width: number }) => {
      scale.width = width;
    },
  };
}

/** Ticks at these values and no others. */
export function ticksAt(values: readonly number[]): (axis: { ticks: { value: number }[] }) => void {
  return (axis) => {
    axis.ticks = values.map((value) => ({ value }));
  };
}

import { paint } from '../hatch.js';
import { type Fill, PALETTE } from '../style.js';
import type { Dataset } from './chart.js';

/** A named edge of a band. */
export type Edge = readonly [name: string, data: Dataset['data']];

/** A line without marks. `rest` is what else it is given. */
export const line = (
  label: string,
  data: Dataset['data'],
  colour: string,
  width: number,
  rest: object = {},
): Dataset => ({
  label,
  data,
  borderColor: colour,
  borderWidth: width,
  pointRadius: 0,
  ...rest,
});

/** The area between two lines that are not drawn themselves. `rest` goes to both. */
export function band([low, lows]: Edge, [high, highs]: Edge, fill: string, rest: object = {}): Dataset[] {
  return [
    line(low, lows, 'transparent', 0, rest),
    line(high, highs, 'transparent', 0, { ...rest, fill: '-1', backgroundColor: fill }),
  ];
}

/** A bar a row from zero, of `thickness` of the row's height. */
export function bars(
  data: readonly (number | null)[],
  { colour = PALETTE.blue, thickness = 0.7 }: { colour?: string | string[]; thickness?: number } = {},
): Dataset {
  return {
    data: [...data],
    backgroundColor: colour,
    grouped: false,
    barPercentage: thickness,
    categoryPercentage: 1,
  };
}

/** Bars of a fill with its edge all round, from zero or floating, called `name` in the key. */
export function filledBars(
  name: string,
  data: readonly (number | [number, number] | null)[],
  fill: Fill,
  thickness = 0.8,
  edge = 0.6,
): Dataset {
  return {
    label: name,
    data: [...data],
    backgroundColor: paint(fill),
    borderColor: fill.edge,
    borderWidth: edge,
    borderSkipped: false,
    barPercentage: thickness,
    categoryPercentage: 1,
  };
}

import type { Plugin } from 'chart.js';
import { faded, PALETTE } from '../../style.js';
import { roomForText, valueAxis } from '../axes.js';
import { type Chart, chart } from '../chart.js';
import { band, line } from '../datasets.js';
import { dayAxis, momentOf } from '../over-time/days.js';
import { lineNames, type NamedLine, nameRoom } from '../over-time/line-names.js';
import { lineWords } from '../over-time/line-words.js';

/** A line of units added up to the end of each day. */
export type DayLine = Omit<NamedLine, 'values' | 'at'> & { readonly values: readonly number[] };

interface AddedUp {
  readonly finding: string;
  readonly how: string;
  /** ISO dates of the days, one after the other. */
  readonly days: readonly string[];
  /** Around the first line; `of` says of how many builds: `8 of 10 builds`. */
  readonly band: { readonly of: string; readonly low: readonly number[]; readonly high: readonly number[] };
  readonly lines: readonly [DayLine, ...DayLine[]];
  readonly plugins?: readonly Plugin[];
  /** Where the axis of units ends. */
  readonly top?: number;
}

export const BODY_HEIGHT = 420;

/** Units added up by day from nothing, with the band of builds behind them. */
export function addedUp({ days, band: around, lines, top, plugins = [], ...titles }: AddedUp): Chart {
  const start = momentOf(days[0] ?? ''),
    ends = days.map((day) => momentOf(day) + 1),
    points = (values: readonly number[]): { x: number; y: number }[] => [
      { x: start, y: 0 },
      ...values.map((y, i) => ({ x: ends[i] ?? NaN, y })),
    ];
  const [first] = lines,
    named = lines.map((each) => ({ ...each, at: ends }));
  return chart({
    ...titles,
    bodyHeight: BODY_HEIGHT,
    type: 'line',
    data: {
      datasets: [
        ...band(
          [`${first.name}, ${around.of} low`, points(around.low)],
          [`${first.name}, ${around.of} high`, points(around.high)],
          faded(PALETTE.blue, 0.22),
        ),
        ...lines.map(({ name, values, colour, dash, width = 2 }) =>
          line(name, points(values), colour, width, { borderDash: [...dash] }),
        ),
      ],
    },
    scales: {
      x: dayAxis(start, ends.at(-1) ?? start + 1, 1),
      y: valueAxis('units, added up', top === undefined ? { grace: '4%' } : { max: top }),
      room: roomForText(nameRoom(named)),
    },
    plugins: [...plugins, lineNames(named), lineWords(named)],
  });
}

import type { Plugin } from 'chart.js';
import type { ComparedMeasure, ComparedVerdict } from '../../study/compare/results.js';
import type { Estimate } from '../../study/statistics/estimate.js';
import { axisOf, drawing, polyline } from '../drawing.js';
import { INK, PALETTE, SIZE } from '../style.js';
import { fit } from '../text.js';
import { intervalWords } from './chart.js';
import { type Figures, figures } from './figures.js';
import { diamondPath, disc } from './marks.js';
import { type Row, type RowParts, span } from './row-chart.js';

/** A difference as a row of a picture shows it. */
export type Compared = Omit<ComparedMeasure, 'value'> & {
  /** Share of the base up to which a difference does not matter. */
  readonly zone: number;
};
/** Room for a verdict in words, CSS pixels. */
const WORDS_ROOM = 190;
const BAND = '#e6e6e6',
  GREY = '#6b6b6b';

/** Full marks are what is settled, hollow ones what is not to the end; worse ones are diamonds. */
const MARKS: Readonly<Record<ComparedVerdict, { readonly colour: string; readonly full: boolean }>> = {
  better: { colour: PALETTE.blue, full: true },
  'at least a little better': { colour: PALETTE.blue, full: false },
  'no difference that matters': { colour: GREY, full: true },
  'not settled': { colour: GREY, full: false },
  'at least a little worse': { colour: PALETTE.vermillion, full: false },
  worse: { colour: PALETTE.vermillion, full: true },
};

/** What the marks mean, in words. */
export const MARKS_NOTE =
  'Grey band: too little to matter. Blue: better; red diamond: worse; grey: no difference that matters; ' +
  'hollow: perhaps within the band.';

/**
 * Differences as dots with intervals over their zones, with figures and verdicts beside them; all on one
 * scale of per cent. `what` they are is the head of the figures; all intervals together hold with `level`.
 */
export function differencesParts<Item extends Compared>(
  rows: readonly Row<Item>[],
  what: string,
  level: number,
): Pick<RowParts<Item>, 'columns' | 'intervals' | 'plugins'> {
  const write = writers(rows);
  return {
    columns: [
      [[what], ({ measure, difference }) => toldDifference(difference, write.get(measure))],
      [['verdict'], ({ words }) => fit(words, WORDS_ROOM, SIZE.small)],
    ],
    intervals: {
      of: `${what}, %`,
      sure: intervalWords(level),
      ends: ({ relative }) => relative && span(relative, 100),
      mean: ({ relative }) => (relative === null ? null : 100 * relative.mean),
    },
    plugins: [zoneBand(rows), ZERO_LINE, dots(rows)],
  };
}

/** Figures of one measure have one number of decimals. */
function writers(rows: readonly Row<Compared>[]): ReadonlyMap<string, Figures> {
  const all = rows.flatMap(({ item }) => (item === null ? [] : [item]));
  return new Map(
    [...new Set(all.map(({ measure }) => measure))].map((id) => [
      id,
      figures(all.filter(({ measure }) => measure === id).map(({ difference }) => difference)),
    ]),
  );
}

/** `+0.30 (0.23 to 0.37)`. */
export function toldDifference(difference: Estimate, write: Figures = figures([difference])): string {
  const text = write.short(difference);
  return difference.mean > 0 && /[1-9]/.test(write.mean(difference)) ? `+${text}` : text;
}

/** What does not matter, behind the rows of each measure. */
function zoneBand(rows: readonly Row<Compared>[]): Plugin {
  return drawing(
    'zone',
    (context, chart) => {
      const x = axisOf(chart, 'x'),
        y = axisOf(chart, 'y'),
        half = rows.length < 2 ? 13 : Math.abs(y.getPixelForValue(1) - y.getPixelForValue(0)) / 2;
      context.fillStyle = BAND;
      rows.forEach(({ item }, row) => {
        if (item === null) return;
        const [from, to] = [-100 * item.zone, 100 * item.zone].map((value) =>
          Math.min(chart.chartArea.right, Math.max(chart.chartArea.left, x.getPixelForValue(value))),
        );
        context.fillRect(from ?? 0, y.getPixelForValue(row) - half, (to ?? 0) - (from ?? 0), 2 * half);
      });
    },
    'beforeDatasetsDraw',
  );
}

const ZERO_LINE = drawing('zero line', (context, chart) => {
  const zero = axisOf(chart, 'x').getPixelForValue(0);
  context.strokeStyle = INK;
  context.lineWidth = 1;
  polyline(context, [zero, chart.chartArea.top], [zero, chart.chartArea.bottom]);
});

/** A mark a row at its mean; worse ones are diamonds, so that colour is not needed. */
function dots(rows: readonly Row<Compared>[]): Plugin {
  return drawing('dots', (context, chart) => {
    const x = axisOf(chart, 'x'),
      y = axisOf(chart, 'y');
    rows.forEach(({ item }, row) => {
      if (item?.relative == null) return;
      const across = x.getPixelForValue(item.relative.mean * 100),
        down = y.getPixelForValue(row),
        { colour, full } = MARKS[item.verdict];
      context.fillStyle = full ? colour : '#ffffff';
      context.strokeStyle = full ? '#ffffff' : colour;
      context.lineWidth = full ? 1.2 : 2;
      if (item.verdict.endsWith('worse')) {
        diamondPath(context, across, down, 6);
        context.fill();
      } else disc(context, across, down, 4.5);
      context.stroke();
    });
  });
}

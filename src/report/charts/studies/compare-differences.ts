import type { Plugin } from 'chart.js';
import type { ComparedMeasure, ComparedVerdict, CompareResults } from '../../../study/compare/results.js';
import { count, number } from '../../../study/format.js';
import { measureName } from '../../compare.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, isNarrow, LAYOUT, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import { type Chart, intervalWords } from '../chart.js';
import { figures } from '../figures.js';
import { diamondPath, disc } from '../marks.js';
import { type Row, rowChart, rowLabel, span } from '../row-chart.js';

type Item = ComparedMeasure & {
  readonly name: string;
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

/**
 * What each what-if changes, measure by measure, as dots with intervals on one scale of per cent of the base.
 */
export function compareDifferences(results: CompareResults): Chart | null {
  const measures = shownOf(results),
    figuresOf = new Map(
      measures.map(({ id }) => [
        id,
        figures(
          results.whatIfs.flatMap(({ compared }) =>
            compared.filter(({ measure }) => measure === id).map(({ difference }) => difference),
          ),
        ),
      ]),
    );
  const rows = measures.flatMap(({ id, name, unit, better, zone }): Row<Item>[] => [
    {
      label: `${measureName({ id, name })}, ${unit}${isNarrow() ? '' : `, ${better} is better`}`,
      item: null,
    },
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({
          label: rowLabel(each.name),
          item: { ...item, name: each.name, zone: zone.share },
        })),
    ),
  ]);
  return rowChart({
    finding: finding(results),
    how:
      `What-if against today, the same random events in both, ${count(results.replications, 'build')}. ` +
      `Bars: ${number(100 * results.level)} % sure that all of them hold. Grey band: too little to matter. ` +
      'Blue: better; red diamond: worse; grey: no difference that matters; hollow: perhaps within the band.',
    rows,
    columns: [
      [
        ['difference'],
        ({ measure, difference }) => {
          const write = figuresOf.get(measure) ?? figures([difference]),
            text = write.short(difference);
          return difference.mean > 0 && /[1-9]/.test(write.mean(difference)) ? `+${text}` : text;
        },
      ],
      [['verdict'], ({ words }) => fit(words, WORDS_ROOM, SIZE.small)],
    ],
    values: valueAxis('difference, % of today', { grace: '4%' }),
    intervals: {
      of: 'difference, %',
      sure: intervalWords(results.level),
      ends: ({ relative }) => relative && span(relative, 100),
      mean: ({ relative }) => (relative === null ? null : 100 * relative.mean),
    },
    plugins: [zoneBand(rows), ZERO_LINE, dots(rows)],
  });
}

/** Most asked for first, where there is room for a few only. */
const FIRST: readonly string[] = ['throughput', 'last unit', 'cost'];

/** All measures, or those that a reader asks for first where few rows are shown. */
function shownOf({ measures, whatIfs }: CompareResults): CompareResults['measures'] {
  const rows = measures.length * whatIfs.length,
    few = measures.filter(({ id }) => FIRST.includes(id));
  if (rows <= LAYOUT.mostRows || few.length === 0) return measures;
  LAYOUT.isCut = true;
  return few;
}

/** Names in a title at most. */
const NAMED = 3;

function finding({ whatIfs, measures }: CompareResults): string {
  const [first] = measures,
    better = whatIfs.filter(({ compared }) => compared[0]?.verdict === 'better').map(({ name }) => name);
  if (first === undefined) return '';
  const { share } = first.zone,
    more = share > 0 ? `over ${number(100 * share)} % more` : 'more',
    left = better.length - NAMED;
  return better.length === 0
    ? `No what-if of ${whatIfs.length} surely ships ${more} than today`
    : `Ships more than today: ${better.slice(0, NAMED).join(', ')}` +
        (left > 0 ? ` and ${count(left, 'other')}` : '');
}

/** What does not matter, behind the rows of each measure. */
function zoneBand(rows: readonly Row<Item>[]): Plugin {
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
function dots(rows: readonly Row<Item>[]): Plugin {
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

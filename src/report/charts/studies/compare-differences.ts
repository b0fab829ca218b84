import type { Plugin } from 'chart.js';
import type { ComparedMeasure, ComparedVerdict, CompareResults } from '../../../study/compare/results.js';
import { bounds, count, intervalName, number, signed } from '../../../study/format.js';
import { togetherText } from '../../compare.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { diamondPath, disc } from '../marks.js';
import { heading, type Row, rowChart, rowLabel, span } from '../row-chart.js';

type Item = ComparedMeasure & {
  readonly name: string;
  readonly unit: string;
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
  const rows = results.measures.flatMap(({ id, name, unit, better, zone }): Row<Item>[] => [
    heading(`${name}, ${better} is better`),
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({
          label: rowLabel(each.name),
          item: { ...item, name: each.name, unit, zone: zone.share },
        })),
    ),
  ]);
  const ci = intervalName(results.differenceLevel);
  return rowChart({
    finding: finding(results),
    how:
      `What-if minus base as a share of the base's mean, paired by replication (common random ` +
      `numbers), ${count(results.replications, 'replication')}. Dot: mean; bar: ` +
      `${togetherText(results)}. Grey band: what does not matter. Blue dots: better, red diamonds: worse, ` +
      'hollow where it may be by less than ' +
      'matters; grey dots: no difference that matters, hollow: not settled.',
    rows,
    columns: [
      [
        ['difference', `(${ci})`],
        ({ difference, unit }) =>
          fit(`${signed(difference)} (${bounds(difference)}) ${unit}`, 320, SIZE.small),
      ],
      [['verdict'], ({ words }) => fit(words, WORDS_ROOM, SIZE.small)],
    ],
    values: valueAxis('difference, % of the base', { grace: '4%' }),
    intervals: [ci, ({ relative }) => relative && span(relative, 100)],
    plugins: [zoneBand(rows), ZERO_LINE, dots(rows)],
  });
}

function finding({ whatIfs, measures }: CompareResults): string {
  const [first] = measures,
    better = whatIfs.filter(({ compared }) => compared[0]?.verdict === 'better').map(({ name }) => name);
  if (first === undefined) return '';
  const { share } = first.zone,
    more = share > 0 ? `over ${number(100 * share)} % more` : 'more';
  return better.length === 0
    ? `No what-if of ${whatIfs.length} surely ships ${more} than the base`
    : `Ships more than the base: ${better.join(', ')}`;
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

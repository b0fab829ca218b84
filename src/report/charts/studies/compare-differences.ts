import type { Plugin } from 'chart.js';
import type { ComparedMeasure, CompareResults } from '../../../study/compare/results.js';
import { bounds, count, intervalName, number, signed } from '../../../study/format.js';
import { axisOf, drawing, polyline } from '../../drawing.js';
import { INK, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { diamondPath, disc } from '../marks.js';
import { heading, type Row, rowChart, rowLabel, span } from '../row-chart.js';

type Item = ComparedMeasure & { readonly name: string; readonly unit: string };
/** Room for a verdict in words, CSS pixels. */
const WORDS_ROOM = 250;
const COLOURS = {
  better: PALETTE.blue,
  worse: PALETTE.vermillion,
  'no difference seen': '#8a8a8a',
  'not settled': '#8a8a8a',
} as const;

/**
 * What each what-if changes, measure by measure, as dots with intervals on one scale of per cent of the base.
 */
export function compareDifferences(results: CompareResults): Chart | null {
  const rows = results.measures.flatMap(({ id, name, unit, better }): Row<Item>[] => [
    heading(`${name}, ${better} is better`),
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({ label: rowLabel(each.name), item: { ...item, name: each.name, unit } })),
    ),
  ]);
  const ci = intervalName(results.differenceLevel);
  return rowChart({
    finding: finding(results),
    how:
      `What-if minus base as a share of the base's mean, paired by replication (common random ` +
      `numbers), ${count(results.replications, 'replication')}. Dot: mean; bar: ${ci}, so that all ` +
      `what-ifs hold together with ${number(results.level * 100)} % in each measure. Blue dots: ` +
      'better; red diamonds: worse; grey: no difference seen.',
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
    plugins: [ZERO_LINE, dots(rows)],
  });
}

function finding({ whatIfs, measures }: CompareResults): string {
  const [first] = measures,
    better = whatIfs.filter(({ compared }) => compared[0]?.verdict === 'better').map(({ name }) => name);
  if (first === undefined) return '';
  return better.length === 0
    ? `No what-if of ${whatIfs.length} is seen to ship more than the base`
    : `Seen to ship more than the base: ${better.join(', ')}`;
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
    context.strokeStyle = '#ffffff';
    context.lineWidth = 1.2;
    rows.forEach(({ item }, row) => {
      if (item?.relative == null) return;
      const across = x.getPixelForValue(item.relative.mean * 100),
        down = y.getPixelForValue(row);
      context.fillStyle = COLOURS[item.verdict];
      if (item.verdict === 'worse') {
        diamondPath(context, across, down, 6);
        context.fill();
      } else disc(context, across, down, 4.5);
      context.stroke();
    });
  });
}

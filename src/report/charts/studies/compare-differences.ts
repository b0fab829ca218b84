import type { CompareResults, ComparedMeasure } from '../../../study/compare/results.js';
import { bounds, count, intervalName, number, signed } from '../../format.js';
import { INK, PALETTE, SIZE } from '../../style.js';
import { fit } from '../../text.js';
import { chart, roomAtRight, valueAxis, type Chart } from '../chart.js';
import { drawing, whiskers } from '../marks.js';
import {
  column,
  columnsRoom,
  nameAxis,
  perRow,
  rowHeight,
  rowLabel,
  textColumns,
  type Row,
} from '../rows.js';

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
    { label: rowLabel(`${name}, ${better} is better`, '600'), item: null },
    ...results.whatIfs.flatMap((each) =>
      each.compared
        .filter(({ measure }) => measure === id)
        .map((item) => ({ label: rowLabel(each.name), item: { ...item, name: each.name, unit } })),
    ),
  ]);
  const ci = intervalName(results.differenceLevel);
  const columns = [
    column(['difference', `(${ci})`], rows, ({ difference, unit }) =>
      fit(`${signed(difference)} (${bounds(difference)}) ${unit}`, 320, SIZE.small),
    ),
    column(['verdict'], rows, ({ words }) => fit(words, WORDS_ROOM, SIZE.small)),
  ];
  const percent = (value: number | null | undefined): number | null =>
    value === null || value === undefined ? null : value * 100;
  return chart({
    finding: finding(results),
    how:
      `What-if minus base as a share of the base's mean, paired by replication (common random ` +
      `numbers), ${count(results.replications, 'replication')}. Dot: mean; bar: ${ci}, so that all ` +
      `what-ifs hold together with ${number(results.level * 100)} % in each measure. Blue dots: ` +
      'better; red diamonds: worse; grey: no difference seen.',
    bodyHeight: 64 + rows.length * (rowHeight(rows.length) + 4),
    type: 'bar',
    data: {
      labels: rows.map((row) => row.label),
      datasets: [
        {
          label: ci,
          data: perRow(rows, ({ relative }): [number, number] | null =>
            relative === null || relative.low === null || relative.high === null
              ? null
              : [relative.low * 100, relative.high * 100],
          ),
          backgroundColor: 'transparent',
          grouped: false,
        },
      ],
    },
    options: { indexAxis: 'y' },
    scales: {
      x: valueAxis('difference, % of the base', { position: 'top', grace: '4%' }),
      y: nameAxis(rows),
      room: roomAtRight(columnsRoom(columns)),
    },
    plugins: [
      zeroLine,
      whiskers(0),
      dots(
        rows.map(({ item }) =>
          item === null ? null : { at: percent(item.relative?.mean), verdict: item.verdict },
        ),
      ),
      textColumns(columns),
    ],
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

const zeroLine = drawing('zero line', (context, chart) => {
  const x = chart.scales['x'];
  if (x === undefined) return;
  context.strokeStyle = INK;
  context.lineWidth = 1;
  context.beginPath();
  context.moveTo(x.getPixelForValue(0), chart.chartArea.top);
  context.lineTo(x.getPixelForValue(0), chart.chartArea.bottom);
  context.stroke();
});

/** A mark a row at its mean; worse ones are diamonds, so that colour is not needed. */
function dots(
  marks: readonly ({ readonly at: number | null; readonly verdict: keyof typeof COLOURS } | null)[],
) {
  return drawing('dots', (context, chart) => {
    const x = chart.scales['x'],
      y = chart.scales['y'];
    if (x === undefined || y === undefined) return;
    marks.forEach((mark, row) => {
      if (mark === null || mark.at === null) return;
      const across = x.getPixelForValue(mark.at),
        down = y.getPixelForValue(row);
      context.fillStyle = COLOURS[mark.verdict];
      context.strokeStyle = '#ffffff';
      context.lineWidth = 1.2;
      context.beginPath();
      if (mark.verdict === 'worse') {
        context.moveTo(across, down - 6);
        context.lineTo(across + 6, down);
        context.lineTo(across, down + 6);
        context.lineTo(across - 6, down);
        context.closePath();
      } else context.arc(across, down, 4.5, 0, 2 * Math.PI);
      context.fill();
      context.stroke();
    });
  });
}

import type { ChartConfiguration, ChartOptions, Plugin } from 'chart.js';
import type { Estimate, Results } from '../../study/simulate/results.js';
import { font, textWidth } from '../canvas.js';
import { intervalName } from '../format.js';
import { faded, INK, MUTED, SIZE } from '../style.js';
import { wrap } from '../text.js';
import { roomAtRight, valueAxis } from './chart.js';
import { drawing } from './marks.js';

/**
 * A line over the weeks of a programme (or the parts of a run); null leaves a gap. `note` stands small under
 * its name.
 */
export interface TimeLine {
  readonly name: string;
  readonly note: string;
  readonly values: readonly (Estimate | number | null)[];
  readonly colour: string;
  readonly dash: readonly number[];
  readonly stepped?: boolean;
  readonly width?: number;
  /** Hollow marks at these places. */
  readonly hollow?: readonly boolean[];
}

type Dataset = ChartConfiguration<'line'>['data']['datasets'][number];
const KEY_ROOM = 185,
  SWATCH = 26;

/** Each line as up to three datasets: low and high of its interval, filled between, then the line itself. */
export function lineDatasets(lines: readonly TimeLine[], level: number): Dataset[] {
  const bands = lines.flatMap((line): Dataset[] => {
    if (!line.values.some((value) => isEstimate(value) && value.low !== null && value.high !== value.low))
      return [];
    const unseen = { pointRadius: 0, borderWidth: 0, borderColor: 'transparent' };
    return [
      {
        ...unseen,
        label: `${line.name}, ${intervalName(level)} low`,
        data: line.values.map((value) => (isEstimate(value) ? value.low : null)),
      },
      {
        ...unseen,
        label: `${line.name}, ${intervalName(level)} high`,
        data: line.values.map((value) => (isEstimate(value) ? value.high : null)),
        fill: '-1',
        backgroundColor: faded(line.colour, 0.2),
      },
    ];
  });
  return [
    ...bands,
    ...lines.map(
      (line): Dataset => ({
        label: line.name,
        data: line.values.map(middle),
        borderColor: line.colour,
        borderWidth: line.width ?? 2,
        borderDash: [...line.dash],
        stepped: line.stepped === true ? 'middle' : false,
        pointRadius: line.values.map((_, index) =>
          line.hollow?.[index] === true ? 4 : isAlone(line.values, index) ? 2.5 : 0,
        ),
        pointBackgroundColor: line.values.map((_, index) =>
          line.hollow?.[index] === true ? '#ffffff' : line.colour,
        ),
        pointBorderColor: line.colour,
        pointBorderWidth: 1.6,
      }),
    ),
  ];
}

/**
 * Axes of a time chart: weeks or parts below, values from zero at the left, `grace` of empty plot above, room
 * for the names at the right.
 */
export function timeScales(
  results: { readonly series: Pick<Results['series'], 'unit'> },
  valueTitle: string,
  lines: readonly TimeLine[],
  grace: string,
): NonNullable<ChartOptions['scales']> {
  return {
    x: {
      type: 'category',
      grid: { display: false },
      title: {
        display: true,
        text: results.series.unit === 'week' ? 'ISO week' : 'part of the run',
        color: MUTED,
        font: { size: SIZE.small },
      },
      ticks: {
        autoSkip: true,
        autoSkipPadding: 22,
        maxRotation: 0,
        color: MUTED,
        font: { size: SIZE.small },
      },
    },
    y: valueAxis(valueTitle, { grace }),
    room: roomAtRight(nameRoom(lines)),
  };
}

/** Room that the names at the right take, CSS pixels. */
export function nameRoom(lines: readonly TimeLine[]): number {
  return 16 + SWATCH + Math.max(...lines.map(textRoom));
}

/** Names at the right end of the lines, with a sample of each line, spread so that none covers another. */
export function lineNames(lines: readonly TimeLine[]): Plugin {
  return drawing('line names', (context, chart) => {
    const y = chart.scales['y'];
    if (y === undefined) return;
    const blocks = lines
      .map((line) => {
        const names = wrap(line.name, KEY_ROOM, SIZE.text, '600');
        const notes = wrap(line.note, KEY_ROOM, SIZE.small);
        const last =
          line.values
            .map(middle)
            .filter((value) => value !== null)
            .at(-1) ?? 0;
        return {
          line,
          names,
          notes,
          height: 16 * names.length + 15 * notes.length + 8,
          at: y.getPixelForValue(last),
        };
      })
      .sort((a, b) => a.at - b.at);
    const tops = spread(
      blocks.map((block) => ({ wanted: block.at - 8, height: block.height })),
      chart.chartArea.top - 6,
      chart.chartArea.bottom + 6,
    );
    const x = chart.chartArea.right + 10;
    context.textBaseline = 'middle';
    blocks.forEach(({ line, names, notes }, index) => {
      let row = (tops[index] ?? 0) + 8;
      context.strokeStyle = line.colour;
      context.lineWidth = line.width ?? 2;
      context.setLineDash([...line.dash]);
      context.beginPath();
      context.moveTo(x, row);
      context.lineTo(x + SWATCH, row);
      context.stroke();
      for (const [texts, face, colour, step] of [
        [names, font(SIZE.text, '600'), INK, 16],
        [notes, font(SIZE.small), MUTED, 15],
      ] as const) {
        context.font = face;
        context.fillStyle = colour;
        for (const text of texts) {
          context.fillText(text, x + SWATCH + 6, row);
          row += step;
        }
      }
    });
  });
}

/**
 * Tops of blocks in order, as near as may be to where each is wanted, none over another, all within [top,
 * bottom] if they fit.
 */
export function spread(
  blocks: readonly { readonly wanted: number; readonly height: number }[],
  top: number,
  bottom: number,
): number[] {
  const tops: number[] = [];
  let free = top;
  for (const block of blocks) {
    tops.push(Math.max(free, block.wanted));
    free = (tops.at(-1) ?? top) + block.height;
  }
  let limit = bottom;
  for (let index = blocks.length - 1; index >= 0; index--) {
    const height = blocks[index]?.height ?? 0;
    tops[index] = Math.max(Math.min(tops[index] ?? top, limit - height), top);
    limit = tops[index] ?? limit;
  }
  return tops;
}

/** A value between gaps makes no line: without a mark it would not be seen. */
function isAlone(values: TimeLine['values'], index: number): boolean {
  return (values[index - 1] ?? null) === null && (values[index + 1] ?? null) === null;
}

function textRoom(line: TimeLine): number {
  const names = wrap(line.name, KEY_ROOM, SIZE.text, '600').map((text) => textWidth(text, SIZE.text, '600'));
  return Math.ceil(
    Math.max(...names, ...wrap(line.note, KEY_ROOM, SIZE.small).map((text) => textWidth(text, SIZE.small))),
  );
}

function isEstimate(value: Estimate | number | null): value is Estimate {
  return typeof value === 'object' && value !== null;
}

function middle(value: Estimate | number | null): number | null {
  return isEstimate(value) ? value.mean : value;
}

import { intervalName } from '../../study/format.js';
import type { Results } from '../../study/simulate/results.js';
import { type Estimate, isSame } from '../../study/statistics/estimate.js';
import { faded } from '../style.js';
import { bucketTitle, categoryAxis, roomForText, valueAxis } from './axes.js';
import { type Chart, chart, type Dataset, type Parts } from './chart.js';
import { band, type Edge } from './datasets.js';
import { lineNames, middle, type NamedLine, nameRoom } from './line-names.js';

/** A line over the weeks of a programme, or the parts of a run. */
export interface TimeLine extends NamedLine {
  readonly stepped?: boolean;
  /** Hollow marks at these places. */
  readonly hollow?: readonly boolean[];
}

/** Each line as up to three datasets: low and high of its interval, filled between, then the line itself. */
export function lineDatasets(lines: readonly TimeLine[], level: number): Dataset[] {
  const bands = lines.flatMap(({ name, values, colour }): Dataset[] => {
    if (!values.some((value) => isEstimate(value) && value.low !== null && value.high !== value.low))
      return [];
    const edge = (end: 'low' | 'high'): Edge => [
      `${name}, ${intervalName(level)} ${end}`,
      // Without any spread the band has no width; where there are too few replications to say there is none.
      values.map((value) => (isEstimate(value) ? (value[end] ?? (isSame(value) ? value.mean : null)) : null)),
    ];
    return band(edge('low'), edge('high'), faded(colour, 0.2));
  });
  return [
    ...bands,
    ...lines.map(({ name, values, colour, width, dash, stepped, hollow }) => ({
      label: name,
      data: values.map(middle),
      borderColor: colour,
      borderWidth: width ?? 2,
      borderDash: [...dash],
      stepped: stepped === true ? ('middle' as const) : false,
      pointRadius: values.map((_, index) =>
        hollow?.[index] === true ? 4 : isAlone(values, index) ? 2.5 : 0,
      ),
      pointBackgroundColor: values.map((_, index) => (hollow?.[index] === true ? '#ffffff' : colour)),
      pointBorderColor: colour,
      pointBorderWidth: 1.6,
    })),
  ];
}

/** What a time chart is made from. */
interface TimeParts extends Pick<Parts, 'finding' | 'how' | 'plugins'> {
  readonly bodyHeight?: number;
  readonly lines: readonly TimeLine[];
  readonly valueTitle: string;
  readonly grace?: string;
}

/**
 * Lines over weeks or parts of a run, values from zero at the left, `grace` of empty plot above, the names at
 * the right.
 */
export function timeChart(
  { series, level }: { readonly series: Pick<Results['series'], 'unit' | 'labels'>; readonly level: number },
  { lines, valueTitle, grace = '6%', bodyHeight, plugins = [], ...titles }: TimeParts,
): Chart {
  return chart({
    ...titles,
    bodyHeight: bodyHeight ?? Math.max(440, 60 + 56 * lines.length),
    type: 'line',
    data: { labels: [...series.labels], datasets: lineDatasets(lines, level) },
    scales: {
      x: categoryAxis(bucketTitle(series.unit)),
      y: valueAxis(valueTitle, { grace }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [...plugins, lineNames(lines)],
  });
}

/** A value between gaps makes no line: without a mark it would not be seen. */
function isAlone(values: TimeLine['values'], index: number): boolean {
  return (values[index - 1] ?? null) === null && (values[index + 1] ?? null) === null;
}

function isEstimate(value: Estimate | number | null): value is Estimate {
  return typeof value === 'object' && value !== null;
}

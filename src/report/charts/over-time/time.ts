import type { Results } from '../../../study/simulate/results.js';
import { type Estimate, isSame } from '../../../study/statistics/estimate.js';
import { faded } from '../../style.js';
import { bucketTitle, categoryAxis, roomForText, valueAxis } from '../axes.js';
import { type Chart, chart, type Dataset, intervalWords, type Parts } from '../chart.js';
import { band, type Edge } from '../datasets.js';
import { lineNames, middle, type NamedLine, nameRoom } from './line-names.js';
import { lineWords } from './line-words.js';
import { markedText, markWeeks, type Reach, type WeekMark, wordsOf } from './week-marks.js';

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
      `${name}, ${intervalWords(level)} ${end}`,
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
  /** Weeks that are not like the others. */
  readonly marked?: readonly WeekMark[];
  /** Left free at the top of marked weeks, CSS pixels. */
  readonly above?: number;
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
  { lines, valueTitle, grace = '6%', bodyHeight, plugins = [], marked = [], above = 0, ...titles }: TimeParts,
): Chart {
  const reach = reachOf(lines);
  return chart({
    ...titles,
    ...(marked.length === 0 ? {} : { inside: `Marked: ${markedText(marked, series.labels)}.` }),
    bodyHeight: bodyHeight ?? Math.max(440, 60 + 56 * lines.length),
    type: 'line',
    data: { labels: [...series.labels], datasets: lineDatasets(lines, level) },
    scales: {
      x: categoryAxis(bucketTitle(series.unit)),
      y: valueAxis(valueTitle, { grace }),
      room: roomForText(nameRoom(lines)),
    },
    plugins: [
      markWeeks(marked, reach, above),
      ...plugins,
      lineNames(lines),
      lineWords(lines, (live) => wordsOf(marked, reach, above, live)),
    ],
  });
}

/** A value between gaps makes no line: without a mark it would not be seen. */
function isAlone(values: TimeLine['values'], index: number): boolean {
  return (values[index - 1] ?? null) === null && (values[index + 1] ?? null) === null;
}

function isEstimate(value: Estimate | number | null): value is Estimate {
  return typeof value === 'object' && value !== null;
}

/** The highest and the lowest of all lines, and the first of them, week by week. */
function reachOf(lines: readonly TimeLine[]): Reach[] {
  return (lines[0]?.values ?? []).map((value, week) => {
    const there = lines.map(({ values }) => middle(values[week] ?? null)).filter((each) => each !== null),
      highest = Math.max(...there);
    return there.length === 0 ? null : [highest, Math.min(...there), middle(value) ?? highest];
  });
}

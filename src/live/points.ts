import type { Chart } from 'chart.js/auto';
import { number } from '../study/format.js';

/** A series of a picture as a reader knows it: its values, and its interval where it has one. */
export interface Series {
  readonly name: string;
  /** Datasets that draw it. */
  readonly sets: readonly number[];
  /** Its value at a place, see `placesOf`. */
  readonly textAt: (place: number) => string | null;
}

/** Of a dataset that holds the interval of another, or one end of it: `shipped, 95 % interval low`. */
const INTERVAL = /^(.*), (.+ interval|\d+ of \d+ builds)(?: (low|high))?$/;
const MS_PER_DAY = 86_400_000;

interface Point {
  readonly x: number;
  readonly y: unknown;
}
const isPoint = (value: unknown): value is Point =>
  typeof value === 'object' && value !== null && 'x' in value && 'y' in value;

/** Where a picture has values: its weeks or rows, or the values of its axis where it has no such names. */
function xsOf(chart: Chart): readonly number[] | null {
  const { labels, datasets } = chart.data;
  if (labels !== undefined && labels.length > 0) return null;
  const named = datasets.filter(({ label = '' }) => label !== '').flatMap(({ data }) => data as unknown[]);
  return [...new Set(named.filter(isPoint).map(({ x }) => x))].sort((a, b) => a - b);
}

/** How many places there are. */
export const placesOf = (chart: Chart): number => xsOf(chart)?.length ?? chart.data.labels?.length ?? 0;

/** The place of a value of a dataset. */
export function placeOf(chart: Chart, set: number, index: number): number {
  const xs = xsOf(chart),
    value: unknown = chart.data.datasets[set]?.data[index];
  return xs === null || !isPoint(value) ? index : xs.indexOf(value.x);
}

/** The index in a dataset of its value at a place; -1 where it has none. */
export function indexAt(chart: Chart, set: number, place: number): number {
  const xs = xsOf(chart);
  if (xs === null) return place;
  return ((chart.data.datasets[set]?.data ?? []) as unknown[]).findIndex(
    (value) => isPoint(value) && value.x === xs[place],
  );
}

/** Series in the order of the picture; intervals belong to what they are of. */
export function seriesOf(chart: Chart): Series[] {
  const { datasets } = chart.data,
    intervals = datasets.map(({ label = '' }) => INTERVAL.exec(label));
  const valueAt = (set: number, place: number): unknown => datasets[set]?.data[indexAt(chart, set, place)];
  return datasets.flatMap(({ label = '' }, set): Series[] => {
    if (label === '' || intervals[set] !== null) return [];
    const own = intervals.flatMap((found, at) => (found?.[1] === label ? [{ at, found }] : [])),
      words = own[0]?.found[2] ?? '';
    const spanAt = (place: number): string | null => {
      const texts = own.map(({ at }) => textOf(valueAt(at, place)));
      if (texts.length === 0 || texts.some((text) => text === null)) return null;
      return texts.length === 1 ? (texts[0] ?? null) : texts[0] === texts[1] ? null : texts.join(' to ');
    };
    return [
      {
        name: label,
        sets: [set, ...own.map(({ at }) => at)],
        textAt: (place) => {
          const value = textOf(valueAt(set, place)),
            span = spanAt(place);
          return value === null || span === null ? value : `${value} (${words} ${span})`;
        },
      },
    ];
  });
}

function textOf(value: unknown): string | null {
  if (typeof value === 'number') return Number.isNaN(value) ? null : number(value);
  if (Array.isArray(value)) {
    const [low, high] = value as [number, number];
    return `${number(low)} to ${number(high)}`;
  }
  return isPoint(value) ? textOf(value.y) : null;
}

/** What a place of the picture is called: a week, a station, a day, a value of the axis with its name. */
export function labelAt(chart: Chart, place: number): string {
  const x = xsOf(chart)?.[place];
  if (x !== undefined) {
    const { title } = (chart.options.scales?.['x'] ?? {}) as { title?: { text?: string } };
    return title?.text === undefined || title.text === ''
      ? new Date(Math.round(x * MS_PER_DAY)).toISOString().slice(0, 10)
      : `${title.text} ${number(x)}`;
  }
  const label: unknown = chart.data.labels?.[place];
  return typeof label === 'string' ? label : Array.isArray(label) ? label.join(' ') : String(place + 1);
}

/** The values at a place, a line each. */
export const saidAt = (chart: Chart, place: number): string[] =>
  seriesOf(chart).flatMap(({ name, sets, textAt }) => {
    const text = sets.every((set) => chart.isDatasetVisible(set)) ? textAt(place) : null;
    return text === null ? [] : [`${name}: ${text}`];
  });

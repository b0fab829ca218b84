import type { Chart } from 'chart.js/auto';
import { number } from '../study/format.js';

/** A series of a picture as a reader knows it: its values, and its interval where it has one. */
export interface Series {
  readonly name: string;
  /** Datasets that draw it. */
  readonly sets: readonly number[];
  readonly textAt: (index: number) => string | null;
}

const END = /^(.*), (\d.* CI) (low|high)$/;

/** Series in the order of the picture; the edges of a band belong to its line. */
export function seriesOf(chart: Chart): Series[] {
  const { datasets } = chart.data,
    edges = datasets.map(({ label = '' }) => END.exec(label));
  return datasets.flatMap(({ label = '', data }, set): Series[] => {
    if (label === '' || edges[set] !== null) return [];
    const own = edges.flatMap((edge, at) => (edge?.[1] === label ? [{ at, edge }] : [])),
      edgeAt = (end: string, index: number): unknown =>
        datasets[own.find(({ edge }) => edge[3] === end)?.at ?? -1]?.data[index];
    return [
      {
        name: label,
        sets: [set, ...own.map(({ at }) => at)],
        textAt: (index) => {
          const value = textOf(data[index]);
          if (value === null) return null;
          const low = textOf(edgeAt('low', index)),
            high = textOf(edgeAt('high', index));
          return low === null || high === null || low === high
            ? value
            : `${value} (${own[0]?.edge[2] ?? ''} ${low} to ${high})`;
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
  if (typeof value === 'object' && value !== null && 'y' in value) return textOf(value.y);
  return null;
}

/** What a place of the picture is called: a week, a station. */
export const labelAt = (chart: Chart, index: number): string => {
  const label: unknown = chart.data.labels?.[index];
  return typeof label === 'string' ? label : Array.isArray(label) ? label.join(' ') : String(index + 1);
};

/** The values at a place, a line each. */
export const saidAt = (chart: Chart, index: number): string[] =>
  seriesOf(chart).flatMap(({ name, sets, textAt }) => {
    const text = sets.every((set) => chart.isDatasetVisible(set)) ? textAt(index) : null;
    return text === null ? [] : [`${name}: ${text}`];
  });

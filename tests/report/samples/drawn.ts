import type { Chart, DrawChart } from '../../../src/report/charts/chart.js';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { sampleResults } from './results.js';

/** What the pictures of a simulate study are drawn from, and how the tests look into one. */
export const results = sampleResults({ stations: 45 });
export const draw = (name: string, from: Results = results): Chart => {
  const chart = (CHARTS.simulate as Readonly<Record<string, DrawChart<Results>>>)[name](from);
  if (chart === null) throw new Error(`expected chart ${name} to have something to draw`);
  return chart;
};
export const datasets = (chart: Chart): { label?: string; data: unknown[] }[] =>
  chart.configuration.data.datasets as never;
export const axisTitle = (chart: Chart, axis: string): string =>
  (chart.configuration.options?.scales?.[axis] as { title?: { text?: string } } | undefined)?.title?.text ??
  '';
export const titleOf = (chart: Chart): string =>
  [chart.configuration.options?.plugins?.title?.text].flat().join(' ');

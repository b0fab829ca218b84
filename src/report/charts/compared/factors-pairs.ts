import type { FactorsResults, PairResult } from '../../../study/factors/results.js';
import { shippedOf } from '../../../study/factors/standing.js';
import { count } from '../../../study/format.js';
import { INK, isNarrow, LINES } from '../../style.js';
import { EMPTY_AXIS } from '../axes.js';
import { type Chart, chart, type Dataset } from '../chart.js';
import { toldDifference } from '../differences.js';
import { figures } from '../figures.js';
import { togetherFinding } from './factors-effects.js';
import { acrossAt, frames, type Panel, ticksOver, upAt } from './factors-panels.js';

/** Height of a panel, CSS pixels. */
const HEIGHT = 240;

/**
 * Means of the throughput by the levels of two factors, a panel for each two: lines that are not parallel do
 * more or less together than their sum. Null where no two are told apart from others.
 */
export function factorPairs(results: FactorsResults): Chart | null {
  const columns = isNarrow() ? 1 : Math.min(3, results.pairs.length),
    panels = results.pairs.flatMap((pair, p) => panelOf(results, pair, p, columns)),
    values = panels.flatMap(({ lines }) => lines.flatMap((each) => each.values.filter((v) => v !== null)));
  if (values.length === 0) return null;
  const rows = Math.ceil(panels.length / columns),
    ticks = ticksOver(Math.min(...values), Math.max(...values));
  return chart({
    finding: togetherFinding(results),
    how:
      `Mean of ${results.measures[0]?.unit ?? ''} over all combinations with these values, ` +
      `${count(results.replications, 'build')} each. Parallel lines: both just add up. Under the names: ` +
      'what they do beyond that. The scale does not begin at 0.',
    bodyHeight: rows * HEIGHT,
    type: 'line',
    data: { labels: panels.flatMap(labelsOf), datasets: datasetsOf(panels, ticks, rows) },
    options: { interaction: { axis: 'xy' } },
    scales: {
      x: { ...EMPTY_AXIS, axis: 'x', display: false, min: 0, max: columns },
      y: { ...EMPTY_AXIS, display: false, min: 0, max: rows },
    },
    plugins: [frames(panels, ticks, rows)],
  });
}

function panelOf(
  { factors, effects }: FactorsResults,
  { factors: [f, g], means }: PairResult,
  p: number,
  columns: number,
): Panel[] {
  const write = figures(shippedOf({ effects }).map(({ difference }) => difference));
  const [one, two, [main]] = [factors[f], factors[g], means];
  if (one === undefined || two === undefined || main === undefined) return [];
  const [together, ...others] = effects
    .filter(({ kind, factors: of }) => kind === 'together' && of[0] === f && of[1] === g)
    .flatMap(({ measures, mixedWith }) => measures.slice(0, 1).map((each) => ({ ...each, mixedWith })))
    .sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean));
  const also = together?.mixedWith.filter((word) => word.length === 2) ?? [];
  return [
    {
      title: `${one.name} with ${two.name}${also.length === 0 ? '' : ` (or ${also.join(', ')})`}`,
      note:
        together === undefined
          ? ''
          : `${others.length > 0 ? 'at most ' : ''}together ${toldDifference(together.difference, write)}`,
      across: { name: one.name, levels: one.levels.map(({ name }) => name) },
      along: two.name,
      lines: two.levels.map(({ name }, j) => ({
        name,
        values: main.values.map((row) => row[j] ?? null),
      })),
      column: p % columns,
      row: Math.floor(p / columns),
    },
  ];
}

const labelsOf = ({ across: { name, levels }, title }: Panel): string[] =>
  levels.map((level) => `${name} ${level} (${title})`);

/** A dataset a line; its values stand in `y`, where they are drawn in `at`. */
function datasetsOf(panels: readonly Panel[], ticks: readonly number[], rows: number): Dataset[] {
  const all = panels.flatMap(labelsOf).length;
  let first = 0;
  return panels.flatMap((panel) => {
    const begin = first;
    first += panel.across.levels.length;
    return panel.lines.map(({ name, values }, l): Dataset => {
      const { colour, dash } = LINES[l] ?? { colour: INK, dash: [] };
      const data = Array.from({ length: all }, (_, i) => {
        const value = values[i - begin] ?? null;
        return value === null
          ? { x: NaN, y: NaN, at: NaN }
          : { x: acrossAt(panel, i - begin), y: value, at: upAt(panel, value, ticks, rows) };
      });
      return {
        label: `${panel.along} ${name} (${panel.title})`,
        data,
        parsing: { xAxisKey: 'x', yAxisKey: 'at' },
        borderColor: colour,
        backgroundColor: colour,
        borderDash: [...dash],
        borderWidth: 2.2,
        pointRadius: 3.5,
      };
    });
  });
}

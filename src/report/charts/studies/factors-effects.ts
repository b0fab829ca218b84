import type { FactorsResults } from '../../../study/factors/results.js';
import { rankingOf, togetherOf } from '../../../study/factors/standing.js';
import { bounds, count, number, signed } from '../../../study/format.js';
import { byMeasureOf, type MeasureByFactors, togetherFactors, togetherWords } from '../../factors.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { type Compared, differencesParts, MARKS_NOTE } from '../differences.js';
import { foremost } from '../foremost.js';
import { heading, type Row, rowChart, rowsOf } from '../row-chart.js';

/** What each factor does to the throughput by itself, and each two together, on one scale. */
export function factorEffects(results: FactorsResults): Chart | null {
  const [main] = byMeasureOf(results);
  if (main === undefined) return null;
  return effectsChart(results, effectRows(main), finding(results));
}

/** The same of all other measures. */
export function factorEffectsElsewhere(results: FactorsResults): Chart | null {
  const others = byMeasureOf(results).slice(1),
    rows = others.flatMap((measure) => [
      heading(`${measure.name}, ${measure.better} is better`),
      ...effectRows(measure).filter(({ item }) => item !== null),
    ]);
  const seen = others.flatMap(({ name, effects }) =>
    effects.some(({ verdict }) => verdict === 'better' || verdict === 'worse') ? [name] : [],
  );
  return effectsChart(
    results,
    rows,
    seen.length === 0
      ? 'No factor surely changes any other measure by what matters'
      : `Changed by what matters as well: ${seen.join('; ')}`,
  );
}

function effectRows({ unit, zone, effects }: MeasureByFactors): Row<Compared>[] {
  const part = (kind: 'alone' | 'together', title: string): Row<Compared>[] => {
    const items = effects.filter(({ effect }) => effect.kind === kind);
    return items.length === 0
      ? []
      : [
          heading(title),
          ...rowsOf(
            items.map((item) => ({
              ...item,
              ...{ unit, zone: zone.share },
              words: kind === 'alone' ? item.words : togetherWords(item.words),
            })),
            ({ effect }) => effect.name,
          ),
        ];
  };
  return [...part('alone', 'by itself'), ...part('together', 'two together, beyond their sum')];
}

function effectsChart(results: FactorsResults, all: readonly Row<Compared>[], title: string): Chart | null {
  if (all.length === 0) return null;
  const { shown, note } = foremost(
    all,
    ({ item }) => (item === null ? Infinity : Math.abs(item.relative?.mean ?? NaN)),
    'rows',
    'with the largest effects',
  );
  const rows = shown.filter(({ item }, i) => item !== null || shown[i + 1]?.item != null);
  return rowChart({
    finding: title,
    how:
      'What changes from the first level named to the second, on average over the levels of all other ' +
      'factors; of two together what both bring beyond the sum of each. As a share of what the ' +
      'scenario has ' +
      `as it is, worked out in each of ${count(results.replications, 'replication')} with the same random ` +
      `events in all combinations. Dot: mean; bar: ${togetherFactors(results)}. ${MARKS_NOTE}${note}`,
    rows,
    ...differencesParts(rows, 'effect', results.eachLevel),
    values: valueAxis('effect, % of the scenario as it is', { grace: '4%' }),
  });
}

function finding(results: FactorsResults): string {
  const { seen, leaders } = rankingOf(results),
    [first] = seen;
  if (first === undefined) return 'No factor by itself surely changes what is shipped';
  return (
    `${leaders === 1 ? 'Matters most by itself' : 'The largest effect seen'}: ${first.effect.name}, ` +
    `${signed(first.difference)} (${bounds(first.difference)}) ${results.measures[0]?.unit ?? ''}`
  );
}

/** What two do together, in a title. */
export function togetherFinding(results: FactorsResults): string {
  const { more, less, open } = togetherOf(results),
    zone = results.measures[0]?.zone.amount ?? 0;
  const most = [...more, ...less].sort(
    (a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean),
  )[0];
  if (most !== undefined)
    return (
      `${most.difference.mean > 0 ? 'More' : 'Less'} together than the sum of both: ${most.effect.name}, ` +
      `${signed(most.difference)} (${bounds(most.difference)}) ${results.measures[0]?.unit ?? ''}`
    );
  return open.length > 0
    ? 'No two surely do more or less together than their sum'
    : `No two do more or less together than their sum by more than ${number(zone)}`;
}

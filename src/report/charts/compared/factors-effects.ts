import type { FactorsResults } from '../../../study/factors/results.js';
import { rankingOf, togetherOf } from '../../../study/factors/standing.js';
import { count, number } from '../../../study/format.js';
import { measureName } from '../../compare.js';
import { byMeasureOf, type MeasureByFactors, togetherWords } from '../../factors.js';
import { isNarrow, LAYOUT } from '../../style.js';
import { valueAxis } from '../axes.js';
import type { Chart } from '../chart.js';
import { type Compared, differencesParts, MARKS_NOTE, toldDifference } from '../differences.js';
import { foremost } from '../foremost.js';
import { heading, type Row, rowChart, rowsOf } from '../row-chart.js';

/** What each factor does to the throughput by itself, and each two together, on one scale. */
export function factorEffects(results: FactorsResults): Chart | null {
  const [main] = byMeasureOf(results);
  if (main === undefined) return null;
  return effectsChart(results, effectRows(main), finding(results));
}

/** The same of all other measures, or of those that a reader asks for first where few rows are shown. */
export function factorEffectsElsewhere(results: FactorsResults): Chart | null {
  const others = byMeasureOf(results).slice(1),
    few = others.filter(({ id }) => FIRST.includes(id)),
    isCut = others.length * results.effects.length > LAYOUT.mostRows && few.length > 0;
  if (isCut) LAYOUT.isCut = true;
  const rows = (isCut ? few : others).flatMap((measure) => [
    {
      label: `${measureName(measure)}, ${measure.unit}${isNarrow() ? '' : `, ${measure.better} is better`}`,
      item: null,
    },
    ...effectRows(measure).filter(({ item }) => item !== null),
  ]);
  const seen = others.filter(({ effects }) =>
      effects.some(({ verdict }) => verdict === 'better' || verdict === 'worse'),
    ),
    left = seen.length - NAMED;
  return effectsChart(
    results,
    rows,
    seen.length === 0
      ? 'No factor surely changes any other measure by what matters'
      : `Also changed by what matters: ${seen.slice(0, NAMED).map(measureName).join('; ')}` +
          (left > 0 ? ` and ${count(left, 'other')}` : ''),
  );
}

/** Most asked for first, where there is room for a few only. */
const FIRST: readonly string[] = ['last unit', 'cost'];
/** Measures in a title at most. */
const NAMED = 3;

function effectRows({ zone, effects }: MeasureByFactors): Row<Compared>[] {
  const part = (kind: 'alone' | 'together', title: string): Row<Compared>[] => {
    const items = effects.filter(({ effect }) => effect.kind === kind);
    return items.length === 0
      ? []
      : [
          heading(title),
          ...rowsOf(
            items.map((item) => ({
              ...item,
              zone: zone.share,
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
  // A page has a button for the rest instead of the note.
  return rowChart({
    finding: title,
    how:
      'On average over the others; two together: beyond the sum of both. ' +
      `${count(results.replications, 'build')}; ${number(100 * results.level)} % sure that all hold. ` +
      `${MARKS_NOTE}${LAYOUT.hasTitles ? note : ''}`,
    rows,
    ...differencesParts(rows, 'effect', results.level),
    values: valueAxis('effect, % of today', { grace: '4%' }),
  });
}

function finding(results: FactorsResults): string {
  const { seen, leaders } = rankingOf(results),
    [first] = seen;
  if (first === undefined) return 'No factor by itself surely changes what is shipped';
  return (
    `${leaders === 1 ? 'Matters most by itself' : 'The largest effect seen'}: ${first.effect.name}, ` +
    `${toldDifference(first.difference)} ${results.measures[0]?.unit ?? ''}`
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
      `${toldDifference(most.difference)} ${results.measures[0]?.unit ?? ''}`
    );
  return open.length > 0
    ? 'No two surely do more or less together than their sum'
    : `No two do more or less together than their sum by more than ${number(zone)}`;
}

import type { FactorsResults } from '../../study/factors/results.js';
import { CHARTS } from '../charts/of-study.js';
import { byMeasureOf } from '../factors.js';
import { factorsPage } from '../page/studies/factors.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileColumn, type FileTable, fileTable } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/** The report of an experiment. */
export const factorsFiles = studyFiles<FactorsResults>({
  charts: CHARTS.factors,
  page: factorsPage,
  data: {
    'effects.csv': effectsData,
    'combinations.csv': combinationsData,
    'runs.csv': runsData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: ['runs.csv'],
});

/** One row an effect and measure. */
function effectsData(results: FactorsResults): FileTable {
  const { factors } = results,
    measures = byMeasureOf(results);
  const rows = results.effects.flatMap((_, e) =>
    measures.flatMap(({ effects, ...measure }) =>
      effects.slice(e, e + 1).map((each) => ({ ...measure, ...each })),
    ),
  );
  const levels = (numbers: readonly number[], of: readonly number[]): string =>
    of.map((f, i) => factors[f]?.levels[numbers[i] ?? 0]?.name ?? '').join('; ');
  return fileTable(rows, [
    ['effect', ({ effect }) => effect.name],
    ['kind', ({ effect }) => effect.kind],
    ['factors', ({ effect }) => effect.factors.map((f) => factors[f]?.name ?? '').join('; ')],
    ['from', ({ effect }) => levels(effect.from, effect.factors)],
    ['to', ({ effect }) => levels(effect.to, effect.factors)],
    ['word', ({ effect }) => effect.word],
    ['mixed_with', ({ effect }) => effect.mixedWith.join('; ')],
    ['measure', 'name'],
    ['unit', 'unit'],
    ['better', 'better'],
    ['effect_mean', ({ difference }) => difference.mean],
    ['effect_low', ({ difference }) => difference.low],
    ['effect_high', ({ difference }) => difference.high],
    ['level', ({ difference }) => difference.level],
    ['zone', ({ zone }) => zone.amount],
    ['replications', ({ difference }) => difference.n],
    ['pairing_gain', 'pairingGain'],
    ['verdict', 'verdict'],
  ]);
}

/** One row a combination and measure. */
function combinationsData(results: FactorsResults): FileTable {
  const { factors, best } = results;
  const rows = results.combinations.flatMap((_, c) =>
    byMeasureOf(results).flatMap(({ combinations, ...measure }) =>
      combinations.slice(c, c + 1).map((each) => ({ ...measure, ...each, c })),
    ),
  );
  type Row = (typeof rows)[number];
  return fileTable(rows, [
    ...factors.map(
      ({ name, levels }, f): FileColumn<Row> => [
        name,
        ({ combination }) => levels[combination.levels[f] ?? 0]?.name ?? '',
      ],
    ),
    ['measure', 'name'],
    ['unit', 'unit'],
    ['better', 'better'],
    ['base_mean', ({ base }) => base.mean],
    ['mean', ({ value }) => value.mean],
    ['low', ({ value }) => value.low],
    ['high', ({ value }) => value.high],
    ['difference', ({ difference }) => difference.mean],
    ['difference_low', ({ difference }) => difference.low],
    ['difference_high', ({ difference }) => difference.high],
    ['level', ({ difference }) => difference.level],
    ['verdict', 'verdict'],
    [
      'ships_most',
      ({ c }) => (c === best.combination ? 'yes' : best.notBehind.includes(c) ? 'perhaps' : 'no'),
    ],
  ]);
}

/** One row a combination and replication, for statistics of the reader's own. */
function runsData({ factors, combinations, measures, runs }: FactorsResults): FileTable {
  type Run = FactorsResults['runs'][number];
  return fileTable(runs, [
    ['combination', ({ combination }) => (combination === null ? 'as it is' : combination + 1)],
    ...factors.map(
      ({ name, levels }, f): FileColumn<Run> => [
        name,
        ({ combination }) =>
          combination === null ? '' : (levels[combinations[combination]?.levels[f] ?? 0]?.name ?? ''),
      ],
    ),
    ['replication', 'replication'],
    ['outcome', 'outcome'],
    ...measures.map(({ name, unit }, m): FileColumn<Run> => [`${name}, ${unit}`, ({ values }) => values[m]]),
  ]);
}

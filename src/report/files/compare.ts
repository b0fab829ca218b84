import type { CompareResults } from '../../study/compare/results.js';
import { CHARTS } from '../charts/of-study.js';
import { byMeasure } from '../compare.js';
import { comparePage } from '../page/studies/compare.js';
import { lossesData, trialsData } from './constraint.js';
import { type FileColumn, type FileTable, fileTable } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/** The report of a comparison. */
export const compareFiles = studyFiles<CompareResults>({
  charts: CHARTS.compare,
  page: comparePage,
  data: {
    'differences.csv': differencesData,
    'runs.csv': runsData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: ['runs.csv'],
});

/** One row a what-if and measure. */
function differencesData(results: CompareResults): FileTable {
  const measures = byMeasure(results);
  const rows = results.whatIfs.flatMap(({ name }) =>
    measures.flatMap((measure) =>
      measure.whatIfs.filter(({ whatIf }) => whatIf === name).map((each) => ({ ...measure, ...each })),
    ),
  );
  return fileTable(rows, [
    ['what_if', 'whatIf'],
    ['measure', 'name'],
    ['unit', 'unit'],
    ['better', 'better'],
    ['base_mean', ({ base }) => base.mean],
    ['mean', ({ value }) => value.mean],
    ['difference', ({ difference }) => difference.mean],
    ['difference_low', ({ difference }) => difference.low],
    ['difference_high', ({ difference }) => difference.high],
    ['level', ({ difference }) => difference.level],
    ['zone', ({ zone }) => zone.amount],
    ['pairs', ({ difference }) => difference.n],
    ['pairing_gain', 'pairingGain'],
    ['verdict', 'verdict'],
  ]);
}

/** One row a variant and replication, for statistics of the reader's own. */
function runsData({ measures, runs }: CompareResults): FileTable {
  type Run = CompareResults['runs'][number];
  return fileTable(runs, [
    ['variant', 'variant'],
    ['replication', 'replication'],
    ['outcome', 'outcome'],
    ...measures.map(({ name, unit }, m): FileColumn<Run> => [`${name}, ${unit}`, ({ values }) => values[m]]),
  ]);
}

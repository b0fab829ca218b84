import type { Effect, ReliefResult, ReliefsResults } from '../../study/reliefs/results.js';
import { CHARTS } from '../charts/of-study.js';
import { reliefsPage } from '../page/studies/reliefs.js';
import { estimate, type FileColumn, type FileTable, fileTable } from './csv.js';
import { studyFiles } from './study-files.js';

/** The report of a study of reliefs. */
export const reliefsFiles = studyFiles<ReliefsResults>({
  charts: CHARTS.reliefs,
  page: reliefsPage,
  data: { 'reliefs.csv': reliefsData, 'assumptions.csv': assumptionsData },
  sheets: [],
});

const EFFECT: readonly FileColumn<Effect>[] = [
  ...estimate('gain', ({ gain }: Effect) => gain),
  ...estimate('cost', ({ costPerUnit }: Effect) => costPerUnit),
  ['replications', 'replications'],
  ['out', 'out'],
];

/** One row a relief, by rank: gain in the planner's unit, change of the cost of a unit, gain per cost. */
function reliefsData({ reliefs }: ReliefsResults): FileTable {
  return fileTable(reliefs, [
    ['rank', 'rank'],
    ['kind', 'kind'],
    ['relief', 'text'],
    ...EFFECT,
    ...estimate('gain_per_cost', ({ gainPerCost }: ReliefResult) => gainPerCost),
    ['rank_per_cost', 'rankPerCost'],
    ['fresh', ({ isFresh }) => (isFresh ? 'yes' : 'no')],
  ]);
}

/** One row an end of an assumption. */
function assumptionsData({ assumptions }: ReliefsResults): FileTable {
  const ends = assumptions.flatMap(({ path, words, basis, value, low, high }) =>
    [{ end: 'low', varied: low } as const, { end: 'high', varied: high } as const].flatMap(
      ({ end, varied }) => (varied === null ? [] : [{ ...varied, path, words, basis, now: value, end }]),
    ),
  );
  return fileTable(ends, [
    ['path', 'path'],
    ['what', 'words'],
    ['basis', 'basis'],
    ['value', 'now'],
    ['end', 'end'],
    ['varied', 'value'],
    ...EFFECT,
  ]);
}

import type { Effect, ReliefResult, ReliefsResults } from '../../study/reliefs/results.js';
import { CHARTS } from '../charts/of-study.js';
import { reliefsPage } from '../page/studies/reliefs.js';
import { estimate, type FileColumn, type FileTable, fileTable } from './folder/csv.js';
import { studyFiles } from './folder/study-files.js';

/** The report of a study of reliefs. */
export const reliefsFiles = studyFiles<ReliefsResults>({
  charts: CHARTS.reliefs,
  page: reliefsPage,
  data: { 'reliefs.csv': reliefsData, 'groups.csv': groupsData, 'assumptions.csv': assumptionsData },
  sheets: [],
});

const EFFECT: readonly FileColumn<Effect>[] = [
  ...estimate('gain', ({ gain }: Effect) => gain),
  ...estimate('cost', ({ costPerUnit }: Effect) => costPerUnit),
  ['replications', 'replications'],
  ['out', 'out'],
];

/** What the scenario says of the price, where it names changes. */
const OFFER: readonly FileColumn<ReliefResult>[] = [
  ['change', ({ offer }) => offer?.names.join(' + ')],
  ['price', ({ offer }) => offer?.price, 'money'],
  ['price_per_unit', ({ offer }) => offer?.pricePerUnit, 'money'],
  ['price_a_day', ({ offer }) => offer?.day, 'money'],
  ['ready_after', ({ offer }) => offer?.readyAfter],
  ['at_most', ({ offer }) => offer?.atMost, 'count'],
  ['needs', ({ offer }) => offer?.needs.join(' + ')],
  ...estimate('price_per_gain', ({ pricePerGain }: ReliefResult) => pricePerGain, 'money'),
  ['rank_per_price', ({ rankPerPrice }) => rankPerPrice],
];

/** One row a relief, by rank: gain in the planner's unit, change of the cost of a unit, gain per cost. */
function reliefsData({ reliefs }: ReliefsResults): FileTable {
  const isPriced = reliefs.some(({ offer }) => offer !== undefined);
  return fileTable(reliefs, [
    ['rank', 'rank'],
    ['kind', 'kind'],
    ['relief', 'text'],
    ...EFFECT,
    ...estimate('gain_per_cost', ({ gainPerCost }: ReliefResult) => gainPerCost),
    ['rank_per_cost', 'rankPerCost'],
    ['fresh', ({ isFresh }) => (isFresh ? 'yes' : 'no')],
    ...(isPriced ? OFFER : []),
  ]);
}

/** One row a relief that was given up with others, with what all of its group gain at once. */
function groupsData({ groups }: ReliefsResults): FileTable {
  const rows = groups.flatMap(({ reliefs, ...group }, g) =>
    reliefs.map((relief) => ({ ...relief, ...group, number: g + 1, size: reliefs.length })),
  );
  return fileTable(rows, [
    ['group', 'number'],
    ['reliefs', 'size', 'count'],
    ['kind', 'kind'],
    ['relief', 'text'],
    ...estimate('gain_of_group', ({ gain }: (typeof rows)[number]) => gain),
    ['replications', 'replications'],
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

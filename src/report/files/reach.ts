import type { BuildResult, PossibleResult, ReachResults, StepResult } from '../../study/reach/results.js';
import { setText } from '../../study/reach/sentence.js';
import { CHARTS } from '../charts/of-study.js';
import { stepVerdict, timesIn, timesMade } from '../first/reach/told.js';
import { reachPage } from '../page/studies/reach.js';
import { lossesData, trialsData } from './constraint.js';
import { estimate, type FileColumn, type FileTable, fileTable, proportion } from './csv.js';
import { type Files, studyFiles } from './study-files.js';

const report = studyFiles<ReachResults>({
  charts: CHARTS.reach,
  page: reachPage,
  data: {
    'steps.csv': stepsData,
    'frontier.csv': frontierData,
    'changes.csv': changesData,
    'losses.csv': ({ constraint }) => lossesData(constraint),
    'trials.csv': ({ constraint }) => trialsData(constraint),
  },
  sheets: [],
});

/**
 * Files for whoever goes on from the answer, such as the scenario with its changes made: text by name.
 * Whoever knows the scenario as data gives them.
 */
export type MoreFiles = (results: ReachResults) => ReadonlyMap<string, string>;

/** The report of a search for the cheapest changes, with further files beside it. */
export const reachFilesWith =
  (more: MoreFiles): typeof report =>
  async (results, notice): Promise<Files> =>
    new Map([...(await report(results, notice)), ...more(results)]);

/** The report of a search for the cheapest changes. */
export const reachFiles = reachFilesWith(() => new Map());

/** What a build is, in columns: money, what is shipped, what a unit costs, when the last is out. */
const BUILD: readonly FileColumn<BuildResult>[] = [
  ['money', 'money', 'money'],
  ['money_a_day', 'day', 'money'],
  ...estimate('shipped_per_day', ({ throughput }: BuildResult) => throughput),
  ...estimate('cost_per_unit', ({ costPerUnit }: BuildResult) => costPerUnit, 'money'),
  ...[50, 80, 95].map(
    (p) =>
      [
        `last_unit_p${p}`,
        ({ lastUnit }: BuildResult) => lastUnit.find((each) => each.p === p / 100)?.date,
        'day',
      ] as const,
  ),
  ...proportion('by_date', ({ byDate }: BuildResult) => byDate),
];

/** One row a step, the build as it is first. */
export function stepsData({ steps }: ReachResults): FileTable {
  return fileTable(
    steps.map((step, number) => ({ ...step, number })),
    [
      ['step', 'number'],
      ['change', ({ made }) => made?.name],
      ['times', ({ made }) => made?.times, 'count'],
      ['price', 'price', 'money'],
      ['order_by', ({ made }) => made?.orderBy, 'day'],
      ['from', ({ made }) => made?.from, 'day'],
      ...BUILD,
      ...estimate('gain_per_day', ({ gain }: StepResult) => gain),
      ['seen', (step) => stepVerdict(step)],
      ['stops_at_per_day', ({ stopped }) => stopped.askedPerDay],
      ['stops_kind', ({ stopped }) => stopped.culprit?.thing.kind],
      ['stops_name', ({ stopped }) => stopped.culprit?.thing.name],
      ['tried', ({ stopped }) => stopped.culprit?.what],
      ...estimate('tried_gain', ({ stopped }: StepResult) => stopped.culprit?.gain),
    ],
  );
}

/** One row a set: the most for each sum of money. */
export function frontierData({ frontier }: ReachResults): FileTable {
  return fileTable(frontier, [
    ['set', ({ made }) => setText(made).replace(/^nothing$/, '')],
    ['changes', ({ made }) => timesIn(made), 'count'],
    ['chosen', ({ isChosen }) => (isChosen ? 'yes' : 'no')],
    ...BUILD,
  ]);
}

/** One row a change that could be made. */
export function changesData(results: ReachResults): FileTable {
  return fileTable<PossibleResult>(results.possible, [
    ['change', 'name'],
    ['what', 'what'],
    ['made', ({ name }) => timesMade(name, results), 'count'],
    ['price', 'price', 'money'],
    ['price_a_day', 'day', 'money'],
    ['ready_after', 'readyAfter'],
    ['at_most', 'atMost', 'count'],
    ['excludes', ({ excludes }) => excludes.join(' + ')],
    ['requires', ({ requires }) => requires.join(' + ')],
  ]);
}

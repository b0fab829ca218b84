import { rateText } from '../../study/planners-unit.js';
import type { BuildResult, PossibleResult, ReachResults, StepResult } from '../../study/reach/results.js';
import { setText } from '../../study/reach/sentence.js';
import { CHARTS } from '../charts/of-study.js';
import { stepVerdict, timesIn, timesMade } from '../first/reach/told.js';
import { reachPage } from '../page/studies/reach.js';
import { lossesData, trialsData } from './constraint.js';
import { estimate, type FileColumn, type FileTable, fileTable, proportion } from './folder/csv.js';
import { type Files, studyFiles } from './folder/study-files.js';
import { planFile, wayFile } from './plan.js';

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

/** The report of a search for the cheapest changes, and the plan that was found, to be run and kept. */
export const reachFiles: typeof report = async (results, notice): Promise<Files> =>
  new Map([...(await report(results, notice)), ...planFiles(results)]);

/** The scenario with the changes of the plan made, and the way step by step; none without a change. */
export function planFiles(results: ReachResults): Map<string, string> {
  const { scenario, steps, phases, goal, rateUnit } = results,
    way = steps.flatMap(({ made }) =>
      made === null ? [] : [[{ name: made.name, times: made.times, from: made.from ?? undefined }]],
    );
  if (way.length === 0) return new Map();
  const rate = phases?.map(({ from, perDay, perWeek }) => ({
      from,
      ...(perWeek === undefined ? { 'per day': perDay } : { 'per week': perWeek }),
    })),
    head = (what: string, command: string): string =>
      `# ${what}, as rateproof reach found it. Put it beside ${scenario.file}, then: rateproof ${command}\n`,
    other =
      goal.kind === 'date' || rate === undefined
        ? ''
        : `# It was found for ${rateText(goal.perDay, rateUnit)}: set programme.rate of ` +
          `${scenario.file} to\n` +
          `# ${JSON.stringify(rate)}\n# before you run it; steps-reached.yaml does so by itself.\n`;
  return new Map([
    [
      'plan-reached.yaml',
      head('The plan', 'simulate plan-reached.yaml') + other + planFile(scenario.file, way.flat()),
    ],
    [
      'steps-reached.yaml',
      head('The way to the plan, step by step', `compare ${scenario.file} steps-reached.yaml`) +
        wayFile(way, rate === undefined ? {} : { 'programme.rate': rate }),
    ],
  ]);
}

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

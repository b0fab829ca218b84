import { count, exact, intervalName, mean, number, short } from '../../study/format.js';
import { each, unitsEach } from '../../study/planners-unit.js';
import type { FrontierResult, ReachResults, StepResult } from '../../study/reach/results.js';
import { isPriced } from '../../study/reach/sentence.js';
import { reachFirst } from '../first/reach/reach.js';
import {
  inPlanners,
  outBy,
  setOrAsIs,
  stepName,
  stepVerdict,
  timesIn,
  triedOnWay,
} from '../first/reach/told.js';
import { searchText } from '../page/studies/reach-search.js';
import { stopsThen } from '../page/studies/reach-steps.js';
import { constraintLines } from './constraint.js';
import { firstPieces } from './first.js';
import { joined } from './lines.js';
import { type CellColumn, tableOf } from './table.js';

/** The answer, then the way, the most for each sum and how it was searched, of at most `width` columns. */
export function reachTable(results: ReachResults, width?: number): string {
  const { answer, steps, frontier, constraint, replications, seed, level, eachLevel, rateUnit } = results,
    rows = steps.map((step, i) => ({ ...step, i }));
  return joined(
    [
      ...firstPieces(reachFirst(results), answer.sentence),
      '',
      tableOf(rows, boughtColumns(results)),
      '',
      tableOf(rows, effectColumns(results)),
      `ships: ${unitsEach(rateUnit)}, in brackets ${plain(level)}; gain: over the step before, in brackets ` +
        `${plain(eachLevel)}, all to hold together; ${count(replications, 'fresh build')} of each, ` +
        `seed ${seed}`,
      ...(results.ordered === null ? ['order by: to have it from the first day on'] : []),
      ...(frontier.length < 2 ? [] : ['', tableOf(frontier, mostColumns(results))]),
      '',
      searchText(results),
      ...constraintLines(constraint, triedOnWay(results)),
    ],
    width,
  );
}

const plain = (level: number): string => `the ${intervalName(level).replace('CI', 'interval')}`;
const amount = (value: number | null): string => (value === null ? 'not given' : exact(value));

/** A step with its number. */
type Row = StepResult & { readonly i: number };

const NUMBER: CellColumn<Row> = { head: '', align: 'right', cell: ({ i }) => exact(i) };

/** What is bought, by when, and what a unit costs and when the last is out then. */
function boughtColumns(results: ReachResults): CellColumn<Row>[] {
  const { currency, ordered, steps } = results;
  const prices: CellColumn<Row>[] = [
      { head: 'price', align: 'right', cell: ({ made, price }) => (made === null ? '' : amount(price)) },
      { head: `${currency} so far`.trim(), align: 'right', cell: ({ money }) => amount(money) },
    ],
    unit: CellColumn<Row>[] = [
      {
        head: 'a unit costs',
        align: 'right',
        cell: ({ costPerUnit }) => (costPerUnit === null ? '' : mean(costPerUnit)),
      },
    ],
    out: CellColumn<Row>[] = [
      { head: 'last unit, half', cell: (step) => outBy(step, 0.5) ?? '' },
      { head: 'four of five', cell: (step) => outBy(step, 0.8) ?? '' },
    ];
  return [
    NUMBER,
    { head: 'step', cell: stepName },
    ...(isPriced(results) ? prices : []),
    {
      head: ordered === null ? 'order by' : 'there from',
      cell: ({ made }) =>
        made === null ? '' : ordered === null ? (made.orderBy ?? 'at once') : (made.from ?? 'the first day'),
    },
    ...(steps.some(({ costPerUnit }) => costPerUnit !== null) ? unit : []),
    ...(steps.some(({ lastUnit }) => lastUnit.length > 0) ? out : []),
  ];
}

/** What it ships then, and what stops it. */
function effectColumns(results: ReachResults): CellColumn<Row>[] {
  const { rateUnit, goal } = results,
    a = each(rateUnit);
  const inTime: CellColumn<Row>[] = [
    {
      head: 'in time',
      cell: ({ byDate }) => (byDate === null ? '' : `${exact(byDate.count)} of ${exact(byDate.n)}`),
    },
  ];
  return [
    NUMBER,
    { head: `ships ${a}`, cell: ({ throughput }) => short(throughput, rateUnit.workingDays) },
    {
      head: `gain ${a}`,
      cell: (step) =>
        step.gain === null
          ? ''
          : short(inPlanners(step.gain, results)) +
            (stepVerdict(step) === 'brings more' ? '' : `, ${stepVerdict(step) ?? ''}`),
    },
    ...(goal.kind === 'date' ? inTime : []),
    { head: 'what stops it then', cell: (step) => stopsThen(step, results) },
  ];
}

function mostColumns(results: ReachResults): CellColumn<FrontierResult>[] {
  const { currency, rateUnit, goal } = results;
  const out: CellColumn<FrontierResult>[] = [
    { head: 'last unit, four of five', cell: (set) => outBy(set, 0.8) ?? '' },
  ];
  return [
    isPriced(results)
      ? { head: `${currency} once`.trim(), align: 'right', cell: ({ money }) => amount(money) }
      : {
          head: 'changes',
          align: 'right',
          cell: ({ made }) => number(timesIn(made)),
        },
    { head: `the most ${each(rateUnit)}`, cell: ({ throughput }) => short(throughput, rateUnit.workingDays) },
    ...(goal.kind === 'date' ? out : []),
    { head: 'set', cell: ({ made, isChosen }) => `${setOrAsIs(made)}${isChosen ? ' (the answer)' : ''}` },
  ];
}

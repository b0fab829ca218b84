import { calledThing } from '../../../study/constraint/sentence.js';
import { asEstimate, exact, intervalName } from '../../../study/format.js';
import { each, rateText, unitsEach } from '../../../study/planners-unit.js';
import type { BuildResult, ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced } from '../../../study/reach/sentence.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { inPlanners, outBy, stepName, stepVerdict } from '../../first/reach/told.js';
import { type Cell, day, difference, estimated, money, percent, valued } from '../../sheets/cells.js';

/** An amount of money; null: it is not given. */
export const amount = (value: number | null): Cell =>
  value === null ? 'not given' : valued(exact(value), value, 'money');

export const costCell = ({ costPerUnit }: BuildResult): Cell =>
  costPerUnit === null ? '' : money(costPerUnit);

/** The way, a row a step: what is bought, for how much, by when, and what comes of it in money and days. */
export function stepsTable(results: ReachResults): PageTable {
  const { steps, currency, ordered } = results;
  const prices: Column<StepResult>[] = [
      [`Price, ${currency}`, ({ made, price }) => (made === null ? '' : amount(price))],
      [`So far, ${currency}`, (step) => amount(step.money)],
    ],
    days: Column<StepResult>[] = [[`A day, ${currency}`, (step) => amount(step.day)]],
    unitCost: Column<StepResult>[] = [['A unit costs', costCell]],
    out: Column<StepResult>[] = [
      ['Last unit, half of the builds', (step) => day(outBy(step, 0.5))],
      ['Last unit, four of five', (step) => day(outBy(step, 0.8))],
    ],
    order: Column<StepResult> = [
      'Order by',
      ({ made }) => (made === null ? '' : made.orderBy === null ? 'at once' : day(made.orderBy)),
    ],
    from: Column<StepResult> = [
      'There from',
      ({ made }) => (made === null ? '' : made.from === null ? 'the first day' : day(made.from)),
    ];
  return {
    id: 'steps',
    title: 'Steps',
    note:
      'In the order in which each brings most. ' +
      (ordered === null ? 'Order by: to have it from the first day on. ' : '') +
      'What is paid once is not in the cost of a unit, what is paid a day is. A unit costs: in brackets ' +
      `${intervalName(results.level)}.`,
    ...columns(numbered(steps), [
      STEP,
      ['What is bought', stepName],
      ...(isPriced(results) ? prices : []),
      ...(steps.some((step) => step.day !== 0) ? days : []),
      ordered === null ? order : from,
      ...(steps.some(({ costPerUnit }) => costPerUnit !== null) ? unitCost : []),
      ...(steps.some(({ lastUnit }) => lastUnit.length > 0) ? out : []),
    ]),
  };
}

/** What each step brings, and what stops the build then. */
export function effectsTable(results: ReachResults): PageTable {
  const { steps, eachLevel, level, rateUnit, goal } = results,
    a = each(rateUnit);
  const inTime: Column<StepResult>[] = [
    ['Out in time, %', ({ byDate }) => (byDate === null ? '' : percent(asEstimate(byDate)))],
  ];
  return {
    id: 'effects',
    title: 'What each step brings',
    note:
      `Ships: ${unitsEach(rateUnit)}, in brackets ${intervalName(level)}. Gain: over the step before, in ` +
      `the same builds, in brackets ${intervalName(eachLevel)}, so that all gains hold together. ` +
      'What stops it: more of it was tried, and surely brought units; where a rate stands behind it, at ' +
      'that rate.',
    ...columns(numbered(steps), [
      STEP,
      ['Change', stepName],
      [`Ships ${a}`, ({ throughput }) => estimated(throughput, rateUnit.workingDays)],
      [`Gain ${a}`, ({ gain }) => (gain === null ? '' : difference(inPlanners(gain, results)))],
      ['Seen', (step) => stepVerdict(step) ?? ''],
      ['What stops it then', (step) => stopsThen(step, results)],
      ...(goal.kind === 'date' ? inTime : []),
    ]),
  };
}

type Numbered = StepResult & { readonly i: number };
const numbered = (steps: readonly StepResult[]): Numbered[] => steps.map((step, i) => ({ ...step, i }));
const STEP: Column<Numbered> = ['Step', 'i'];

/** `the station colour booth`; of the last step where it was tried at more. */
export function stopsThen(step: StepResult, { goal, rateUnit }: ReachResults): string {
  const { culprit, outcome, askedPerDay } = step.stopped,
    isMore = goal.kind === 'rate' && askedPerDay !== null && askedPerDay > goal.perDay,
    at = isMore ? `, at ${rateText(askedPerDay, rateUnit)}` : '';
  if (culprit !== null) return calledThing(culprit.thing) + at;
  return UNKNOWN[outcome] + at;
}

const UNKNOWN: Readonly<Record<StepResult['stopped']['outcome'], string>> = {
  proven: 'not known',
  'none helps': 'no single thing that was tried',
  'rate asked': 'what arrives',
  'not settled': 'not settled',
};

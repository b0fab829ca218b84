import { asEstimate, exact, intervalName } from '../../../study/format.js';
import { each, unitsEach } from '../../../study/planners-unit.js';
import type { BuildResult, ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced } from '../../../study/reach/sentence.js';
import { type Column, columns, type PageTable } from '../../columns.js';
import { onEveryShift } from '../../constraint.js';
import { inPlanners, outBy, stepName, stepVerdict, whatIs } from '../../reach.js';
import { type Cell, day, difference, estimated, money, percent, valued } from '../../sheets/cells.js';

/** An amount of money; null: it is not given. */
export const amount = (value: number | null): Cell =>
  value === null ? 'not given' : valued(exact(value), value, 'money');

export const costCell = ({ costPerUnit }: BuildResult): Cell =>
  costPerUnit === null ? '' : money(costPerUnit);

/** The way, a row a step: what is bought, what it brings, what stops the build then. */
export function stepsTable(results: ReachResults): PageTable {
  const { steps, currency, eachLevel, level, rateUnit, goal, ordered } = results,
    a = each(rateUnit),
    hasDay = steps.some((step) => step.day !== 0),
    hasUnitCost = steps.some(({ costPerUnit }) => costPerUnit !== null),
    hasDates = steps.some(({ lastUnit }) => lastUnit.length > 0);
  const prices: Column<StepResult>[] = [
    [`Price, ${currency}`, ({ made, price }) => (made === null ? '' : amount(price))],
    [`So far, ${currency}`, (step) => amount(step.money)],
  ];
  const days: Column<StepResult>[] = [[`A day, ${currency}`, (step) => amount(step.day)]];
  const out: Column<StepResult>[] = [
    ['Last unit, half of the builds', (step) => day(outBy(step, 0.5))],
    ['Last unit, four of five', (step) => day(outBy(step, 0.8))],
  ];
  const unitCost: Column<StepResult>[] = [['A unit costs', costCell]],
    inTime: Column<StepResult>[] = [
      ['Out in time, %', ({ byDate }) => (byDate === null ? '' : percent(asEstimate(byDate)))],
    ];
  return {
    id: 'steps',
    title: 'Steps',
    note:
      `Ships: ${unitsEach(rateUnit)}, in brackets ${intervalName(level)}. Gain: over the step before, in the ` +
      `same builds, in brackets ${intervalName(eachLevel)}, so that all gains hold together. ` +
      'What stops it: more of it was tried, and surely brought units' +
      (results.outcome === 'reached' && goal.kind === 'rate'
        ? '; of the last step at the rate that is named.'
        : '.') +
      (ordered === null ? ' Order by: to have it from the first day on.' : '') +
      ' What is paid once is not in the cost of a unit, what is paid a day is.',
    ...columns(
      steps.map((step, i) => ({ ...step, i })),
      [
        ['Step', ({ i }) => (i === 0 ? 'as it is' : exact(i))],
        ['What is bought', (step) => (step.made === null ? '' : stepName(step))],
        ['What it is', ({ made }) => (made === null ? '' : whatIs(made.name, results.possible))],
        ...(isPriced(results) ? prices : []),
        ...(hasDay ? days : []),
        ordered === null
          ? [
              'Order by',
              ({ made }) => (made === null ? '' : made.orderBy === null ? 'at once' : day(made.orderBy)),
            ]
          : [
              'There from',
              ({ made }) => (made === null ? '' : made.from === null ? 'the first day' : day(made.from)),
            ],
        [`Ships ${a}`, ({ throughput }) => estimated(throughput, rateUnit.workingDays)],
        [`Gain ${a}`, ({ gain }) => (gain === null ? '' : difference(inPlanners(gain, results)))],
        ['Seen', (step) => stepVerdict(step) ?? ''],
        ['What stops it then', (step) => stopsThen(step, results)],
        ...(hasUnitCost ? unitCost : []),
        ...(hasDates ? out : []),
        ...(goal.kind === 'date' ? inTime : []),
      ],
    ),
  };
}

/** `station colour booth: one place more at colour booth`; of the last step where it was tried at more. */
export function stopsThen(step: StepResult, { goal, rateUnit }: ReachResults): string {
  const { culprit, outcome, askedPerDay } = step.stopped,
    isMore = goal.kind === 'rate' && askedPerDay !== null && askedPerDay > goal.perDay,
    at = isMore
      ? `at ${exact(Number((askedPerDay * rateUnit.workingDays).toFixed(6)))} ${each(rateUnit)}: `
      : '';
  if (culprit !== null) return at + onEveryShift(culprit.what);
  return at + UNKNOWN[outcome];
}

const UNKNOWN: Readonly<Record<StepResult['stopped']['outcome'], string>> = {
  proven: 'not known',
  'none helps': 'no single thing that was tried',
  'rate asked': 'what arrives',
  'not settled': 'not settled',
};

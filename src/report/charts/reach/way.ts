import { count, exact } from '../../../study/format.js';
import { each } from '../../../study/planners-unit.js';
import type { ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced, moneyText } from '../../../study/reach/sentence.js';
import {
  askedShort,
  forMoney,
  inPlanners,
  lastOf,
  nowOf,
  outBy,
  stepVerdict,
} from '../../first/reach/told.js';
import { type Chart, chart, intervalNote, intervalWords } from '../chart.js';
import { figures } from '../figures.js';
import { acrossSteps } from './across.js';
import { keyBelow } from './key-below.js';
import { levelLines, spots } from './marks.js';
import { stairs } from './stairs.js';
import {
  DRAWN_SHARE,
  lastUnitUpright,
  plotHeight,
  shippedUpright,
  type Upright,
  uprightAxis,
} from './upright.js';

/** The way in what is asked: a rate that rises by step, or a last day that comes sooner. */
export const wayPicture = (results: ReachResults): Chart | null =>
  results.goal.kind === 'rate' ? shippedByStep(results) : lastUnitByStep(results);

/** When the last unit is out after each step, where a rate is asked. */
export const lastUnitBeside = (results: ReachResults): Chart | null =>
  results.goal.kind === 'rate' ? lastUnitByStep(results) : null;

/** What is shipped after each step, where a day is asked. */
export const shippedBeside = (results: ReachResults): Chart | null =>
  results.goal.kind === 'date' ? shippedByStep(results) : null;

function shippedByStep(results: ReachResults): Chart | null {
  const { steps, goal, outcome, rateUnit } = results,
    [now, last] = [nowOf(results), lastOf(results)].map(({ throughput }) => inPlanners(throughput, results)),
    asked = askedShort(results);
  if (steps.length < 2 || now === undefined || last === undefined) return null;
  const write = figures([now, last]),
    end =
      goal.kind === 'date'
        ? ''
        : {
            reached: `: ${asked} holds`,
            'not reached': `, short of ${asked}`,
            'not settled': `: ${asked} is not settled`,
            'holds already': '',
          }[outcome];
  return wayChart(results, shippedUpright(results, steps), {
    finding: `${stepsFor(results)}: from ${write.mean(now)} to ${write.mean(last)} ${each(rateUnit)}${end}`,
    what: `Shipped after each step, with the ${intervalNote(results)}`,
    more:
      (goal.kind === 'rate'
        ? ' Dashed: asked; grey: within 2 % of it, where a build counts as shipping it.'
        : '') + ' The scale does not begin at 0.',
  });
}

function lastUnitByStep(results: ReachResults): Chart | null {
  const { steps, plannedEnd, goal, level } = results,
    upright = lastUnitUpright(results),
    [now, last] = [nowOf(results), lastOf(results)].map((build) => outBy(build, DRAWN_SHARE));
  if (steps.length < 2 || upright === null || now == null || last == null) return null;
  const wanted =
    goal.kind === 'date'
      ? `; asked is ${goal.date}`
      : plannedEnd === null
        ? ''
        : `; the plan says ${plannedEnd}`;
  return wayChart(results, upright, {
    finding: `${stepsFor(results)}: the last unit is out by ${last}, not ${now}${wanted}`,
    what: `The day by which the last unit is out in four of five builds, with its ${intervalWords(level)}`,
    more: wanted === '' ? '' : ' Dashed: the day asked or planned.',
  });
}

/** `3 steps for 465,000 EUR`. */
const stepsFor = (results: ReachResults): string =>
  count(results.steps.length - 1, 'step') + forMoney(lastOf(results), results);

function wayChart(
  results: ReachResults,
  upright: Upright,
  { finding, what, more }: { readonly finding: string; readonly what: string; readonly more: string },
): Chart {
  const { steps, level } = results,
    across = acrossSteps(steps, results),
    key = keyBelow(
      steps.slice(1).map((step, i) => ({ number: exact(i + 1), text: entryText(step, upright, results) })),
    ),
    { points, datasets } = stairs(upright, steps, across.at, level);
  return chart({
    finding,
    how: `${what}, ${across.by}.${more}`,
    inside: steps
      .slice(1)
      .map((step, i) => `${i + 1}: ${entryText(step, upright, results)}.`)
      .join(' '),
    bodyHeight: plotHeight() + key.height,
    type: 'line',
    data: {
      labels: steps.map((step, i) => (i === 0 ? 'as it is' : `${i}: ${boughtText(step, results)}`)),
      datasets,
    },
    scales: { x: across.axis, y: uprightAxis(upright, steps), key: key.axis },
    plugins: [
      levelLines(upright.levels),
      spots(
        points.map((point, i) => ({
          ...point,
          text: i === 0 ? 'as it is' : exact(i),
          isChosen: i === steps.length - 1,
        })),
      ),
      key.plugin,
    ],
  });
}

/** `2 × a painter more, 36,000 EUR`. */
function boughtText({ made, price }: StepResult, results: ReachResults): string {
  const name = made === null ? '' : `${made.times === 1 ? '' : `${made.times} × `}${made.name}`;
  if (!isPriced(results)) return name;
  return `${name}, ${price === null ? 'price not given' : moneyText(price, results.currency)}`;
}

function entryText(step: StepResult, { text }: Upright, results: ReachResults): string {
  const verdict = stepVerdict(step);
  return (
    `${boughtText(step, results)}: ${text(step)}` +
    (verdict === 'no gain seen'
      ? ', no gain seen at this step'
      : verdict === 'ships less'
        ? ', which ships less'
        : '')
  );
}

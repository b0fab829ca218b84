import { exact } from '../../../study/format.js';
import type { FrontierResult, ReachResults, StepResult } from '../../../study/reach/results.js';
import { isPriced } from '../../../study/reach/sentence.js';
import { sumOf } from '../../first/reach/told.js';
import { isNarrow } from '../../style.js';
import { type Axis, TICKS, valueAxis } from '../axes.js';

/** What stands on the level axis: a value a build, and how it is spoken of. */
export interface Across {
  readonly at: readonly number[];
  readonly axis: Axis;
  /** `by the money spent once`. */
  readonly by: string;
}

/** Of steps the money spent so far; by step where that says nothing. */
export function acrossSteps(steps: readonly StepResult[], results: ReachResults): Across {
  const money = steps.flatMap((step) => step.money ?? []);
  return isPriced(results) && money.length === steps.length && new Set(money).size > 1
    ? { at: money, axis: moneyAxis(results), by: 'by the money spent once' }
    : { at: steps.map((_, i) => i), axis: countAxis('step', steps.length - 1), by: 'step by step' };
}

/** Of sets their money, or how many changes they are; null where that of one is not known. */
export function acrossSets(sets: readonly FrontierResult[], results: ReachResults): Across | null {
  const at = sets.flatMap((set) => sumOf(set, results) ?? []);
  if (at.length < sets.length) return null;
  return isPriced(results)
    ? { at, axis: moneyAxis(results), by: 'for each sum of money, once' }
    : { at, axis: countAxis('changes made', Math.max(...at)), by: 'for each number of changes' };
}

/** Both ends are drawn off the edges, for what stands there to have room. */
const EDGE = 0.03;

const moneyAxis = ({ currency }: ReachResults): Axis =>
  valueAxis(`money, once, ${currency}`, {
    grace: `${100 * EDGE}%`,
    ticks: {
      ...TICKS,
      maxTicksLimit: isNarrow() ? 4 : 9,
      callback: (value: number | string) => exact(Number(value)),
    },
  });

const countAxis = (title: string, last: number): Axis =>
  valueAxis(title, {
    min: 0,
    max: last + 2 * EDGE * Math.max(1, last),
    ticks: { ...TICKS, precision: 0, stepSize: 1, includeBounds: false },
  });

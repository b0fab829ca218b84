import type { Distribution } from '../../random/distribution.js';
import { type FitOptions, fitDistribution } from './fit.js';
import type { FitOfTimes } from './fitted.js';
import { sampleOf } from './kinds/sample.js';
import { type OptionEffect, optionEffects, warningsOfOptions } from './warnings/options.js';
import { warningsOfOrder } from './warnings/order.js';
import { warningOfOutliers } from './warnings/outliers.js';
import { twoPopulations, warningOfPopulations } from './warnings/populations.js';
import { finestUnit, rounding, warningOfRounding } from './warnings/rounding.js';
import type { Warning } from './warnings/warning.js';

export interface TimesOptions extends FitOptions {
  /** When each was taken, in any unit; without it the times are in the order of their dates. */
  readonly at?: readonly number[];
  /** Of each option its value for each time; an empty text where it is not known. */
  readonly by?: Readonly<Record<string, readonly string[]>>;
}

/** What a sample of times says, what a scenario should have for it, and what to know about it. */
export interface FittedTimes extends FitOfTimes {
  /** That of `chosen`, in minutes. */
  readonly distribution: Distribution;
  readonly warnings: readonly Warning[];
  readonly options: readonly OptionEffect[];
}

/** Rounding to less than this share of the standard deviation is not seen by the tests. */
const UNSEEN = 0.05;

/**
 * Fits times of one step. The same times, options and seed give the same result.
 * @param values minutes, one or more, of at least 0; in the order of their dates where `at` does not say
 * @throws RangeError where there is none, where one is negative or not finite, or where a list of `at` or
 *   `by` is not as long
 */
export function fitTimes(values: readonly number[], options: TimesOptions = {}): FittedTimes {
  const { at = values.map((_, i) => i), by = {}, seed = 'fit' } = options;
  mustBeAsLong('at', at, values);
  for (const [option, list] of Object.entries(by)) mustBeAsLong(`by ${option}`, list, values);
  const sample = sampleOf(values),
    rounded = rounding(values)?.unit ?? finestUnit(values),
    unit = rounded < UNSEEN * Math.sqrt(sample.variance) ? 0 : rounded,
    fit = fitDistribution(values, { ...options, unit }),
    effects = optionEffects(values, by),
    order = values.map((_, i) => i).sort((a, b) => at[a] - at[b]),
    [best] = fit.candidates,
    populations =
      fit.candidates.length === 0
        ? undefined
        : twoPopulations(sample, best.distribution, { stream: `${seed}/populations`, unit });
  return {
    ...fit,
    options: effects,
    warnings: [
      ...warningsOfOrder(
        order.map((i) => at[i]),
        order.map((i) => values[i]),
      ),
      ...warningOfRounding(values),
      ...warningOfPopulations(populations),
      ...warningOfOutliers(values),
      ...warningsOfOptions(effects),
    ],
  };
}

function mustBeAsLong(name: string, list: readonly unknown[], { length }: readonly number[]): void {
  if (list.length !== length)
    throw new RangeError(`${name}: expected one for each of the ${length} times, got ${list.length}`);
}

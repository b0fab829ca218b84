import type { Distribution } from '../../random/distribution.js';
import { type BeyondScenario, beyondScenario, type FactorsNow } from './beyond.js';
import { type FitOptions, fitDistribution } from './fit.js';
import type { FitOfTimes } from './fitted.js';
import { type Sample, sampleOf } from './kinds/sample.js';
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
  /** Options whose effect is taken out of the times before they are fitted; none unless told. */
  readonly options?: readonly string[];
  /** Factors that the scenario has; none unless told. */
  readonly factorsNow?: FactorsNow;
}

/**
 * What a sample of times says, what a scenario should have for it, and what to know about it. `n` counts the
 * times that were fitted: those of `taken`.
 */
export interface FittedTimes extends FitOfTimes {
  /** That of `chosen`, in minutes. */
  readonly distribution: Distribution;
  readonly warnings: readonly Warning[];
  readonly options: readonly OptionEffect[];
  /** What options do to the times, and the times without it. */
  readonly taken: BeyondScenario;
  readonly sample: Sample;
  /** To which the times were rounded as far as it is felt, minutes; 0 where not. */
  readonly unit: number;
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
  const {
    at = values.map((_, i) => i),
    by = {},
    seed = 'fit',
    options: written = [],
    factorsNow = {},
  } = options;
  mustBeAsLong('at', at, values);
  for (const [option, list] of Object.entries(by)) mustBeAsLong(`by ${option}`, list, values);
  const effects = optionEffects(values, by),
    taken = beyondScenario(values, by, written, factorsNow),
    { times, rows } = taken,
    sample = sampleOf(times),
    rounded = rounding(values)?.unit ?? finestUnit(values),
    unit = rounded < UNSEEN * Math.sqrt(sample.variance) ? 0 : rounded,
    fit = fitDistribution(times, { ...options, unit }),
    order = rows.map((_, k) => k).sort((a, b) => at[rows[a]] - at[rows[b]]),
    [best] = fit.candidates,
    populations =
      fit.candidates.length === 0
        ? undefined
        : twoPopulations(sample, best.distribution, { stream: `${seed}/populations`, unit });
  return {
    ...fit,
    options: effects,
    ...{ taken, sample, unit },
    warnings: [
      ...warningsOfOrder(
        order.map((k) => at[rows[k]]),
        order.map((k) => times[k]),
      ),
      ...warningOfRounding(values),
      ...warningOfPopulations(populations),
      ...warningOfOutliers(
        times,
        rows.map((row) => values[row]),
      ),
      ...warningsOfOptions(effects),
    ],
  };
}

function mustBeAsLong(name: string, list: readonly unknown[], { length }: readonly number[]): void {
  if (list.length !== length)
    throw new RangeError(`${name}: expected one for each of the ${length} times, got ${list.length}`);
}

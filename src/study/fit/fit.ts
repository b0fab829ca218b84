import type { Distribution } from '../../random/distribution.js';
import { exp } from '../../random/elementary.js';
import { choose, FEWEST_OBSERVED } from './choice.js';
import type { FitOfTimes, Fitted } from './fitted.js';
import { testsOfFit } from './goodness/test-of-fit.js';
import { FAMILIES } from './kinds/families.js';
import type { Family } from './kinds/family.js';
import { hasNoSpread, type Sample, sampleOf } from './kinds/sample.js';
import { threePoints } from './three-points.js';
import { canBeWritten } from './written.js';

export interface FitOptions {
  /** Samples simulated for each p-value, at most; 400 unless told. */
  readonly simulated?: number;
  /** Of the random numbers; `fit` unless told. */
  readonly seed?: string;
}

/** One family fitted to a sample; undefined where it has no greatest likelihood. */
export function fitFamily(family: Family, sample: Sample): Fitted | undefined {
  const distribution = family.fit(sample);
  if (distribution === undefined) return undefined;
  const { logDensity, cdf, quantile } = family.curve(distribution),
    logLikelihood = sample.values.reduce((sum, x) => sum + logDensity(x), 0);
  return {
    distribution,
    name: family.name,
    parameters: family.parameters,
    logLikelihood,
    aic: 2 * family.parameters - 2 * logLikelihood,
    density: (x) => exp(logDensity(x)),
    cdf,
    quantile,
  };
}

/**
 * Times to a distribution.
 * @param values minutes, one or more, of at least 0, in any order
 * @throws RangeError where there is none, or one is negative or not finite
 */
export function fitDistribution(
  values: readonly number[],
  { simulated = 400, seed = 'fit', unit = 0 }: FitOptions & { readonly unit?: number } = {},
): FitOfTimes & { readonly distribution: Distribution } {
  check(values);
  const sample = sampleOf(values),
    candidates =
      hasNoSpread(sample) || sample.n < FEWEST_OBSERVED ? [] : fitAll(sample, simulated, seed, unit),
    chosen = choose(sample, candidates);
  return { n: sample.n, candidates, ...chosen, distribution: distributionOf(chosen.chosen, sample, values) };
}

function fitAll(sample: Sample, simulated: number, seed: string, unit: number): FitOfTimes['candidates'] {
  return FAMILIES.flatMap((family) => {
    const fitted = fitFamily(family, sample);
    return fitted === undefined || !canBeWritten(fitted.distribution)
      ? []
      : [
          {
            ...fitted,
            ...testsOfFit(family, fitted.distribution, sample, {
              simulated,
              stream: `${seed}/goodness/${family.name}`,
              unit,
            }),
          },
        ];
  }).sort((a, b) => a.aic - b.aic);
}

function distributionOf(
  chosen: FitOfTimes['chosen'],
  sample: Sample,
  values: readonly number[],
): Distribution {
  if (chosen === 'constant') return { kind: 'constant', value: sample.mean };
  if (chosen === 'three points') return threePoints(sample);
  if (chosen === 'observed values') return { kind: 'empirical', values: [...values] };
  return chosen.distribution;
}

function check(values: readonly number[]): void {
  if (values.length === 0) throw new RangeError('times: expected one or more, got none');
  values.forEach((value, i) => {
    if (!(value >= 0 && value < Infinity))
      throw new RangeError(`times[${i}]: expected finite minutes of at least 0, got ${value}`);
  });
}

import type { FitOfTimes, Fitted } from './fitted.js';
import { familyOf } from './kinds/families.js';
import { hasNoSpread, type Sample } from './kinds/sample.js';

/** Of fewer times no family can be told from another, and seldom is one rejected. */
export const FEWEST_FOR_FAMILY = 20;
/** So few times cover the range of what can come badly: three points smooth them. */
export const FEWEST_OBSERVED = 10;
/** A family is rejected where the p of its Anderson-Darling test is below. */
const LEAST_P = 0.05;
/**
 * By so much the AIC of a family with a longest time must be lower than that of the best without one. Its ends
 * follow the sample's: twice the log-likelihood gains 4 by two ends taken from the sample (2 n ln of the width
 * over the range, exponential gaps), where two other parameters gain 2; and it rules out what a floor will
 * see some day, a time longer than all before. The sum is our own choice.
 */
const BOUNDED_MUST_GAIN = 4;

type Candidate = FitOfTimes['candidates'][number];

/**
 * What a scenario should have for a sample: its only value where all are the same; three points of a handful;
 * the values themselves where there are fewer than 20, or where no family fits; else the family with the
 * lowest AIC among those that the Anderson-Darling test does not reject.
 * @param candidates by AIC, the best first
 */
export function choose(sample: Sample, candidates: readonly Candidate[]): Pick<FitOfTimes, 'chosen' | 'why'> {
  const { n } = sample;
  if (hasNoSpread(sample))
    return {
      chosen: 'constant',
      why: n === 1 ? 'One time says nothing of the spread.' : `All ${n} times are the same.`,
    };
  if (n < FEWEST_OBSERVED)
    return {
      chosen: 'three points',
      why: `${n} times are too few for their own range: three points with the same mean and spread.`,
    };
  if (n < FEWEST_FOR_FAMILY)
    return {
      chosen: 'observed values',
      why: `${n} times are too few to tell one distribution from another; ${FEWEST_FOR_FAMILY} are needed.`,
    };
  const fitting = candidates.filter(({ andersonDarling: { p } }) => p >= LEAST_P),
    open = fitting.find((each) => !isBounded(each)),
    bounded = fitting.find(isBounded),
    best =
      open !== undefined && (bounded === undefined || bounded.aic > open.aic - BOUNDED_MUST_GAIN)
        ? open
        : bounded;
  if (best === undefined)
    return {
      chosen: 'observed values',
      why:
        candidates.length === 0
          ? 'No distribution can be fitted to times of 0.'
          : `No distribution fits: the test rejects all ${candidates.length}.`,
    };
  return { chosen: best, why: reason(best, candidates) };
}

const isBounded = ({ distribution }: Fitted): boolean => familyOf(distribution)?.isBounded === true;

function reason(best: Candidate, candidates: readonly Candidate[]): string {
  const better = candidates.filter(({ aic }) => aic < best.aic),
    rejected = better.filter(({ andersonDarling: { p } }) => p < LEAST_P).map(({ name }) => name),
    passed = better.filter(({ andersonDarling: { p } }) => p >= LEAST_P).map(({ name }) => name),
    but = [
      ...(rejected.length > 0 ? [`the test rejects ${rejected.join(', ')}`] : []),
      ...(passed.length > 0 ? [`${passed.join(', ')} would rule out any longer time`] : []),
    ];
  return better.length === 0
    ? `Of those that fit, ${best.name} has the lowest AIC.`
    : `Of those that fit, ${best.name} has the lowest AIC: ${but.join('; ')}.`;
}

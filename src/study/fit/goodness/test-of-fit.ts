import type { Distribution } from '../../../random/distribution.js';
import type { GoodnessOfFit } from '../fitted.js';
import type { Family } from '../kinds/family.js';
import { type Sample, sampleOf } from '../kinds/sample.js';
import { Draws } from './draws.js';
import { SequentialP } from './sequential-p.js';
import { andersonDarling, kolmogorovSmirnov, sharesAt } from './statistics.js';

/**
 * Beyond this size the two statistics (the second times the root of n) follow nearly the same law whatever n
 * (Stephens 1974: its corrections for n are then below 1 %), so no larger samples are simulated; but of times
 * that were rounded, since rounding shows the more, the more times there are.
 */
const LARGEST = 200;
/** Of samples in which nothing could be fitted so many, as a multiple of those wanted, are passed over. */
const PATIENCE = 3;

export interface TestOptions {
  /** Samples simulated at most. */
  readonly simulated: number;
  /** Full name of the stream of random numbers. */
  readonly stream: string;
  /** Times were rounded to whole multiples of it; 0 where not. */
  readonly unit: number;
}

export interface TestsOfFit {
  readonly andersonDarling: GoodnessOfFit;
  readonly kolmogorovSmirnov: GoodnessOfFit;
}

/**
 * Whether a sample can have come from the family that was fitted to it. The parameters were estimated, so the
 * tables for known ones do not hold (M. A. Stephens, Journal of the American Statistical Association 69, 1974,
 * 730-737): samples are drawn from the fitted distribution, each is fitted again, and p is the share of them
 * that is as far from its own fit (parametric bootstrap: W. Stute et al., Metrika 40, 1993, 243-256; both from
 * memory).
 */
export function testsOfFit(
  family: Family,
  fitted: Distribution,
  sample: Sample,
  { simulated, stream, unit }: TestOptions,
): TestsOfFit {
  const own = distances(family, fitted, sample),
    n = unit > 0 ? sample.n : Math.min(sample.n, LARGEST),
    draws = new Draws(fitted, n, stream, unit),
    first = new SequentialP(simulated),
    second = new SequentialP(simulated);
  for (let k = 0; k < PATIENCE * simulated && !(first.isDone && second.isDone); k++) {
    const again = sampleOf(draws.next()),
      refitted = family.fit(again);
    if (refitted === undefined) continue;
    const far = distances(family, refitted, again);
    first.add(far.square >= own.square);
    second.add(Math.sqrt(again.n) * far.most >= Math.sqrt(sample.n) * own.most);
  }
  return {
    andersonDarling: { statistic: own.square, p: first.p, simulated: first.simulated },
    kolmogorovSmirnov: { statistic: own.most, p: second.p, simulated: second.simulated },
  };
}

/** How far a sample is from what was fitted to it. */
function distances(
  family: Family,
  fitted: Distribution,
  { n, values }: Sample,
): { square: number; most: number } {
  const shares = sharesAt(values, family.curve(fitted).cdf);
  return {
    square: andersonDarling(shares, family.isBounded ? 1 / (2 * n) : undefined),
    most: kolmogorovSmirnov(shares),
  };
}

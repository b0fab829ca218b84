import type { Distribution } from '../../../random/distribution.js';
import { curveOf, familyOf } from '../kinds/families.js';
import type { Sample } from '../kinds/sample.js';
import { bandOf } from './band.js';

/** Times as they were seen against those of a distribution, rank by rank, minutes. */
export interface QuantilePlot {
  /** The distribution in words. */
  readonly against: string;
  /** Whether the scenario gets it; else it is the nearest of those that do not stand. */
  readonly isChosen: boolean;
  readonly observed: readonly number[];
  readonly fitted: readonly number[];
  /** Between these all points stay with a chance of `level`; null where that is not known. */
  readonly low: readonly number[] | null;
  readonly high: readonly number[] | null;
  readonly level: number;
  /** How many of the points do not. */
  readonly outside: number | null;
}

export interface PlotOptions {
  readonly against: string;
  readonly isChosen: boolean;
  readonly stream: string;
  readonly unit: number;
  /** Whether a band can be told: the distribution was fitted by its likelihood. */
  readonly hasBand: boolean;
}

const LEVEL = 0.95;
/** Points at most, of which so many are the least and so many the greatest. */
const MOST = 60,
  AT_ENDS = 10;

/**
 * The quantile plot: the i-th of n times against the quantile of (i - 1/2) / n (A. Hazen 1914; M. B. Wilk &
 * R. Gnanadesikan, Biometrika 55, 1968, 1-17; both from memory). Undefined of a distribution without curve.
 */
export function quantilePlot(
  sample: Sample,
  distribution: Distribution,
  { against, isChosen, stream, unit, hasBand }: PlotOptions,
): QuantilePlot | undefined {
  const { n, values } = sample,
    family = familyOf(distribution),
    curve = curveOf(distribution),
    ranks = ranksShown(n);
  if (family === undefined || curve === undefined) return undefined;
  const band = hasBand
    ? bandOf(family, distribution, sample, { ranks, level: LEVEL, stream, unit })
    : undefined;
  return {
    against,
    isChosen,
    observed: ranks.map((rank) => values[rank]),
    fitted: ranks.map((rank) => curve.quantile((rank + 0.5) / n)),
    low: band?.low ?? null,
    high: band?.high ?? null,
    level: LEVEL,
    outside: band?.outside.length ?? null,
  };
}

/** All ranks, or of many those at both ends and some evenly between. */
function ranksShown(n: number): number[] {
  if (n <= MOST) return Array.from({ length: n }, (_, i) => i);
  const between = MOST - 2 * AT_ENDS,
    step = (n - 2 * AT_ENDS) / (between + 1);
  return [
    ...Array.from({ length: AT_ENDS }, (_, i) => i),
    ...Array.from({ length: between }, (_, i) => Math.round(AT_ENDS - 1 + (i + 1) * step)),
    ...Array.from({ length: AT_ENDS }, (_, i) => n - AT_ENDS + i),
  ];
}

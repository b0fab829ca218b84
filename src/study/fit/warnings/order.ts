import { number } from '../../format.js';
import { chiSquareAbove, studentBeyond } from '../../statistics/functions/normal.js';
import { mean } from '../../statistics/sums.js';
import { correlation, ranksOf } from './ranks.js';
import { WARNED_BELOW, type Warning } from './warning.js';

/** Of fewer times neither test says anything. */
const FEWEST = 10;

export interface Drift {
  /** Spearman's, of times and moments. */
  readonly correlation: number;
  readonly p: number;
  /** Mean of the last third over that of the first, less 1. */
  readonly change: number;
}

/**
 * Whether times rise or fall with the date: Spearman's rank correlation r, with t = r sqrt((n - 2) / (1 -
 * r^2)) as Student's with n - 2 degrees of freedom (M. G. Kendall & J. D. Gibbons, Rank Correlation Methods,
 * 1990, chapter 4; from memory).
 * @param at moments, rising
 * @param times in the same order
 */
export function drift(at: readonly number[], times: readonly number[]): Drift {
  const n = times.length,
    r = correlation(ranksOf(at), ranksOf(times)),
    third = Math.ceil(n / 3),
    left = 1 - r * r;
  return {
    correlation: r,
    p: left > 0 ? studentBeyond(r * Math.sqrt((n - 2) / left), n - 2) : 0,
    change: mean(times.slice(-third)) / mean(times.slice(0, third)) - 1,
  };
}

/**
 * Correlation of each time with the next: sum of (x_i - m)(x_(i+1) - m) over sum of (x_i - m)^2 (as certified
 * in NIST StRD), and whether it can be chance: Q = n (n + 2) r^2 / (n - 1) as chi-square with 1 degree of
 * freedom (G. M. Ljung & G. E. P. Box, Biometrika 65, 1978, 297-303; from memory).
 * @param times in the order of their dates
 */
export function nextCorrelation(times: readonly number[]): {
  readonly correlation: number;
  readonly p: number;
} {
  const n = times.length,
    middle = mean(times);
  let both = 0,
    squares = 0;
  for (let i = 0; i < n; i++) {
    const away = times[i] - middle;
    squares += away * away;
    if (i + 1 < n) both += away * (times[i + 1] - middle);
  }
  const r = squares > 0 ? both / squares : 0;
  return { correlation: r, p: chiSquareAbove((n * (n + 2) * r * r) / (n - 1), 1) };
}

/**
 * What the order of the times tells; times that drift are alike to their neighbours too, and that is not
 * told.
 */
export function warningsOfOrder(at: readonly number[], times: readonly number[]): Warning[] {
  if (times.length < FEWEST) return [];
  const drifting = drift(at, times);
  if (drifting.p < WARNED_BELOW) {
    const { correlation, p, change } = drifting,
      way = correlation > 0 ? 'longer' : 'shorter',
      size = `${number(100 * Math.abs(change))} % ${change > 0 ? 'longer' : 'shorter'}`;
    return [
      {
        kind: 'drift',
        correlation,
        p,
        change,
        told:
          `Times get ${way} with the date (p ${pText(p)}): the last third takes ${size} than the first. ` +
          `Fit the latest alone, or give the step a learning rate.`,
      },
    ];
  }
  const { correlation, p } = nextCorrelation(times);
  if (p >= WARNED_BELOW) return [];
  return [
    {
      kind: 'not independent',
      correlation,
      p,
      told:
        `Times that follow each other are ${correlation > 0 ? 'alike' : 'unlike'} (correlation ` +
        `${number(correlation)}, p ${pText(p)}): they are not independent, as a run takes them to be.`,
    },
  ];
}

/** Three digits; below a thousandth it is only said to be. */
export const pText = (p: number): string => (p < 0.001 ? 'under 0.001' : `= ${number(p)}`);

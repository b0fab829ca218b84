import { mean } from './sums.js';

/** Where MSER-5 cuts the start of a series. */
export interface WarmUp {
  /** Values cut from the start, a multiple of 5. */
  readonly cut: number;
  /** The least of the statistic lies in the second half: the series is too short for a cut to be trusted. */
  readonly isTooShort: boolean;
  /** The statistic by number of means cut, for the picture. */
  readonly statistic: readonly number[];
}

const BATCH = 5;

/**
 * Start-up cut MSER-5 (White 1997, Simulation 69(6), 323-334; White, Cobb & Spratt 2000): of means z_1 .. z_m
 * of 5 successive values, the cut d that makes sum_{j > d} (z_j - mean_d)^2 / (m - d)^2 least; a d beyond m /
 * 2 is not accepted, the series is then too short. Values beyond the last whole five are left out. Of equal
 * minima the first counts.
 * @param values of one series, usually the mean over replications, by equal parts of time
 * @throws RangeError below ten values
 */
export function mser5(values: readonly number[]): WarmUp {
  const m = Math.floor(values.length / BATCH);
  if (m < 2) throw new RangeError(`warm-up: expected at least ${2 * BATCH} values, got ${values.length}`);
  const means = Array.from({ length: m }, (_, i) => mean(values.slice(i * BATCH, (i + 1) * BATCH)));
  const statistic: number[] = [];
  // From the end, by Welford's recurrence: the squares about the mean of what is left.
  let middle = 0,
    squares = 0;
  for (const [i, value] of means.toReversed().entries()) {
    const n = i + 1,
      off = value - middle;
    middle += off / n;
    squares += off * (value - middle);
    // Of a single mean the statistic is 0 and says nothing.
    if (n > 1) statistic.unshift(squares / (n * n));
  }
  const best = statistic.indexOf(Math.min(...statistic));
  return { cut: best * BATCH, isTooShort: best > m / 2, statistic };
}

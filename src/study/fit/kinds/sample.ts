import { log } from '../../../random/elementary.js';

/** Times in rising order, with what several kinds ask of them. */
export interface Sample {
  readonly n: number;
  /** Rising. */
  readonly values: Float64Array;
  readonly least: number;
  readonly greatest: number;
  readonly mean: number;
  /** Of the natural logarithms; -Infinity where a time is 0. */
  readonly meanLog: number;
  /** Second central moment, by n. */
  readonly variance: number;
}

/** @param values one or more, finite and of at least 0, in any order; they are left as they are */
export function sampleOf(values: Iterable<number>): Sample {
  const sorted = Float64Array.from(values).sort(),
    n = sorted.length;
  let total = 0,
    logs = 0,
    squares = 0;
  for (let i = 0; i < n; i++) {
    total += sorted[i];
    logs += log(sorted[i]);
  }
  const mean = total / n;
  for (let i = 0; i < n; i++) squares += (sorted[i] - mean) * (sorted[i] - mean);
  return {
    n,
    values: sorted,
    least: sorted[0],
    greatest: sorted[n - 1],
    mean,
    meanLog: logs / n,
    variance: squares / n,
  };
}

/** Values that differ by less than this share of the greatest are the same, but for how they were written. */
const SAME = 1e-9;
export const hasNoSpread = ({ least, greatest }: Sample): boolean => greatest - least <= SAME * greatest;

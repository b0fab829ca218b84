import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { exp, log } from '../../../random/elementary.js';
import { number } from '../../format.js';
import { holm } from '../../statistics/difference.js';
import { chiSquareAbove } from '../../statistics/functions/normal.js';
import { mean } from '../../statistics/sums.js';
import { pText } from './order.js';
import { ranksOf, tieSum } from './ranks.js';
import type { Warning } from './warning.js';

/** An option is said to matter where its p, allowing for all options, is below. */
const FELT_BELOW = 0.05;
/** A value of an option that was seen less often is in no test. */
const FEWEST = 3;
const LEVEL = 0.95;

export interface OptionLevel {
  readonly value: string;
  readonly n: number;
  /** Minutes. */
  readonly mean: number;
  /** Its mean over that of the commonest value, with an interval; null where there is none. */
  readonly factor: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** Whether times differ by the value of an option, and by how much. */
export interface OptionEffect {
  readonly option: string;
  /** Kruskal and Wallis's H; NaN where fewer than two values were seen often enough. */
  readonly h: number;
  /** Of this option alone. */
  readonly p: number;
  /** Allowing for all options looked at (S. Holm, Scandinavian Journal of Statistics 6, 1979, 65-70). */
  readonly adjusted: number;
  readonly isFelt: boolean;
  /** The commonest first. */
  readonly levels: readonly OptionLevel[];
}

/**
 * H = 12 / (N (N + 1)) sum of R_j^2 / n_j - 3 (N + 1), over 1 - sum (t^3 - t) / (N^3 - N) of ties, as
 * chi-square with one degree of freedom less than there are groups (W. H. Kruskal & W. A. Wallis, Journal of
 * the American Statistical Association 47, 1952, 583-621).
 * @param groups two or more, none empty
 */
export function kruskalWallis(groups: readonly (readonly number[])[]): {
  readonly h: number;
  readonly p: number;
} {
  const all = groups.flat(),
    n = all.length,
    ranks = ranksOf(all);
  let sum = 0,
    from = 0;
  for (const group of groups) {
    let total = 0;
    for (let k = 0; k < group.length; k++) total += ranks[from + k];
    sum += (total * total) / group.length;
    from += group.length;
  }
  const ties = 1 - tieSum(all) / (n * n * n - n);
  if (!(ties > 0)) return { h: 0, p: 1 };
  const h = Math.max(0, ((12 * sum) / (n * (n + 1)) - 3 * (n + 1)) / ties);
  return { h, p: chiSquareAbove(h, groups.length - 1) };
}

/**
 * Effects of all options, in the order of their names.
 * @param by of each option its value for each time; an empty one is not known, and left out
 */
export function optionEffects(
  times: readonly number[],
  by: Readonly<Record<string, readonly string[]>>,
): OptionEffect[] {
  const tested = Object.entries(by).map(([option, values]) => {
    const groups = groupsOf(times, values),
      often = groups.filter(({ times: { length } }) => length >= FEWEST).map((group) => group.times),
      { h, p } = often.length < 2 ? { h: NaN, p: 1 } : kruskalWallis(often);
    return { option, h, p, levels: levelsOf(groups) };
  });
  const adjusted = holm(tested.map(({ h, p }) => (Number.isNaN(h) ? NaN : p)));
  return tested.map((each, k) => ({ ...each, adjusted: adjusted[k], isFelt: adjusted[k] < FELT_BELOW }));
}

interface Group {
  readonly value: string;
  readonly times: readonly number[];
}

/** The commonest first; of equally common ones by name. */
function groupsOf(times: readonly number[], values: readonly string[]): Group[] {
  const groups = new Map<string, number[]>();
  values.forEach((value, i) => {
    if (value === '') return;
    const group = groups.get(value);
    if (group === undefined) groups.set(value, [times[i]]);
    else group.push(times[i]);
  });
  return [...groups]
    .map(([value, own]) => ({ value, times: own }))
    .sort((a, b) => b.times.length - a.times.length || (a.value < b.value ? -1 : 1));
}

/**
 * The ratio of two means has an interval by its logarithm: the variance of ln of a mean is about s^2 / (n
 * mean^2), and Student's t has the degrees of freedom of B. L. Welch (Biometrika 34, 1947, 28-35; from
 * memory).
 */
function levelsOf(groups: readonly Group[]): OptionLevel[] {
  const [usual] = groups.map(logMean);
  return groups.map((group, k) => {
    const own = logMean(group),
      plain = { value: group.value, n: own.n, mean: own.mean, factor: own.mean / usual.mean };
    const variance = own.variance + usual.variance;
    if (k === 0 || own.n < 2 || usual.n < 2 || !(variance > 0)) return { ...plain, low: null, high: null };
    const freedom =
        (variance * variance) /
        ((own.variance * own.variance) / (own.n - 1) + (usual.variance * usual.variance) / (usual.n - 1)),
      half = tQuantile((1 + LEVEL) / 2, freedom) * Math.sqrt(variance),
      middle = log(plain.factor);
    return { ...plain, low: exp(middle - half), high: exp(middle + half) };
  });
}

function logMean({ times }: Group): { n: number; mean: number; variance: number } {
  const n = times.length,
    middle = mean(times),
    squares = times.reduce((sum, time) => sum + (time - middle) * (time - middle), 0);
  return { n, mean: middle, variance: squares / (n - 1) / (n * middle * middle) };
}

export function warningsOfOptions(effects: readonly OptionEffect[]): Warning[] {
  return effects
    .filter(({ isFelt }) => isFelt)
    .map(({ option, adjusted, levels }) => {
      const usual = levels[0],
        others = levels.slice(1).map(({ value, factor, low, high }) => {
          const range = low === null || high === null ? '' : ` (${number(low)} to ${number(high)})`;
          return `${value} takes ${number(factor)} times as long${range}`;
        });
      return {
        kind: 'option' as const,
        option,
        p: adjusted,
        told:
          `Times differ by ${option} (p ${pText(adjusted)}): against ${usual.value}, ` +
          `${others.join(', ')}.`,
      };
    });
}

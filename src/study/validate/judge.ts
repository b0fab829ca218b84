import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { sampleVariance } from 'simple-statistics';
import { exp, log } from '../../random/elementary.js';
import { holm } from '../statistics/difference.js';
import { studentBeyond } from '../statistics/functions/normal.js';
import { mean } from '../statistics/sums.js';
import type { Measure } from './seen/measures.js';

/** A measure of the real log against those of the simulated ones. */
export interface Judged {
  readonly measure: Measure;
  /** NaN where too few logs have it. */
  readonly middle: number;
  /** Of one build, so that all measures together lie inside with the level asked. */
  readonly low: number;
  readonly high: number;
  /** Distance from the middle in standard errors of one more build; Infinity: the model cannot have it. */
  readonly t: number;
  /** Two-sided, and adjusted for all measures (Holm). */
  readonly p: number;
  readonly adjusted: number;
  readonly agrees: boolean;
}

/** Measures are told apart where their values are about symmetric: shares by the root, times by the log. */
interface Scale {
  readonly to: (value: number, n: number) => number;
  readonly back: (value: number, n: number) => number;
}
const PLAIN: Scale = { to: (value) => value, back: (value) => Math.max(0, value) },
  LOG: Scale = { to: (value) => log(value), back: exp },
  ROOT: Scale = { to: Math.sqrt, back: (value) => Math.max(0, value) * Math.max(0, value) };
/** Anscombe 1948, Biometrika 35, 246-254 (from memory): of a share its arcsine, here by the root alone. */
const SHARE: Scale = {
  to: (share, n) => Math.sqrt((share * n + 3 / 8) / (n + 3 / 4)),
  back: (root, n) => {
    const square = Math.max(0, root) * Math.max(0, root);
    return Math.min(1, Math.max(0, (square * (n + 3 / 4) - 3 / 8) / n));
  },
};

function scaleOf({ topic }: Measure): Scale {
  switch (topic) {
    case 'rate':
      return PLAIN;
    case 'units inside':
    case 'people':
      return ROOT;
    case 'lead time':
    case 'minutes':
      return LOG;
    case 'quality':
    case 'finds':
      return SHARE;
  }
}

/** A log is written to the second or the minute: closer than this is the same, minutes. */
const ROUNDING = 1 / 60;
/** Fewer simulated logs than this part have it: it is not judged. */
const ENOUGH = 0.8;
/** Values behind a mean or a share that make it worth judging. */
const LEAST = 5;

/**
 * Whether the real value is one that a build of the model might have: the prediction interval of one more
 * observation, mean +- t s sqrt(1 + 1/R) with R - 1 degrees of freedom (Hahn & Meeker 1991, Statistical
 * Intervals, sec. 4.3; from memory), for all measures together by Holm 1979 (Scand. J. Stat. 6, 65-70; from
 * memory). Where the spread of the real values says that their mean is known less well, that counts. One unit
 * more or less of a count is no difference.
 * @param simulated the same measures of each simulated log, 2 or more
 */
export function judge(
  real: readonly Measure[],
  simulated: readonly (readonly Measure[])[],
  level: number,
): Judged[] {
  const runs = simulated.length,
    df = runs - 1;
  const compared = real.map((measure, i) => {
    const { to, back } = scaleOf(measure);
    const values = simulated
      .map((all) => all[i])
      .flatMap((each) => (each === undefined ? [] : [to(each.value, measure.n)]))
      .filter(Number.isFinite);
    const at = to(measure.value, measure.n),
      isThin = measure.topic !== 'people' && measure.n > 0 && measure.n < LEAST;
    if (!Number.isFinite(at) || isThin || values.length < Math.max(2, ENOUGH * runs)) return { measure };
    const middle = mean(values),
      shown = (value: number): number => back(value, measure.n),
      spread = sampleVariance(values) * (1 + 1 / values.length),
      own = ownVariance(measure),
      { least = 0 } = measure,
      error = Math.max(Math.sqrt(Math.max(spread, own)), least),
      gap = Math.max(0, Math.abs(at - middle) - least);
    const isSame =
      gap < 1e-9 || (measure.topic === 'minutes' && Math.abs(measure.value - shown(middle)) <= ROUNDING);
    // Nobody in any replication was ever at work beside so many: it is no matter of luck.
    const t = isSame ? 0 : error > 0 ? gap / error : Infinity;
    // What is the same in all logs tells nothing, and takes nothing away from what does.
    const isTold = spread > 0 || gap > 0;
    return { measure, middle, error, least, shown, t, p: isTold ? studentBeyond(t, df) : NaN };
  });
  const adjusted = holm(compared.map(({ p = NaN }) => p)),
    judged = adjusted.filter((p) => !Number.isNaN(p)),
    out = judged.filter((p) => p <= 1 - level).length,
    alpha = (1 - level) / Math.max(1, judged.length - out),
    wide = tQuantile(1 - alpha / 2, df);
  return compared.map((each, i) => {
    const { measure } = each;
    if (each.t === undefined)
      return { measure, middle: NaN, low: NaN, high: NaN, t: NaN, p: NaN, adjusted: NaN, agrees: true };
    const { middle, error, least, shown, t, p } = each,
      all = Number.isNaN(p) ? 1 : (adjusted[i] ?? 1),
      within = wide * error + least;
    return {
      measure,
      middle: shown(middle),
      low: shown(middle - within),
      high: shown(middle + within),
      t,
      p: Number.isNaN(p) ? 1 : p,
      adjusted: all,
      agrees: all > 1 - level,
    };
  });
}

/**
 * Variance of a real mean or share on its scale, by its own values alone (delta method): where builds of the
 * model do not differ, a real line may all the same.
 */
function ownVariance({ topic, value, n, sd }: Measure): number {
  if (!(n > 1)) return 0;
  if (topic === 'quality' || topic === 'finds') return Math.max(0, 1 - value) / (4 * n);
  return sd === undefined || !(value > 0) ? 0 : (sd * sd) / n / (value * value);
}

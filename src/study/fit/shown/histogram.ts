import { log2 } from '../../../random/elementary.js';
import { power } from '../../../random/power.js';
import type { Curve } from '../kinds/family.js';
import { hasNoSpread, type Sample } from '../kinds/sample.js';

/** Times counted by how long they are. */
export interface Histogram {
  /** Minutes: where the first bar begins, and how wide each is. */
  readonly from: number;
  readonly width: number;
  readonly counts: readonly number[];
  /** How many the curve has in each bar; null without one. */
  readonly expected: readonly number[] | null;
  /** Times a bar at these minutes, as the distribution has it; null without a curve. */
  readonly curve: readonly (readonly [minutes: number, times: number])[] | null;
}

const MOST_BARS = 40;
const CURVE_POINTS = 81;

/**
 * Bars as wide as 2 IQR n^(-1/3), or range / (log2 n + 1) where that is less (D. Freedman & P. Diaconis,
 * Zeitschrift fur Wahrscheinlichkeitstheorie 57, 1981, 453-476; H. A. Sturges, Journal of the American
 * Statistical Association 21, 1926, 65-66; both from memory), rounded down to 1, 2 or 5 times a power of ten.
 * Of rounded times each stands in the middle of what was rounded to it.
 * @param unit times were rounded to whole multiples of it; 0 where not
 */
export function histogramOf(sample: Sample, unit: number, curve: Curve | undefined): Histogram {
  const { n, values, least, greatest } = sample;
  if (hasNoSpread(sample)) {
    const width = unit > 0 ? unit : niceAbove(Math.max(least, 1) / 20);
    return { from: least - width / 2, width, counts: [n], expected: null, curve: null };
  }
  const range = greatest - least,
    iqr = quantileOf(values, 0.75) - quantileOf(values, 0.25),
    wanted = Math.min(iqr > 0 ? 2 * iqr * power(n, -1 / 3) : range, range / (log2(n) + 1)),
    width = inUnits(Math.max(niceBelow(wanted), niceAbove(range / MOST_BARS)), unit),
    shift = unit > 0 ? unit / 2 : 0,
    first = Math.floor((least + shift) / width + 1e-9),
    from = first * width - shift,
    counts = Array.from({ length: Math.floor((greatest - from) / width + 1e-9) + 1 }, () => 0);
  for (const value of values) counts[Math.floor((value - from) / width + 1e-9)]++;
  if (curve === undefined) return { from, width, counts, expected: null, curve: null };
  const step = (counts.length * width) / (CURVE_POINTS - 1);
  return {
    from,
    width,
    counts,
    expected: counts.map((_, i) => n * (curve.cdf(from + (i + 1) * width) - curve.cdf(from + i * width))),
    curve: Array.from({ length: CURVE_POINTS }, (_, i) => from + i * step).flatMap((minutes) => {
      // Spread over a hundredth of a bar: a density may be endless at its end.
      const about = width / 200,
        times = (n * width * (curve.cdf(minutes + about) - curve.cdf(minutes - about))) / (2 * about);
      return minutes > 0 ? [[minutes, times] as const] : [];
    }),
  };
}

/** Quantile between the two nearest values (type 7 of R. J. Hyndman & Y. Fan 1996). */
export function quantileOf(sorted: ArrayLike<number>, p: number): number {
  const at = p * (sorted.length - 1),
    below = Math.floor(at),
    low = sorted[below];
  return low + (at - below) * (sorted[Math.min(sorted.length - 1, below + 1)] - low);
}

/** The greatest of 1, 2 and 5 times a power of ten that is not above. */
function niceBelow(value: number): number {
  const ten = tenBelow(value);
  return ([5, 2].find((times) => times * ten <= value * (1 + 1e-9)) ?? 1) * ten;
}

/** The least that is not below. */
function niceAbove(value: number): number {
  const ten = tenBelow(value);
  return ([1, 2, 5].find((times) => times * ten >= value * (1 - 1e-9)) ?? 10) * ten;
}

function tenBelow(value: number): number {
  const exponent = Math.floor(log2(value) / log2(10) + 1e-9);
  return exponent >= 0 ? Number(`1e${exponent}`) : 1 / Number(`1e${-exponent}`);
}

const inUnits = (width: number, unit: number): number =>
  unit > 0 ? Math.max(1, Math.round(width / unit)) * unit : width;

import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import type { Estimate } from './estimate.js';

const ROUNDING = 1e-12;

/** Times of the units of one replication: how many in bins `first`, +1, .., the least and the greatest. */
export interface Histogram {
  readonly first: number;
  readonly bins: ArrayLike<number>;
  readonly least: number;
  readonly greatest: number;
}

/** Sums of N_r(x), the units up to the upper edge x of a bin, of its square, and of its product with N_r. */
interface Bin {
  below: number;
  squares: number;
  products: number;
}
const NO_UNITS: Bin = { below: 0, squares: 0, products: 0 };

/**
 * Quantiles over all units of all replications, which come one at a time and are not kept. Units of one
 * replication resemble each other, so replications are clusters: the share of units up to x is the ratio sum
 * N_r(x) / sum N_r, with the variance of a ratio estimate, n / (n - 1) sum (N_r(x) - share N_r)^2 / (sum
 * N_r)^2 (Cochran 1977, Sampling Techniques, sec. 6.3 and 9A.2), and the interval of the quantile is the x at
 * which that share is p -+ t(n - 1) times its standard error at the quantile (Woodruff 1952, J. Am. Stat.
 * Assoc. 47, 635-646; all from memory). Sums by bin are enough for it: memory does not grow.
 */
export class PooledQuantiles {
  private from = 0;
  /** By bin from `from`. */
  private bins: Bin[] = [];
  /** Sum of N_r, and of its square. */
  private units = 0;
  private unitSquares = 0;
  private count = 0;
  private least = Infinity;
  private greatest = -Infinity;

  /** @param edge the lower edge of a bin */
  constructor(private readonly edge: (bin: number) => number) {}

  /** One replication more; one without units tells nothing and is left out. */
  add({ first, bins, least, greatest }: Histogram): void {
    let units = 0;
    for (let i = 0; i < bins.length; i++) units += bins[i] ?? 0;
    if (units === 0) return;
    this.widen(first, first + bins.length);
    let below = 0;
    this.bins.forEach((sums, i) => {
      below += bins[this.from + i - first] ?? 0;
      sums.below += below;
      sums.squares += below * below;
      sums.products += below * units;
    });
    this.units += units;
    this.unitSquares += units * units;
    this.count++;
    this.least = Math.min(this.least, least);
    this.greatest = Math.max(this.greatest, greatest);
  }

  /**
   * The quantile with its interval; `mean` is the quantile. Where the interval of the share reaches 0 or 1
   * there are too few replications, and `needs` says how many would do, as it narrows with their root.
   * @param p 0..1 @param scale units of the bins' edges in one of the result
   */
  estimate(p: number, level: number, scale: number): Estimate {
    const n = this.count,
      none = { mean: n === 0 ? 0 : this.at(p) / scale, low: null, high: null, level, n };
    if (n < 2) return none;
    const half = tQuantile((1 + level) / 2, n - 1) * this.errorAt(p),
      room = Math.min(p, 1 - p);
    if (half === 0) return none;
    if (half >= room) return { ...none, needs: Math.floor((n * half * half) / (room * room)) + 1 };
    return { ...none, low: this.at(p - half) / scale, high: this.at(p + half) / scale };
  }

  /** All units so far: how many in bins up to the last with any, the least and the greatest; null of none. */
  get histogram(): Histogram | null {
    if (this.units === 0) return null;
    const bins = this.bins.map(({ below }, i) => below - (this.bins[i - 1]?.below ?? 0)),
      end = bins.findLastIndex((units) => units > 0) + 1;
    return { first: this.from, bins: bins.slice(0, end), least: this.least, greatest: this.greatest };
  }

  /** Bins from `from` up to `to` are kept: those before all have 0 units below, those behind all of them. */
  private widen(from: number, to: number): void {
    if (this.bins.length === 0) this.from = from;
    const { units, unitSquares } = this,
      end = this.from + this.bins.length;
    for (let bin = end; bin < to; bin++)
      this.bins.push({ below: units, squares: unitSquares, products: unitSquares });
    const before = Array.from({ length: Math.max(0, this.from - from) }, () => ({ ...NO_UNITS }));
    this.from -= before.length;
    this.bins.unshift(...before);
  }

  /** Bin in which the share is reached, its sums and those of the bin before, and the part of the way. */
  private place(share: number) {
    const units = share * this.units,
      bin = this.bins.findIndex(({ below }) => below > 0 && below >= units),
      { [bin - 1]: before = NO_UNITS, [bin]: behind = NO_UNITS } = this.bins;
    return { bin, before, behind, part: (units - before.below) / (behind.below - before.below) };
  }

  /** The quantile: linear within a bin, but no unit lies beyond the least and the greatest seen. */
  private at(share: number): number {
    const { bin, part } = this.place(share),
      low = this.edge(this.from + bin),
      value = low + part * (this.edge(this.from + bin + 1) - low);
    return Math.min(this.greatest, Math.max(this.least, value));
  }

  /** Standard error of the share of units up to its quantile, linear within a bin. */
  private errorAt(share: number): number {
    const { before, behind, part } = this.place(share),
      error = this.error(before);
    return error + part * (this.error(behind) - error);
  }

  /** The same at the upper edge of a bin. */
  private error({ below, squares, products }: Bin): number {
    const n = this.count,
      share = below / this.units,
      off = squares - 2 * share * products + share * share * this.unitSquares;
    // The three terms are of that size: below it they differ by rounding alone.
    return off <= ROUNDING * this.unitSquares ? 0 : Math.sqrt((n / (n - 1)) * off) / this.units;
  }
}

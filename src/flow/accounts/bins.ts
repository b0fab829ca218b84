import { log2 } from '../../random/elementary.js';
import { power } from '../../random/power.js';

/** Parts of an octave of a histogram of durations: a bin is 0.27 % wide. */
const BINS_PER_OCTAVE = 256;
const LOWEST_OCTAVE = -10,
  OCTAVES = 40;
export const BIN_COUNT = OCTAVES * BINS_PER_OCTAVE;

/** How often, how long in all, at least and at most, and how many in each bin; minutes. */
export class Durations {
  count = 0;
  sum = 0;
  least = Infinity;
  greatest = 0;
  readonly bins = new Int32Array(BIN_COUNT);

  add(minutes: number): void {
    this.count++;
    this.sum += minutes;
    if (minutes < this.least) this.least = minutes;
    if (minutes > this.greatest) this.greatest = minutes;
    this.bins[binOf(minutes)]++;
  }

  /** NaN when nothing was counted. */
  get mean(): number {
    return this.sum / this.count;
  }

  /**
   * Quantile, minutes: linear within the bin, clamped to the greatest seen and to `least`. A bin is 0.27 %
   * wide, so is the error. NaN when nothing was counted.
   * @param p 0..1
   */
  quantile(p: number, least = this.least): number {
    const { bins, count, greatest } = this,
      rank = p * count;
    if (count === 0) return NaN;
    let below = 0;
    for (let bin = binOf(this.least); bin < BIN_COUNT; bin++) {
      if (bins[bin] > 0 && below + bins[bin] >= rank) {
        const low = binEdge(bin),
          value = low + ((rank - below) / bins[bin]) * (binEdge(bin + 1) - low);
        return Math.min(greatest, Math.max(least, value));
      }
      below += bins[bin];
    }
    return greatest;
  }
}

/**
 * Bin of a duration in minutes, on a scale of logarithms from 2^-10 to 2^30 minutes; what lies outside goes
 * to the end bins.
 */
export function binOf(minutes: number): number {
  const bin = Math.floor((log2(minutes) - LOWEST_OCTAVE) * BINS_PER_OCTAVE);
  return bin < 0 || minutes <= 0 ? 0 : bin >= BIN_COUNT ? BIN_COUNT - 1 : bin;
}
/** Lower edge of a bin, minutes. */
export function binEdge(bin: number): number {
  return power(2, LOWEST_OCTAVE + bin / BINS_PER_OCTAVE);
}

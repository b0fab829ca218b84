import { boundsOf } from '../../statistics/estimate.js';
import { meanInterval } from '../../statistics/interval.js';
import type { Layout } from '../spots.js';
import type { Tried } from './tried.js';

/** A layout is given up for those of its replications that are run so far only if it is as sure as that. */
const SURE = 0.99;

/**
 * What a layout has to ship: a rate, or a share of what another layout ships in the same replications, so
 * that chance in both is the same.
 */
export class Bar {
  /** @param share of what `of` ships; where that is null it is the rate itself */
  constructor(
    private readonly trials: Tried,
    private readonly fresh: Tried,
    readonly share: number,
    readonly of: Layout | null,
  ) {}

  /** What the mean of the search has to be. */
  get rate(): number {
    return this.over(this.trials, this.trials.most);
  }

  /** Whether the mean of the search is enough. */
  readonly reaches = (layout: Layout): boolean => this.isReached(layout, this.trials);

  /** Whether the mean of these replications, as many as a layout has, is enough. */
  isReached(layout: Layout, trials: Tried): boolean {
    const n = trials.values(layout).length;
    return trials.mean(layout, n) >= this.over(trials, n);
  }

  /** Whether it may be enough, by the replications of the search that it has so far. */
  readonly mayReach = (layout: Layout): boolean =>
    mayReach(this.trials.values(layout), this.by(this.trials, this.trials.most));

  /** What the mean of the first n fresh replications has to be. */
  readonly floor = async (n: number): Promise<number> => {
    if (this.of !== null) await this.fresh.run([this.of], n);
    return this.over(this.fresh, n);
  };

  /** What the mean of the first n of these replications has to be. */
  private over(trials: Tried, n: number): number {
    return this.of === null ? this.share : this.share * trials.mean(this.of, n);
  }

  /** By the first n replications. */
  by(trials: Tried, n: number): number[] {
    return this.of === null
      ? new Array<number>(n).fill(this.share)
      : trials
          .values(this.of)
          .slice(0, n)
          .map((value) => this.share * value);
  }
}

/** Whether the mean of some values may be as high as that of the others, in pairs, as far as they go. */
export function mayReach(values: readonly number[], others: readonly number[]): boolean {
  const over = values.map((value, r) => value - (others[r] ?? NaN));
  return boundsOf(meanInterval(over, SURE)).high >= 0;
}

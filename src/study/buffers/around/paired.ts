import { defined } from '../../lists.js';
import { difference } from '../../statistics/difference.js';
import type { Estimate } from '../../statistics/estimate.js';
import { mean } from '../../statistics/sums.js';
import type { Trials } from '../search/trials.js';
import type { Layout } from '../spots.js';
import type { Prices } from './prices.js';

/** What layouts ship and cost over the same replications. */
export class Paired {
  constructor(
    readonly trials: Trials,
    private readonly prices: Prices | null,
  ) {}

  /** What the second ships more than the first. */
  more(first: Layout, second: Layout, level: number): Estimate {
    return difference(this.trials.values(first), this.trials.values(second), level).difference;
  }

  /** Replications in which the second ships nothing and the first something. */
  nothingIn(first: Layout, second: Layout): number {
    const its = this.trials.values(second);
    return this.trials.values(first).filter((value, r) => value > 0 && its[r] === 0).length;
  }

  /** What a unit of the second costs more; null without prices, and where one of them has no cost. */
  dearer(first: Layout, second: Layout, level: number): Estimate | null {
    if (this.prices === null || this.cost(first) + this.cost(second) === Infinity) return null;
    return difference(this.costs(first), this.costs(second), level).difference;
  }

  /** Cost of a unit by replication; NaN where one has none. */
  costs(layout: Layout): number[] {
    const { prices } = this;
    return prices === null
      ? []
      : this.trials.of(layout).map(({ spent }) => prices.of(layout, defined(spent)));
  }

  /**
   * Mean cost of a unit over the first so many; Infinity where a replication has none, as in a standstill.
   */
  cost(layout: Layout, over = this.trials.most): number {
    const costs = mean(this.costs(layout).slice(0, over));
    return Number.isFinite(costs) ? costs : Infinity;
  }
}

import { sampleVariance } from 'simple-statistics';
import { power } from '../../random/power.js';
import { defined } from '../lists.js';
import { familyLevel } from '../statistics/difference.js';
import { boundsOf } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';
import { slack } from '../statistics/select-best.js';
import { sum } from '../statistics/sums.js';

/** Why something is given no more replications: by what it did in some; or no replication felt it. */
export type Out = 'behind' | 'no effect' | 'not felt';

export interface ScreenOptions {
  /** How many are run. */
  readonly count: number;
  /** Replications before the first look, at least 2. */
  readonly first: number;
  /** Times that are looked, the last one included. */
  readonly looks: number;
  /** The best of so many are to be kept; 0: nobody is ruled out for being behind. */
  readonly keep: number;
  /** A difference that does not matter, in the unit of the values, above 0. */
  readonly zone: number;
  /**
   * Chance at least that none of the best is ruled out, if they are better than the others by the zone, and
   * than the base by it.
   */
  readonly level: number;
}

/**
 * Fully sequential screen of changes that are all set against one base under common random numbers. Out is
 * - who is behind at least `keep` others, by the triangular bounds of Kim & Nelson 2001 (ACM TOMACS 11(3),
 *   procedure KN with c = 1; from memory): eta = ((2 alpha / pairs)^(-2 / (n0 - 1)) - 1) / 2,
 *   h^2 = 2 eta (n0 - 1), i is behind l after r rounds if
 *   mean_i < mean_l - max(0, zone / (2 r) (h^2 S_il^2 / zone^2 - r)). One of the best k may be ruled out only
 *   by a slip in one of k (count - k) pairs, hence that many in the place of KN's k - 1 (Bonferroni). KN goes
 *   on until one is left; here all are left that are not ruled out when the replications end.
 * - who has no effect: the paired Student interval of the difference to the base lies wholly within +- zone,
 *   at a level divided over `keep` and the looks. Half of 1 - level goes to each. Where nobody is ruled out
 *   for being behind, all of it goes to this, divided over all and the looks: so nobody is ruled out who has
 *   an effect beyond the zone.
 */
export class ReliefScreen {
  private readonly all: Contestant[];
  private left: Contestant[];
  private readonly h2: number;

  constructor(private readonly options: ScreenOptions) {
    const { count, first, keep, zone, level } = options;
    if (!(first >= 2)) throw new RangeError(`screen: expected at least 2 first rounds, got ${first}`);
    if (!(zone > 0)) throw new RangeError(`screen: expected an indifference zone above 0, got ${zone}`);
    this.all = Array.from({ length: count }, (_, id) => ({ id, gains: [], out: null, variances: new Map() }));
    this.left = this.all;
    const pairs = Math.max(1, keep * (count - keep));
    this.h2 = power((1 - level) / pairs, -2 / (first - 1)) * (first - 1) - (first - 1);
  }

  /** Numbers of those still in, ascending. */
  get alive(): number[] {
    return this.left.map(({ id }) => id);
  }

  /** By number; null: still in. */
  get outs(): (Out | null)[] {
    return this.all.map(({ out }) => out);
  }

  /** Takes in the gains of one more replication or several, by those still in, and rules out. */
  look(rows: readonly (readonly number[])[]): void {
    if (rows.length !== this.left.length)
      throw new RangeError(
        `screen: expected ${this.left.length} rows, one of each that is still in, got ${rows.length}`,
      );
    for (const [at, row] of rows.entries()) this.left[at]?.gains.push(...row);
    const outs = this.left.map((each): Out | null =>
      this.hasNoEffect(each) ? 'no effect' : this.isBehind(each) ? 'behind' : null,
    );
    for (const [at, out] of outs.entries()) defined(this.left[at]).out = out;
    this.left = this.left.filter(({ out }) => out === null);
  }

  private hasNoEffect({ gains }: Contestant): boolean {
    const { count, level, zone, keep, looks } = this.options,
      each = keep === 0 ? familyLevel(level, count * looks) : familyLevel((1 + level) / 2, keep * looks);
    const { low, high } = boundsOf(meanInterval(gains, each));
    return low > -zone && high < zone;
  }

  private isBehind(each: Contestant): boolean {
    const { keep } = this.options;
    if (keep === 0 || this.left.length <= keep) return false;
    let ahead = 0;
    for (const other of this.left)
      if (other !== each && this.isAhead(other, each) && ++ahead === keep) return true;
    return false;
  }

  private isAhead(other: Contestant, each: Contestant): boolean {
    const { zone } = this.options,
      rounds = each.gains.length;
    const lead = (sum(other.gains) - sum(each.gains)) / rounds;
    if (!(lead > 0)) return false;
    return lead > slack(zone, rounds, this.h2, this.varianceOf(other, each));
  }

  /** Of the differences in the first rounds; the same the other way round. */
  private varianceOf(other: Contestant, each: Contestant): number {
    const known = other.variances.get(each);
    if (known !== undefined) return known;
    const { first } = this.options,
      mine = each.gains.slice(0, first);
    const variance = sampleVariance(mine.map((gain, r) => defined(other.gains[r]) - gain));
    other.variances.set(each, variance);
    each.variances.set(other, variance);
    return variance;
  }
}

interface Contestant {
  readonly id: number;
  /** Over the base, by replication. */
  readonly gains: number[];
  out: Out | null;
  readonly variances: Map<Contestant, number>;
}

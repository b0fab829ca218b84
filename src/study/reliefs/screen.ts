import { sum } from '../statistics/sums.js';
import { sampleVariance } from 'simple-statistics';
import { difference, familyLevel } from '../statistics/difference.js';

/** Why something is given no more replications. */
export type Out = 'behind' | 'no effect';

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
 * procedure KN with
 *  c = 1; from memory): eta = ((2 alpha / pairs)^(-2 / (n0 - 1)) - 1) / 2, h^2 = 2 eta (n0 - 1), i is behind
 * l after r rounds if mean_i < mean_l - max(0, zone / (2 r) (h^2 S_il^2 / zone^2 - r)). One of the best k may
 * be ruled out only by a slip in one of k (count - k) pairs, hence that many in the place of KN's k - 1
 * (Bonferroni). KN goes on until one is left; here all are left that are not ruled out when the replications
 * end.
 * - who has no effect: the paired Student interval of the difference to the base lies wholly within +- zone,
 * at a level divided
 *  over `keep` and the looks. Half of 1 - level goes to each.
 */
export class ReliefScreen {
  /** Numbers of those still in, ascending. */
  alive: number[];
  readonly outs: (Out | null)[];
  /** Gain over the base by replication. */
  readonly gains: number[][];
  private readonly h2: number;
  private variances: Float64Array | undefined;

  constructor(private readonly options: ScreenOptions) {
    const { count, first, keep, zone, level } = options;
    if (!(first >= 2)) throw new RangeError(`screen: expected at least 2 first rounds, saw ${first}`);
    if (!(zone > 0)) throw new RangeError(`screen: expected an indifference zone above 0, saw ${zone}`);
    this.alive = Array.from({ length: count }, (_, i) => i);
    this.outs = this.alive.map(() => null);
    this.gains = this.alive.map(() => []);
    const pairs = Math.max(1, keep * (count - keep));
    this.h2 = ((1 - level) / pairs) ** (-2 / (first - 1)) * (first - 1) - (first - 1);
  }

  /** Takes in the gains of one more replication or several, by those still in, and rules out. */
  look(rows: readonly (readonly number[])[]): void {
    if (rows.length !== this.alive.length)
      throw new RangeError(
        `screen: expected ${this.alive.length} rows, one of each that is still in, saw ${rows.length}`,
      );
    this.alive.forEach((i, at) => void this.gains[i]!.push(...rows[at]!));
    const out = this.alive.map((i): Out | null =>
      this.hasNoEffect(i) ? 'no effect' : this.isBehind(i) ? 'behind' : null,
    );
    this.alive.forEach((i, at) => {
      this.outs[i] = out[at]!;
    });
    this.alive = this.alive.filter((i) => this.outs[i] === null);
  }

  private hasNoEffect(i: number): boolean {
    const { level, zone, keep, looks } = this.options,
      gains = this.gains[i]!;
    const { low, high } = difference(
      gains.map(() => 0),
      gains,
      familyLevel((1 + level) / 2, Math.max(1, keep) * looks),
    ).difference;
    return low !== null && high !== null && low > -zone && high < zone;
  }

  private isBehind(i: number): boolean {
    const { keep } = this.options;
    if (keep === 0 || this.alive.length <= keep) return false;
    let ahead = 0;
    for (const l of this.alive) if (l !== i && this.isAhead(l, i) && ++ahead === keep) return true;
    return false;
  }

  private isAhead(l: number, i: number): boolean {
    const { zone, count, first } = this.options,
      mine = this.gains[i]!,
      its = this.gains[l]!,
      rounds = mine.length;
    const lead = (sum(its) - sum(mine)) / rounds;
    if (!(lead > 0)) return false;
    this.variances ??= new Float64Array(count * count).fill(NaN);
    const at = Math.min(i, l) * count + Math.max(i, l);
    if (Number.isNaN(this.variances[at]!))
      this.variances[at] = sampleVariance(Array.from({ length: first }, (_, r) => its[r]! - mine[r]!));
    return (
      lead > Math.max(0, (zone / (2 * rounds)) * ((this.h2 * this.variances[at]!) / (zone * zone) - rounds))
    );
  }
}

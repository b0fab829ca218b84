import { defined } from '../lists.js';
import { familyLevel } from '../statistics/difference.js';
import { boundsOf } from '../statistics/estimate.js';
import { meanInterval } from '../statistics/interval.js';

/** Why something is given no more replications: by what it did in some; or no replication felt it. */
export type Out = 'behind' | 'no effect' | 'not felt';

export interface ScreenOptions {
  /** How many are run. */
  readonly count: number;
  /** Times that are looked, the last one included. */
  readonly looks: number;
  /** A difference that does not matter, in the unit of the values, above 0. */
  readonly zone: number;
  /** Chance at least that all that is ruled out is ruled out rightly. */
  readonly level: number;
}

/**
 * Screen for the one that moves it most, either way, of changes that are all set against one base under
 * common random numbers. The paired Student intervals of all of them at all looks hold together (Bonferroni's
 * inequality), and all else follows from these. Out is
 * - who has no effect: the interval lies wholly within +- zone;
 * - who is behind: it surely moves it less, either way, than another one surely does, and that by more than
 *   the zone.
 * So the one that moves it most is ruled out only if it moves it by less than the zone.
 */
export class ReliefScreen {
  private readonly all: Contestant[];
  private left: Contestant[];
  /** What the one that moves it most surely moves it by, as far as is known; the zone at least. */
  private surely: number;
  /** Of each interval. */
  private readonly each: number;

  constructor(private readonly options: ScreenOptions) {
    const { count, looks, zone, level } = options;
    if (!(zone > 0)) throw new RangeError(`screen: expected an indifference zone above 0, got ${zone}`);
    this.all = Array.from({ length: count }, (_, id) => ({ id, gains: [], out: null }));
    this.left = this.all;
    this.surely = zone;
    this.each = familyLevel(level, Math.max(1, count * looks));
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
    const { zone } = this.options;
    if (rows.length !== this.left.length)
      throw new RangeError(
        `screen: expected ${this.left.length} rows, one of each that is still in, got ${rows.length}`,
      );
    const ranges = this.left.map(({ gains }, at) => {
      gains.push(...defined(rows[at]));
      const { low, high } = boundsOf(meanInterval(gains, this.each));
      return { least: Math.max(low, -high), most: Math.max(-low, high) };
    });
    this.surely = Math.max(this.surely, ...ranges.map(({ least }) => least));
    for (const [at, { most }] of ranges.entries())
      defined(this.left[at]).out = most < zone ? 'no effect' : most < this.surely ? 'behind' : null;
    this.left = this.left.filter(({ out }) => out === null);
  }
}

interface Contestant {
  readonly id: number;
  /** Over the base, by replication. */
  readonly gains: number[];
  out: Out | null;
}

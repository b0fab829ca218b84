import { defined } from '../../lists.js';
import { boundsOf } from '../../statistics/estimate.js';
import { meanInterval } from '../../statistics/interval.js';
import { mean, sumOf } from '../../statistics/sums.js';
import type { Screening } from '../forecast.js';

/** Replications after which is looked; a group gets so many at most, by its size, and is split then. */
export const FIRST_LOOK = 5;
const LOOKS = [FIRST_LOOK, 10, 20, 30];
const MOST_OF_GROUP = 2.5;

export interface BifurcationOptions {
  /** The best of so many are to be kept. */
  readonly keep: number;
  /** A gain that does not matter, above 0. */
  readonly zone: number;
  /** Chance at least that none of the best is given up, if each gains more than the zone. */
  readonly level: number;
  /** Replications that one change gets at most. */
  readonly most: number;
}

/** Several changes at once, or one. */
export interface Node {
  /** Numbers of the changes. */
  readonly members: readonly number[];
  /** Over the base, by replication. */
  readonly gains: readonly number[];
  /** The group of which it is a half; null: none. */
  readonly whole: Node | null;
  /** Why it is run no more; null: it may be. */
  readonly end: 'given up' | 'split' | 'to the end' | null;
}

interface Grown extends Node {
  readonly gains: number[];
  end: Node['end'];
  /** The least upper bound of its gain at any look. */
  high: number;
}

/**
 * Group screening by sequential bifurcation (Bettonvil & Kleijnen 1996, European Journal of Operational
 * Research 96, 180-194; with bounds for chance Wan, Ankenman & Nelson 2006, Operations Research 54, 743-755;
 * both from memory), against a bar that rises: what the last of the best `keep` found so far surely gains,
 * and the zone at least. The group that gains most is looked at next; one whose gain is surely below the bar
 * is given up with all its members, another is split in halves. So what is given up gains less than `keep`
 * others or than the zone, **if no change takes away what others of its group gain**; changes alone need no
 * such assumption.
 *
 * Errors: half of what may go wrong is for the upper bounds, divided over `keep` and the looks at all nested
 * groups of one of the best (one-sided Student bounds, Bonferroni); half for the lower bounds of changes run
 * to the end, divided over all changes, since any may raise the bar.
 */
export class Bifurcation {
  readonly nodes: Grown[];
  /** One-sided errors of a bound. */
  private readonly ofHigh: number;
  private readonly ofLow: number;
  private readonly lows: number[] = [];

  /** @param groups numbers of changes that may be tried at once, or a single one; each number once */
  constructor(
    groups: readonly (readonly number[])[],
    private readonly options: BifurcationOptions,
  ) {
    const { keep, zone, level, most } = options;
    if (!(zone > 0)) throw new RangeError(`screen: expected an indifference zone above 0, got ${zone}`);
    this.nodes = groups.map((members) => begun(members, null));
    let looks = 0;
    for (let size = Math.max(1, ...groups.map(({ length }) => length)); ; size = Math.ceil(size / 2)) {
      looks += looksOf(size, most).length;
      if (size === 1) break;
    }
    const count = sumOf(groups, ({ length }) => length),
      half = (1 - level) / 2;
    this.ofHigh = half / Math.max(1, keep * looks);
    this.ofLow = half / Math.max(1, count);
  }

  /** What the gain of one that is kept has to be, as far as is known. */
  get bar(): number {
    const { keep, zone } = this.options;
    return Math.max(
      zone,
      this.lows.length < keep ? 0 : defined([...this.lows].sort((a, b) => b - a)[keep - 1]),
    );
  }

  /**
   * Those to be run next, the first look of all first, then so many of those that gain most; with the
   * replication up to which. None: it is over.
   */
  next(atOnce: number): { readonly node: Node; readonly to: number }[] {
    for (const node of this.open) this.decide(node);
    const { open } = this,
      fresh = open.filter(({ gains }) => gains.length === 0),
      chosen =
        fresh.length > 0 ? fresh : [...open].sort((a, b) => mean(b.gains) - mean(a.gains)).slice(0, atOnce);
    return chosen.map((node) => ({
      node,
      to: this.looks(node).find((look) => look > node.gains.length) ?? this.options.most,
    }));
  }

  /** Takes in more gains of a node. */
  take(which: Node, gains: readonly number[]): void {
    const node = this.grown(which);
    node.gains.push(...gains);
    const { most } = this.options;
    if (node.members.length === 1 && node.gains.length >= most) {
      node.end = 'to the end';
      this.lows.push(boundsOf(meanInterval(node.gains, 1 - 2 * this.ofLow)).low);
    } else node.high = Math.min(node.high, boundsOf(meanInterval(node.gains, 1 - 2 * this.ofHigh)).high);
    this.decide(node);
  }

  /** Its halves are tried instead. */
  split(which: Node): void {
    const node = this.grown(which),
      middle = Math.ceil(node.members.length / 2);
    node.end = 'split';
    this.nodes.push(begun(node.members.slice(0, middle), node), begun(node.members.slice(middle), node));
  }

  private grown(which: Node): Grown {
    const node = this.nodes.find((each) => each === which);
    if (node === undefined) throw new RangeError('screen: expected one of its groups, got another');
    return node;
  }

  private get open(): Grown[] {
    return this.nodes.filter(({ end }) => end === null);
  }

  private decide(node: Grown): void {
    const { members, gains, high, end } = node;
    if (end !== null || gains.length === 0) return;
    if (high < this.bar) node.end = 'given up';
    else if (
      members.length > 1 &&
      (gains.length >= defined(this.looks(node).at(-1)) || mean(gains) > this.bar)
    )
      this.split(node);
  }

  /** How far it is: replications run, and the changes that may still be run. */
  screening(run: number): Screening {
    return { run, alive: sumOf(this.open, ({ members }) => members.length), each: FIRST_LOOK };
  }

  /** Surely within the zone, either way. */
  isNothing({ gains }: Node): boolean {
    const { low, high } = boundsOf(meanInterval(gains, 1 - 2 * this.ofHigh)),
      { zone } = this.options;
    return low > -zone && high < zone;
  }

  private looks({ members }: Node): number[] {
    return looksOf(members.length, this.options.most);
  }
}

const begun = (members: readonly number[], whole: Node | null): Grown => ({
  ...{ members, whole, gains: [], end: null },
  high: Infinity,
});

/** A single one is looked at ahead of its end; a group may take what it may spare. */
function looksOf(size: number, most: number): number[] {
  const last = size === 1 ? most - 1 : Math.min(most, Math.max(FIRST_LOOK, MOST_OF_GROUP * size)),
    looks = LOOKS.filter((look) => look <= last);
  return looks.length > 0 || size === 1 ? looks : [most];
}

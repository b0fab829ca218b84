import type { PossibleChange } from '../../../scenario/types/possible.js';
import { defined } from '../../lists.js';
import type { ChangeSet, PossibleChanges } from '../../priced/sets.js';
import { sum } from '../../statistics/sums.js';

/** How often each of the changes that are considered is made, in their order: a set of changes. */
export type Counts = readonly number[];

/** What a set may not be beyond. */
export interface Limits {
  /** Money, once; Infinity: no limit. */
  readonly budget: number;
  /** Changes, each as often as it is made; Infinity: no limit. */
  readonly changes: number;
}

/** One that the planner sets no limit to is made so often at most: our own convention. */
export const MOST_OF_ONE = 8;

/** The sets that can be made of some changes, and what they cost. What has no price costs nothing here. */
export class Choices {
  /** Of each, how often it can be made at most. */
  readonly most: Counts;
  readonly none: Counts;

  constructor(
    private readonly possible: Pick<PossibleChanges, 'forbidden' | 'withRequired'>,
    readonly all: readonly PossibleChange[],
    readonly limits: Limits,
    /** Which of them may be made; the others stay out. */
    mayMake: (change: PossibleChange) => boolean = () => true,
  ) {
    this.most = all.map((each) => {
      const { changes, atMost = changes === undefined ? MOST_OF_ONE : 1 } = each;
      return mayMake(each) ? Math.min(atMost, MOST_OF_ONE) : 0;
    });
    this.none = all.map(() => 0);
  }

  /** By name, those that are made. */
  set(counts: Counts): ChangeSet {
    return new Map(
      this.all.flatMap(({ name }, i) => {
        const times = defined(counts[i]);
        return times > 0 ? [[name, times] as const] : [];
      }),
    );
  }

  price(counts: Counts): number {
    return sum(this.all.map(({ price = 0 }, i) => price * defined(counts[i])));
  }

  /** Whether a set that only grows may still become one that can be made. */
  mayGrow(counts: Counts): boolean {
    const { budget, changes } = this.limits;
    return (
      this.price(counts) <= budget &&
      sum(counts) <= changes &&
      isWithin(counts, this.most) &&
      this.all.every(
        ({ excludes }, i) => counts[i] === 0 || excludes.every((name) => !this.has(counts, name)),
      )
    );
  }

  isAllowed(counts: Counts): boolean {
    return this.mayGrow(counts) && this.possible.forbidden(this.set(counts)) === null;
  }

  /** With a change made so often, at least, and once all that it requires. */
  with(counts: Counts, change: number, times: number): Counts {
    const required = this.possible.withRequired(defined(this.all[change]).name);
    return counts.map((count, i) =>
      i === change
        ? Math.max(count, times)
        : Math.max(count, required.has(defined(this.all[i]).name) ? 1 : 0),
    );
  }

  /** The sets with one change made once more than in a set. */
  further(counts: Counts): Counts[] {
    return this.all.flatMap((_, i) => {
      const next = this.with(counts, i, defined(counts[i]) + 1);
      return this.isAllowed(next) ? [next] : [];
    });
  }

  /** Cheaper first, then fewer changes, then those that the planner names first. */
  compare(one: Counts, other: Counts): number {
    return (
      this.price(one) - this.price(other) ||
      sum(one) - sum(other) ||
      (one.map((count, i) => defined(other[i]) - count).find((more) => more !== 0) ?? 0)
    );
  }

  private has(counts: Counts, name: string): boolean {
    return this.all.some((each, i) => each.name === name && defined(counts[i]) > 0);
  }
}

/** Whether all of a set is in another. */
export const isWithin = (set: Counts, other: Counts): boolean =>
  set.every((count, i) => count <= defined(other[i]));

export const isSame = (one: Counts, other: Counts): boolean => one.every((count, i) => count === other[i]);

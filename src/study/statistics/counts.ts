import { middleRank } from './quantile-interval.js';

/**
 * How often each of several numbers occurred, Infinity among them. Of whole numbers it stays small however
 * many come, and its order statistics are exact.
 */
export class Counts {
  private readonly times = new Map<number, number>();
  private sorted: readonly number[] | null = null;
  private count = 0;

  add(value: number): void {
    const times = this.times.get(value);
    if (times === undefined) this.sorted = null;
    this.times.set(value, (times ?? 0) + 1);
    this.count++;
  }

  copy(): Counts {
    const other = new Counts();
    for (const [value, times] of this.times) other.times.set(value, times);
    other.count = this.count;
    return other;
  }

  get n(): number {
    return this.count;
  }

  /** How often it occurred. */
  of(value: number): number {
    return this.times.get(value) ?? 0;
  }

  /** There must be a value. */
  get mean(): number {
    let sum = 0;
    for (const [value, times] of this.times) sum += value * times;
    return sum / this.count;
  }

  /** The value of a rank from 1, the least, to n. */
  ranked(rank: number): number {
    this.sorted ??= [...this.times.keys()].sort((a, b) => a - b);
    let below = 0;
    for (const value of this.sorted) {
      below += this.of(value);
      if (below >= rank) return value;
    }
    throw new RangeError(`rank: expected one from 1 to ${this.count}, got ${rank}`);
  }

  /** That of the middle rank; there must be a value. */
  quantile(p: number): number {
    return this.ranked(middleRank(this.count, p));
  }
}

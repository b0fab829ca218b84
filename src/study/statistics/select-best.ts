import { sampleVariance } from 'simple-statistics';
import { power } from '../../random/power.js';
import { defined } from '../lists.js';

/**
 * Fully sequential selection of the best of k systems with an indifference zone (Kim & Nelson 2001, ACM
 * TOMACS 11(3), 251-273, procedure KN with c = 1; from memory): with at least `level` the one selected is the
 * best, if that is better than all others by `zone` or more; otherwise one within `zone` of the best is.
 * Common random numbers are allowed: values of one round belong together, and only variances of differences
 * are used.
 *
 * eta = ((2 alpha / (k - 1))^(-2 / (n0 - 1)) - 1) / 2, h^2 = 2 eta (n0 - 1). After r rounds i is out if for
 * some l still in mean_i < mean_l - max(0, zone / (2 r) (h^2 S_il^2 / zone^2 - r)), S_il^2 the variance of
 * their differences in the first n0 rounds.
 */
export class BestSelection {
  private left: System[];
  private readonly h2: number;
  private rounds = 0;

  /**
   * @param count k, at least 1; the larger value is the better one
   * @param firstRounds n0, at least 2; nobody is ruled out before
   * @param zone difference that matters, in the unit of the values, above 0
   */
  constructor(
    count: number,
    private readonly firstRounds: number,
    private readonly zone: number,
    level: number,
  ) {
    if (!(firstRounds >= 2))
      throw new RangeError(`selection: expected at least 2 first rounds, got ${firstRounds}`);
    if (!(zone > 0)) throw new RangeError(`selection: expected an indifference zone above 0, got ${zone}`);
    this.left = Array.from({ length: count }, (_, id) => ({ id, sum: 0, first: [] }));
    const eta = count < 2 ? 0 : (power((2 * (1 - level)) / (count - 1), -2 / (firstRounds - 1)) - 1) / 2;
    this.h2 = 2 * eta * (firstRounds - 1);
  }

  /** Numbers of those still in, ascending. */
  get alive(): number[] {
    return this.left.map(({ id }) => id);
  }

  /** Whether one is left. */
  get isOver(): boolean {
    return this.left.length === 1;
  }

  /** Rounds taken in. */
  get round(): number {
    return this.rounds;
  }

  /** The best mean of those still in; the first of equal ones. */
  get best(): number {
    return this.leader.id;
  }

  /** Takes in the values of one round, in the order of `alive`, and rules out who is clearly behind. */
  add(values: readonly number[]): void {
    if (values.length !== this.left.length)
      throw new RangeError(
        `selection: expected ${this.left.length} values, one of each that is still in, got ${values.length}`,
      );
    this.rounds++;
    for (const [at, each] of this.left.entries()) {
      const value = defined(values[at]);
      each.sum += value;
      if (this.rounds <= this.firstRounds) each.first.push(value);
    }
    if (this.rounds >= this.firstRounds) this.screen();
  }

  private get leader(): System {
    return this.left.reduce((best, each) => (each.sum > best.sum ? each : best));
  }

  private screen(): void {
    const { left, zone, h2, rounds } = this;
    // Beyond the largest N_il = floor(h^2 S^2 / zone^2) the best mean is taken.
    const most = Math.max(
      ...left.flatMap((i) => left.map((l) => Math.floor((h2 * varianceOf(i, l)) / (zone * zone)))),
    );
    this.left =
      rounds > most
        ? [this.leader]
        : left.filter((i) =>
            left.every(
              (l) => l === i || i.sum / rounds >= l.sum / rounds - slack(zone, rounds, h2, varianceOf(i, l)),
            ),
          );
  }
}

interface System {
  readonly id: number;
  sum: number;
  /** Values of the first rounds. */
  readonly first: number[];
}

/** Of the differences in the first rounds. */
const varianceOf = (i: System, l: System): number =>
  sampleVariance(i.first.map((value, r) => value - defined(l.first[r])));

/** By how much a mean may be behind another after so many rounds and be no worse; `variance`: S_il^2. */
const slack = (zone: number, rounds: number, h2: number, variance: number): number =>
  Math.max(0, (zone / (2 * rounds)) * ((h2 * variance) / (zone * zone) - rounds));

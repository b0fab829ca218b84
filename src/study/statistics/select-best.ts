import { sampleVariance } from 'simple-statistics';

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
  /** Numbers of those still in, ascending. */
  alive: number[];
  private readonly sums: Float64Array;
  private readonly first: number[][];
  private readonly h2: number;
  private variances: Float64Array | undefined;
  private rounds = 0;

  /**
   * @param count k, at least 1; the larger value is the better one
   * @param firstRounds n0, at least 2; nobody is ruled out before
   * @param zone difference that matters, in the unit of the values, above 0
   */
  constructor(
    private readonly count: number,
    private readonly firstRounds: number,
    private readonly zone: number,
    level: number,
  ) {
    if (!(firstRounds >= 2))
      throw new RangeError(`selection: expected at least 2 first rounds, saw ${firstRounds}`);
    if (!(zone > 0)) throw new RangeError(`selection: expected an indifference zone above 0, saw ${zone}`);
    this.alive = Array.from({ length: count }, (_, i) => i);
    this.sums = new Float64Array(count);
    this.first = this.alive.map(() => []);
    const eta = count < 2 ? 0 : (((2 * (1 - level)) / (count - 1)) ** (-2 / (firstRounds - 1)) - 1) / 2;
    this.h2 = 2 * eta * (firstRounds - 1);
  }

  /** Whether one is left. */
  get isOver(): boolean {
    return this.alive.length === 1;
  }

  /** Rounds taken in. */
  get round(): number {
    return this.rounds;
  }

  /** The best mean of those still in; the first of equal ones. */
  get best(): number {
    return this.alive.reduce((best, i) => (this.sums[i]! > this.sums[best]! ? i : best), this.alive[0]!);
  }

  /** Takes in the values of one round, in the order of `alive`, and rules out who is clearly behind. */
  add(values: readonly number[]): void {
    if (values.length !== this.alive.length)
      throw new RangeError(
        `selection: expected ${this.alive.length} values, one of each that is still in, saw ${values.length}`,
      );
    this.rounds++;
    this.alive.forEach((i, at) => {
      this.sums[i]! += values[at]!;
      if (this.rounds <= this.firstRounds) this.first[i]!.push(values[at]!);
    });
    if (this.rounds < this.firstRounds) return;
    this.variances ??= this.differenceVariances();
    this.screen(this.variances);
  }

  private screen(variances: Float64Array): void {
    const { alive, sums, count, zone, h2, rounds } = this;
    // Beyond the largest N_il = floor(h^2 S^2 / zone^2) the best mean is taken.
    const most = Math.max(
      0,
      ...alive.flatMap((i) => alive.map((l) => Math.floor((h2 * variances[i * count + l]!) / (zone * zone)))),
    );
    if (rounds > most) {
      this.alive = [this.best];
      return;
    }
    this.alive = alive.filter((i) =>
      alive.every((l) => {
        if (l === i) return true;
        const slack = Math.max(
          0,
          (zone / (2 * rounds)) * ((h2 * variances[i * count + l]!) / (zone * zone) - rounds),
        );
        return sums[i]! / rounds >= sums[l]! / rounds - slack;
      }),
    );
  }

  private differenceVariances(): Float64Array {
    const { count, first } = this,
      variances = new Float64Array(count * count);
    for (let i = 0; i < count; i++) {
      for (let l = 0; l < i; l++)
        variances[i * count + l] = variances[l * count + i] = sampleVariance(
          first[i]!.map((value, r) => value - first[l]![r]!),
        );
    }
    return variances;
  }
}

import { exp } from '../../../random/elementary.js';

/** More kinds than this are taken as independent draws. */
const MOST_KINDS = 48;
/** Points of the integral for each unit that comes. */
const FINE = 16;

/**
 * Chances that a lot of kind j follows one of kind i, at i * kinds + j; all add to 1. Units of all kinds
 * come in a row of independent draws; the first that waits decides on the kind of the next lot, which takes
 * n units of its kind, and there are always enough.
 *
 * So each n-th unit of a kind begins a lot, and lots go in the order of these. Spread over time as a Poisson
 * process of rate 1, which leaves the order as it is, the kinds are independent, and lots of one kind begin
 * as a renewal process with Erlang(n, p) times between: a superposition of renewal processes (Cox & Smith
 * 1954, Biometrika 41, 91-99; from memory). The next lot is of kind j if its forward recurrence time, of
 * density p_j P(Erlang > t) / n, is less than those of all others, and than a whole time of kind i. With n =
 * 1 these are the p_i p_j of independent draws.
 * @param shares of the kinds among the units, above 0; they add to 1
 */
export function inTurn(shares: readonly number[], n: number): Float64Array {
  const count = shares.length,
    chances = new Float64Array(count * count);
  if (count > MOST_KINDS) return chances.map((_, at) => shares[Math.floor(at / count)] * shares[at % count]);
  // Beyond this no lot is likely to be still to come: one of count kinds has n of so many units.
  const end = count * n + 10 * Math.sqrt(count * n) + 40,
    points = 2 * Math.ceil((end * FINE) / 2),
    step = end / points;
  /** By kind: that a whole time, the rest of one, lasts beyond t; density of a whole time. */
  const whole = new Float64Array(count),
    rest = new Float64Array(count),
    ends = new Float64Array(count);
  for (let point = 0; point <= points; point++) {
    // Simpson's rule.
    const weight = ((point === 0 || point === points ? 1 : point % 2 === 1 ? 4 : 2) * step) / 3;
    let none = 1;
    for (let i = 0; i < count; i++) {
      const mean = shares[i] * point * step;
      let term = exp(-mean),
        more = term,
        mixed = term;
      for (let m = 1; m < n; m++) {
        term *= mean / m;
        more += term;
        mixed += more;
      }
      whole[i] = more;
      rest[i] = mixed / n;
      ends[i] = shares[i] * term;
      none *= rest[i];
    }
    if (none === 0) break;
    for (let i = 0; i < count; i++)
      for (let j = 0; j < count; j++) {
        const others = none / rest[i];
        chances[i * count + j] +=
          weight *
          shares[i] *
          (i === j ? others * ends[i] : ((others / rest[j]) * whole[i] * shares[j] * whole[j]) / n);
      }
  }
  return chances;
}

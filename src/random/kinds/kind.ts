/** Mean and variance: the unit of the values, and its square. */
export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Fills out[from] to out[to - 1] with the next values of a stream, whose state begins at `at`. `scratch`
 * holds at least twice as many numbers and may be overwritten.
 */
export type Fill = (
  out: Float64Array,
  from: number,
  to: number,
  state: Int32Array,
  at: number,
  scratch: Float64Array,
) => void;

/**
 * All that has to be known of one kind of distribution; `D` holds its parameters. Where one uniform makes one
 * value, the value rises with the uniform throughout, or falls throughout, so that two scenarios that differ
 * a little in a parameter see nearly the same luck.
 *
 * Moments: Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, 1994-95, from memory.
 */
export interface Kind<D> {
  /**
   * @throws RangeError naming kind, parameter and value when it has no meaning: a bound out of order, a shape
   * of zero, no values to choose from
   */
  check(distribution: D): void;
  moments(distribution: D): Moments;
  /** The greatest number that no value can fall below. */
  least(distribution: D): number;
  /**
   * The distribution of `factor` (above 0) times the quantity: the form and the coefficient of variation
   * stay.
   */
  scaled(distribution: D, factor: number): D;
  /** Makes it ready for drawing; one without spread is a constant. */
  filling(distribution: D): Fill;
}

/** `scaled` of a kind of which these parameters have the unit of the values. */
export const scaling =
  <Name extends string>(...names: readonly Name[]) =>
  <D extends Record<Name, number>>(distribution: D, factor: number): D => ({
    ...distribution,
    ...Object.fromEntries(names.map((name) => [name, distribution[name] * factor])),
  });

/** Throws a RangeError that names what was looked at, what would be right, and what came. */
export function refuse(what: string, expected: string, got: unknown): never {
  throw new RangeError(`${what}: expected ${expected}, got ${String(got)}`);
}

export function mustBeFinite(what: string, value: number): void {
  if (!Number.isFinite(value)) refuse(what, 'a finite number', value);
}

/** Finite and above zero. */
export function mustBePositive(what: string, value: number): void {
  if (!(value > 0 && value < Infinity)) refuse(what, 'a finite number above 0', value);
}

/** Finite and not below zero. */
export function mustNotBeNegative(what: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) refuse(what, 'a finite number of 0 or more', value);
}

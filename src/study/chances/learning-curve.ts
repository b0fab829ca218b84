import { exp, log } from '../../random/elementary.js';
import { power } from '../../random/power.js';
import { mean, sumOf } from '../statistics/sums.js';
import { leastSquares } from './line.js';

/** What a learning rate applies to: the time of the n-th unit (Crawford), or the mean of the first n (Wright). */
export type Curve = 'unit' | 'cumulative mean';

/** A time of a step, and the how manieth time it was. */
export interface TimedUnit {
  /** From 1. */
  readonly unit: number;
  /** Above 0. */
  readonly minutes: number;
}

/** A curve through the logarithms of times by least squares. */
export interface FittedCurve {
  readonly curve: Curve;
  /** B of n^b; the learning rate is 2^b. */
  readonly slope: number;
  readonly slopeError: number;
  readonly freedom: number;
  /** Time of the first unit: geometric mean, minutes. */
  readonly first: number;
  /** From this unit on times fall no more; Infinity where they go on falling. */
  readonly flatFrom: number;
  /** Of the logarithms about the curve. */
  readonly standardDeviation: number;
  /** N ln(squares / n) + 2 x parameters (Akaike 1974; Burnham & Anderson 2002, sec. 2.2), without constants. */
  readonly aic: number;
}

/** Ln of what is left of the first unit's time at the n-th, of either curve, as the simulation has it. */
export function logFactor(
  { curve, slope, flatFrom }: Pick<FittedCurve, 'curve' | 'slope' | 'flatFrom'>,
  n: number,
) {
  const unit = Math.min(n, flatFrom);
  return curve === 'unit' ? slope * log(unit) : log(wrightFactor(slope, unit));
}

/** The n-th unit where the mean of the first n is n^b times the first: n^(b + 1) - (n - 1)^(b + 1). */
const wrightFactor = (b: number, n: number): number => power(n, b + 1) - power(n - 1, b + 1);

/** Crawford's form: ln minutes = ln first + b ln unit (Crawford 1944; Yelle 1979, Decision Sciences 10, 302-328). */
export const unitCurve = (times: readonly TimedUnit[]): FittedCurve => flatFrom(logsOf(times), Infinity);

interface Logs {
  readonly unit: readonly number[];
  readonly minutes: readonly number[];
}

const logsOf = (times: readonly TimedUnit[]): Logs => ({
  unit: times.map(({ unit }) => log(unit)),
  minutes: times.map(({ minutes }) => log(minutes)),
});

function flatFrom({ unit, minutes }: Logs, from: number): FittedCurve {
  const straight = from === Infinity,
    bend = straight ? Infinity : log(from),
    line = leastSquares(straight ? unit : unit.map((each) => Math.min(each, bend)), minutes);
  return {
    curve: 'unit',
    slope: line.slope,
    slopeError: line.slopeError,
    freedom: line.freedom - (straight ? 0 : 1),
    first: exp(line.intercept),
    flatFrom: from,
    standardDeviation: line.standardDeviation,
    aic: akaike(minutes.length, line.squares, straight ? 3 : 4),
  };
}

/**
 * The same that falls to a floor and stays there: of the units at which it may begin the one with the least
 * squares, at least three different units on either side (a line in two parts that meet: Hinkley 1969,
 * Biometrika 56, 495-504).
 */
export function flatteningCurve(times: readonly TimedUnit[]): FittedCurve | null {
  const logs = logsOf(times),
    units = [...new Set(times.map(({ unit }) => unit))].sort((a, b) => a - b);
  let best: FittedCurve | null = null,
    last = 0;
  for (const from of units.slice(BESIDE_BEND, -BESIDE_BEND)) {
    if (from < last * APART) continue;
    last = from;
    const curve = flatFrom(logs, from);
    if (best === null || curve.aic < best.aic) best = curve;
  }
  return best;
}
const BESIDE_BEND = 3,
  /** Bends closer to each other are not told apart, and thousands of units need not all be tried. */
  APART = 1.04;

/**
 * Wright's form, fitted to the times of units: squares of ln minutes - ln (n^(b+1) - (n-1)^(b+1)) about their
 * mean are least (Wright 1936). Cumulative means themselves hang together, so that a line through them would
 * have an interval much too narrow, and they need every unit from the first on. The standard error is that of
 * the curve made straight at its best b (Seber & Wild 1989, Nonlinear Regression, sec. 2.1).
 */
export function wrightCurve(times: readonly TimedUnit[]): FittedCurve {
  const logs = times.map(({ minutes }) => log(minutes)),
    restsAt = (b: number): number[] =>
      times.map(({ unit }, i) => (logs[i] ?? NaN) - log(wrightFactor(b, unit))),
    squaresAt = (b: number): number => squaresOf(restsAt(b)),
    slope = leastAt(squaresAt, STEEPEST, SHALLOWEST),
    squares = squaresAt(slope),
    freedom = times.length - 2,
    steps = times.map(
      ({ unit }) =>
        (log(wrightFactor(slope + STEP, unit)) - log(wrightFactor(slope - STEP, unit))) / (2 * STEP),
    );
  return {
    curve: 'cumulative mean',
    slope,
    slopeError: Math.sqrt(squares / freedom / squaresOf(steps)),
    freedom,
    first: exp(mean(restsAt(slope))),
    flatFrom: Infinity,
    standardDeviation: Math.sqrt(squares / freedom),
    aic: akaike(times.length, squares, 3),
  };
}
/** At b = -1 nothing is left of the second unit's time: rates of 52 % and more. */
const STEEPEST = -0.95,
  SHALLOWEST = 2,
  STEP = 1e-5;

const squaresOf = (values: readonly number[]): number => {
  const middle = mean(values);
  return sumOf(values, (value) => (value - middle) * (value - middle));
};

/** Parameters count the spread too. */
const akaike = (n: number, squares: number, parameters: number): number =>
  n * log(Math.max(squares, Number.MIN_VALUE) / n) + 2 * parameters;

const GOLDEN = (Math.sqrt(5) - 1) / 2,
  CLOSE = 1e-9;

/** Where a function with one valley is least, by golden section. */
function leastAt(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [fa, fb] = [f(a), f(b)];
  while (high - low > CLOSE) {
    if (fa <= fb) {
      [high, b, fb] = [b, a, fa];
      a = high - GOLDEN * (high - low);
      fa = f(a);
    } else {
      [low, a, fa] = [a, b, fb];
      b = low + GOLDEN * (high - low);
      fb = f(b);
    }
  }
  return (low + high) / 2;
}

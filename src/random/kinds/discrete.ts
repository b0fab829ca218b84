import { fillUniform } from '../streams.js';
import type { Kind, Moments } from './kind.js';
import { mustBeFinite, mustBePositive, mustNotBeNegative, refuse } from './kind.js';

/** One of several values, by weight. */
export interface Discrete {
  readonly kind: 'discrete';
  readonly values: readonly number[];
  readonly weights: readonly number[];
}

/** Observed values, each as likely as the next. */
export interface Empirical {
  readonly kind: 'empirical';
  readonly values: readonly number[];
}

const scaledValues = <D extends Discrete | Empirical>(distribution: D, factor: number): D => ({
  ...distribution,
  values: distribution.values.map((value) => value * factor),
});

export const discrete: Kind<Discrete> = {
  check({ values, weights }) {
    checkValues('discrete', values);
    checkWeights('discrete', weights, values.length, 'values');
  },
  moments: ({ values, weights }) => weightedMoments(values, weights),
  least: ({ values, weights }) => leastValue(values.filter((_, k) => weights[k] > 0)),
  scaled: scaledValues,
  filling({ values: all, weights }) {
    // A value of no weight is left out, so that no rounding of the running sum can ever pick it.
    const values = Float64Array.from(all.filter((_, k) => weights[k] > 0)),
      choose = choosing(weights);
    return (out, from, to, state, at) => {
      choose(out, from, to, state, at);
      for (let k = from; k < to; k++) out[k] = values[out[k]];
    };
  },
};

export const empirical: Kind<Empirical> = {
  check({ values }) {
    checkValues('empirical', values);
  },
  moments: ({ values }) =>
    weightedMoments(
      values,
      values.map(() => 1),
    ),
  least: ({ values }) => leastValue(values),
  scaled: scaledValues,
  filling(distribution) {
    const values = Float64Array.from(distribution.values),
      count = values.length;
    return (out, from, to, state, at) => {
      fillUniform(out, from, to, state, at);
      for (let k = from; k < to; k++) out[k] = values[Math.floor(out[k] * count)];
    };
  },
};

function checkValues(kind: string, values: readonly number[]): void {
  if (values.length === 0) refuse(`${kind} values`, 'one number or more', 'none');
  values.forEach((value, k) => {
    mustBeFinite(`${kind} values[${k}]`, value);
  });
}

export function checkWeights(kind: string, weights: readonly number[], count: number, ofWhat: string): void {
  if (weights.length !== count)
    refuse(`${kind} weights`, `as many as the ${ofWhat} (${count})`, weights.length);
  weights.forEach((weight, k) => {
    mustNotBeNegative(`${kind} weights[${k}]`, weight);
  });
  mustBePositive(
    `sum of the ${kind} weights`,
    weights.reduce((sum, weight) => sum + weight, 0),
  );
}

/** Fills with choices among the weights above 0: 0 for the first of them, by one uniform each. */
export function choosing(weights: readonly number[]): (...block: Parameters<typeof fillUniform>) => void {
  const upTo = runningShares(weights.filter((weight) => weight > 0));
  return (out, from, to, state, at) => {
    fillUniform(out, from, to, state, at);
    for (let k = from; k < to; k++) out[k] = firstAbove(upTo, out[k]);
  };
}

/** The share of the sum up to each weight; the last is 1. */
function runningShares(weights: readonly number[]): Float64Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let sum = 0;
  const upTo = Float64Array.from(weights, (weight) => (sum += weight) / total);
  upTo[upTo.length - 1] = 1;
  return upTo;
}

/** Binary search, O(log n). */
function firstAbove(upTo: Float64Array, u: number): number {
  let first = 0,
    last = upTo.length - 1;
  while (first < last) {
    const middle = (first + last) >> 1;
    if (u < upTo[middle]) last = middle;
    else first = middle + 1;
  }
  return first;
}

function weightedMoments(values: readonly number[], weights: readonly number[]): Moments {
  let total = 0,
    sum = 0,
    squares = 0;
  values.forEach((value, k) => {
    total += weights[k];
    sum += weights[k] * value;
  });
  const mean = sum / total;
  values.forEach((value, k) => {
    squares += weights[k] * (value - mean) * (value - mean);
  });
  return { mean, variance: squares / total };
}

/** A loop, for observed values can be more than a call takes arguments. */
function leastValue(values: readonly number[]): number {
  let smallest = Infinity;
  for (const value of values) if (value < smallest) smallest = value;
  return smallest;
}

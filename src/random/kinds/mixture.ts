import { checkWeights, choosing } from './discrete.js';
import type { Kind } from './kind.js';
import { refuse } from './kind.js';
import { SIMPLE, type Simple } from './simple.js';

/** Now one distribution, now another, by weight: a quick case and a long one. */
export interface Mixture {
  readonly kind: 'mixture';
  readonly parts: readonly Simple[];
  readonly weights: readonly number[];
}

const kindOf = ({ kind }: Simple): Kind<Simple> => SIMPLE[kind];

/**
 * Mean and variance by the laws of total expectation and total variance (W. Feller, An Introduction to
 * Probability Theory and Its Applications 1, 1968, chapter IX; from memory).
 */
export const mixture: Kind<Mixture> = {
  check({ parts, weights }) {
    if (parts.length === 0) refuse('mixture parts', 'one or more', 'none');
    checkWeights('mixture', weights, parts.length, 'parts');
    for (const part of parts) kindOf(part).check(part);
  },
  moments({ parts, weights }) {
    const all = parts.map((part) => kindOf(part).moments(part)),
      sumOf = (value: (k: number) => number): number =>
        weights.reduce((sum, weight, k) => sum + weight * value(k), 0),
      total = sumOf(() => 1),
      mean = sumOf((k) => all[k].mean) / total,
      away = (k: number): number => all[k].mean - mean;
    return { mean, variance: sumOf((k) => all[k].variance + away(k) * away(k)) / total };
  },
  least: ({ parts, weights }) =>
    Math.min(...parts.filter((_, k) => weights[k] > 0).map((part) => kindOf(part).least(part))),
  scaled: (distribution, factor) => ({
    ...distribution,
    parts: distribution.parts.map((part) => kindOf(part).scaled(part, factor)),
  }),
  /**
   * Each block holds first all choices, then values of every part, used or not: so what a share or a time
   * of one part is leaves the choices and the values of the parts before it as they were.
   */
  filling({ parts, weights }) {
    const fills = parts.filter((_, k) => weights[k] > 0).map((part) => kindOf(part).filling(part)),
      choose = choosing(weights);
    let values = new Float64Array(0),
      spare = values;
    return (out, from, to, state, at) => {
      const count = to - from;
      if (values.length < fills.length * count) {
        values = new Float64Array(fills.length * count);
        spare = new Float64Array(2 * count);
      }
      choose(out, from, to, state, at);
      for (let p = 0; p < fills.length; p++) fills[p](values, p * count, (p + 1) * count, state, at, spare);
      for (let k = from; k < to; k++) out[k] = values[out[k] * count + k - from];
    };
  },
};

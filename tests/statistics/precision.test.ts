import { describe, expect, it } from 'vitest';
import { fillUniform, STATE_WORDS, seedStream, streamName } from '../../src/random/streams.js';
import { UntilPrecise } from '../../src/study/answer/precision.js';
import { LEAST_FOR_PRECISION } from '../../src/study/answer/precision-measures.js';
import { Deferred } from '../../src/study/sample/deferred.js';
import { type Estimate } from '../../src/study/statistics/estimate.js';
import { asAmount } from '../../src/study/statistics/interval.js';
import { Moments } from '../../src/study/statistics/moments.js';
import { skewedInterval } from '../../src/study/statistics/skewed-interval.js';
import { SLOW } from './agree.js';

const STUDIES = 1000,
  MOST = 10_000,
  LEVEL = 0.95;
/**
 * Right intervals hold the truth in 950 of 1,000 studies, with a standard deviation of 6.9: 3.5 of them to
 * either side.
 */
const FEWEST = 926,
  MOST_HELD = 974;

/** Values one after another from a stream of their own, each by the inverse of its distribution. */
function drawn(study: number, ofShare: (share: number) => number): (count: number) => number[] {
  const state = new Int32Array(STATE_WORDS),
    shares = new Float64Array(1);
  seedStream(state, 0, streamName('precision', study, 'draw'));
  return (count) =>
    Array.from({ length: count }, () => {
      fillUniform(shares, 0, 1, state, 0);
      return ofShare(shares[0]);
    });
}

/** The interval that a study stops with, its replications being such values. */
function stoppedWith(draw: (count: number) => number[], asked: number): Estimate {
  const moments = new Moments(),
    estimate = new Deferred(() => asAmount(skewedInterval(moments, LEVEL)));
  const until = new UntilPrecise([{ name: 'wip', estimate }], { asked, of: ['wip'], most: MOST });
  for (let next: number | null = LEAST_FOR_PRECISION; next !== null; next = until.next(moments.n))
    for (const value of draw(next - moments.n)) moments.add(value);
  return estimate.value;
}

/**
 * Of 1,000 studies that stop by themselves: how many have an interval that holds the truth, and replications
 * that they take in the mean.
 */
function stopped(
  asked: number,
  truth: number,
  ofShare: (share: number) => number,
): { held: number; replications: number } {
  const found = Array.from({ length: STUDIES }, (_, study) => stoppedWith(drawn(study, ofShare), asked));
  return {
    held: found.filter(({ low, high }) => low! <= truth && truth <= high!).length,
    replications: found.reduce((sum, { n }) => sum + n, 0) / STUDIES,
  };
}

const exponential = (share: number): number => -Math.log1p(-share);
const even = (share: number): number => 10 + share;

describe('a study that stops when its interval is narrow enough', SLOW, () => {
  // With g / (1 + g) the relative half-width, n = (1.96 cv (1 + g) / g)^2 replications are needed.
  it.each([
    ['exponential, cv 1', 0.109, 1, exponential],
    ['evenly spread from 10 to 11, cv 0.0275', 0.0027, 10.5, even],
  ] as const)(
    'holds the truth as often as it says where it takes hundreds (Chow & Robbins 1965; Law 2015, ch. 9): %s',
    (_, asked, truth, ofShare) => {
      const { held, replications } = stopped(asked, truth, ofShare);
      expect(replications).toBeGreaterThan(300);
      expect(held).toBeGreaterThanOrEqual(FEWEST);
      expect(held).toBeLessThanOrEqual(MOST_HELD);
    },
  );

  // With Student's t, from ten replications on and without the quarter more, 908 held.
  it('holds it as often where it takes a few dozen of a skewed distribution', () => {
    const { held, replications } = stopped(0.6, 1, exponential);
    expect(replications).toBeGreaterThan(30);
    expect(replications).toBeLessThan(70);
    expect(held).toBeGreaterThanOrEqual(FEWEST);
    expect(held).toBeLessThanOrEqual(MOST_HELD);
  });
});

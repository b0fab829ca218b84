import { describe, expect, it } from 'vitest';
import { type Distribution, meanOf, varianceOf } from '../../../src/random/distribution.js';
import { gammaOf, lognormalOf, weibullOf } from '../../../src/random/shapes.js';
import { built } from '../built.js';

const SAMPLES = 1000;
const LOGNORMAL = lognormalOf(42, 0.3),
  GAMMA = gammaOf(42, 0.5),
  WEIBULL = weibullOf(42, 0.6),
  EXPONENTIAL: Distribution = { kind: 'exponential', mean: 42 },
  NORMAL: Distribution = { kind: 'normal', mean: 42, sd: 8, low: 0, high: 90 };
const familyOf = (name: string) => built.FAMILIES.find((family) => family.name === name)!;

/** So many samples, each of the size. */
function* samples(distribution: Distribution, size: number, count: number): Generator<number[]> {
  const draws = new built.Draws(distribution, size, `true samples of ${JSON.stringify(distribution)}`);
  for (let k = 0; k < count; k++) yield [...draws.next()];
}

/** How often something holds, of 1,000 samples. */
function share(distribution: Distribution, size: number, holds: (times: number[]) => boolean): number {
  let count = 0;
  for (const times of samples(distribution, size, SAMPLES)) if (holds(times)) count++;
  return count / SAMPLES;
}

describe('statistics of fitted distributions have their published 5 % points', () => {
  // R. B. D'Agostino & M. A. Stephens, Goodness-of-Fit Techniques, 1986, tables 4.7, 4.8, 4.13, 4.14 and 4.18 (the
  // largest extreme value is minus the logarithm of a Weibull); from memory. n = 50.
  const n = 50,
    root = Math.sqrt(n);
  it.each([
    ['lognormal', LOGNORMAL, 'A', (a: number) => a * (1 + 0.75 / n + 2.25 / (n * n)), 0.752],
    ['lognormal', LOGNORMAL, 'D', (d: number) => d * (root - 0.01 + 0.85 / root), 0.895],
    ['exponential', EXPONENTIAL, 'A', (a: number) => a * (1 + 0.6 / n), 1.321],
    ['exponential', EXPONENTIAL, 'D', (d: number) => (d - 0.2 / n) * (root + 0.26 + 0.5 / root), 1.094],
    ['weibull', WEIBULL, 'A', (a: number) => a * (1 + 0.2 / root), 0.757],
    ['weibull', WEIBULL, 'D', (d: number) => d * root, 0.856],
  ] as const)('%s %# (%s)', (name, distribution, which, modified, point) => {
    const family = familyOf(name),
      found: number[] = [];
    for (const times of samples(distribution, n, 4000)) {
      const sample = built.sampleOf(times),
        shares = built.sharesAt(sample.values, family.curve(family.fit(sample)!).cdf);
      found.push(modified(which === 'A' ? built.andersonDarling(shares) : built.kolmogorovSmirnov(shares)));
    }
    // The standard error of a 95 % point of 4,000 is some 1 to 2 % of it.
    const beyond = found.filter((value) => value > point).length / found.length;
    expect(beyond).toBeGreaterThan(0.04);
    expect(beyond).toBeLessThan(0.06);
  });
});

describe('the tests of fit reject 3 to 7 % of true samples', () => {
  it.each([
    ['lognormal', LOGNORMAL, 30, 0],
    ['exponential', EXPONENTIAL, 30, 0],
    ['gamma', GAMMA, 25, 0],
    ['weibull', WEIBULL, 25, 0],
    // As a planner writes them down: every fifth minute.
    ['lognormal', LOGNORMAL, 40, 5],
  ] as const)('%s %o, %d of them, unit %d', (name, distribution, size, unit) => {
    const family = familyOf(name);
    const draws = new built.Draws(distribution, size, `true samples, ${name}`, unit);
    let a = 0,
      d = 0;
    for (let k = 0; k < SAMPLES; k++) {
      const sample = built.sampleOf(draws.next()),
        tests = built.testsOfFit(family, family.fit(sample)!, sample, {
          simulated: 400,
          stream: `test ${k}`,
          unit,
        });
      if (tests.andersonDarling.p < 0.05) a++;
      if (tests.kolmogorovSmirnov.p < 0.05) d++;
    }
    for (const rejected of [a, d]) {
      expect(rejected / SAMPLES).toBeGreaterThanOrEqual(0.03);
      expect(rejected / SAMPLES).toBeLessThanOrEqual(0.07);
    }
  });
});

describe('intervals of mean and cv hold the true ones in 93 to 97 % of 1,000 samples', () => {
  it.each([
    ['lognormal', LOGNORMAL, 50],
    ['gamma', GAMMA, 50],
    ['weibull', WEIBULL, 50],
    ['exponential', EXPONENTIAL, 50],
  ] as const)('%s %o', (name, distribution, n) => {
    const family = familyOf(name),
      mean = meanOf(distribution),
      cv = Math.sqrt(varianceOf(distribution)) / mean;
    let means = 0,
      cvs = 0;
    for (const times of samples(distribution, n, SAMPLES)) {
      const known = built.knownOf(family.fit(built.sampleOf(times))!, n, {
        simulated: 199,
        stream: `intervals ${means} ${cvs}`,
      })!;
      if (known.mean.low <= mean && mean <= known.mean.high) means++;
      if (known.cv.low <= cv && cv <= known.cv.high) cvs++;
    }
    expect(means / SAMPLES).toBeGreaterThanOrEqual(0.93);
    expect(means / SAMPLES).toBeLessThanOrEqual(0.97);
    // The cv of an exponential is 1, known beforehand.
    if (name === 'exponential') expect(cvs).toBe(SAMPLES);
    else {
      expect(cvs / SAMPLES).toBeGreaterThanOrEqual(0.93);
      expect(cvs / SAMPLES).toBeLessThanOrEqual(0.97);
    }
  });
});

describe('warnings cry wolf seldom, and see what is there', () => {
  const level = (rejected: number): void => {
    expect(rejected).toBeGreaterThanOrEqual(0.03);
    expect(rejected).toBeLessThanOrEqual(0.07);
  };
  const order = Array.from({ length: 40 }, (_, i) => i);

  it('drift, neighbours and options have their level of 5 % with skewed times', () => {
    level(share(LOGNORMAL, 40, (times) => built.drift(order, times).p < 0.05));
    level(share(LOGNORMAL, 40, (times) => built.nextCorrelation(times).p < 0.05));
    level(
      share(LOGNORMAL, 40, (times) => built.kruskalWallis([times.slice(0, 25), times.slice(25)]).p < 0.05),
    );
    level(
      share(GAMMA, 40, (times) => {
        const groups = [times.slice(0, 8), times.slice(8, 20), times.slice(20)];
        return built.kruskalWallis(groups).p < 0.05;
      }),
    );
  });

  it.each([
    ['lognormal', LOGNORMAL],
    ['gamma', GAMMA],
    ['weibull', WEIBULL],
    ['normal', NORMAL],
    ['exponential', EXPONENTIAL],
  ])('no time is said to be far from all others in 97 of 100 samples of a %s', (_, distribution) => {
    expect(share(distribution, 60, (times) => built.farOut(times).length > 0)).toBeLessThanOrEqual(0.03);
  });

  it('a time of ten others is seen', () => {
    expect(share(LOGNORMAL, 60, (times) => built.farOut([...times, 420]).includes(60))).toBeGreaterThan(0.95);
  });

  const bestOf = (times: number[]) => {
    const sample = built.sampleOf(times),
      best = built.FAMILIES.filter(({ isBounded }) => !isBounded)
        .flatMap((family) => built.fitFamily(family, sample) ?? [])
        .reduce((a, b) => (b.aic < a.aic ? b : a));
    return built.twoPopulations(sample, best.distribution, { stream: `two ${times[0]}`, unit: 0 });
  };
  it.each([
    ['lognormal', LOGNORMAL],
    ['gamma', GAMMA],
    ['weibull', WEIBULL],
  ])('two kinds of work are told of one in no more than 2 of 100 samples of a %s', (_, distribution) => {
    let told = 0;
    for (const times of samples(distribution, 60, 200)) if ((bestOf(times)?.p ?? 1) < 0.01) told++;
    expect(told / 200).toBeLessThanOrEqual(0.02);
  });

  it('two kinds of work, 30 and 75 minutes, are seen in 9 of 10 samples, with their shares and means', () => {
    const mixed: Distribution = {
      kind: 'mixture',
      parts: [lognormalOf(30, 0.2), lognormalOf(75, 0.2)],
      weights: [0.7, 0.3],
    };
    let told = 0,
      right = 0;
    for (const times of samples(mixed, 60, 60)) {
      const found = bestOf(times);
      if (found === undefined || found.p >= 0.01) continue;
      told++;
      const { parts, weights } = found.mixture,
        [short, long] = parts.map(meanOf);
      if (Math.abs(short - 30) < 3 && Math.abs(long - 75) < 11 && Math.abs(weights[0] - 0.7) < 0.18) right++;
    }
    expect(told).toBeGreaterThanOrEqual(54);
    expect(right).toBeGreaterThanOrEqual(0.95 * told);
  });
});

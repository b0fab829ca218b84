import { describe, expect, it } from 'vitest';
import type { Distribution } from '../../../src/random/distribution.js';
import { gammaOf, lognormalOf } from '../../../src/random/shapes.js';
import { built } from '../built.js';

const familyOf = (name: string) => built.FAMILIES.find((family) => family.name === name)!;
function* samples(distribution: Distribution, size: number, count: number): Generator<number[]> {
  const draws = new built.Draws(distribution, size, `shown, ${JSON.stringify(distribution)}, ${size}`);
  for (let k = 0; k < count; k++) yield [...draws.next()];
}

describe('the band of a quantile plot holds all points of 93 to 97 % of true samples', () => {
  // 1,000 samples: a standard error of 0.7 %; the band itself is of 199 simulated samples.
  it.each([
    ['lognormal', lognormalOf(42, 0.3), 30, 0],
    ['gamma', gammaOf(42, 0.5), 60, 0],
    ['lognormal', lognormalOf(42, 0.3), 40, 5],
  ] as const)('%s %o, %d times, unit %d', (name, distribution, size, unit) => {
    const family = familyOf(name),
      ranks = Array.from({ length: size }, (_, i) => i);
    let inside = 0,
      count = 0;
    for (const times of samples(distribution, size, 1000)) {
      const rounded = unit > 0 ? times.map((time) => Math.max(1, Math.round(time / unit)) * unit) : times,
        sample = built.sampleOf(rounded),
        band = built.bandOf(family, family.fit(sample)!, sample, {
          ...{ ranks, level: 0.95, stream: `band ${count}`, unit },
        })!;
      count++;
      if (band.outside.length === 0) inside++;
    }
    expect(inside / count).toBeGreaterThan(0.93);
    expect(inside / count).toBeLessThan(0.97);
  });
  it('does not hold those of another law: uniform times as lognormal, of 100 in most samples', () => {
    const family = familyOf('lognormal'),
      ranks = Array.from({ length: 100 }, (_, i) => i);
    let out = 0;
    for (const times of samples({ kind: 'uniform', low: 10, high: 60 }, 100, 100)) {
      const sample = built.sampleOf(times),
        band = built.bandOf(family, family.fit(sample)!, sample, {
          ...{ ranks, level: 0.95, stream: `other ${out}`, unit: 0 },
        })!;
      if (band.outside.length > 0) out++;
    }
    expect(out).toBeGreaterThan(80);
  });
});

describe('a scenario that is right', () => {
  it('is said to differ in any of eight steps in at most 7 % of tables', () => {
    // Skewed times of few: the worst for Student's interval that is compared at all.
    const all = [...samples(lognormalOf(42, 0.4), 12, 8 * 1000)];
    let wrong = 0;
    for (let k = 0; k < 1000; k++) {
      const steps = all.slice(8 * k, 8 * k + 8).map((times) => ({ times, now: 42, mix: 1 }));
      if (built.againstScenario(steps).some((each) => each?.differs != null)) wrong++;
    }
    expect(wrong / 1000).toBeLessThanOrEqual(0.07);
  });
});

describe('factors of options', () => {
  const CAB = Array.from({ length: 60 }, (_, i) => (i % 3 === 0 ? 'long' : 'short')),
    COLOUR = Array.from({ length: 60 }, (_, i) => ['red', 'white', 'lime'][Math.floor(i / 3) % 3]);
  const by = { cab: CAB, colour: COLOUR },
    told = (effect: number) =>
      [...samples(gammaOf(30, 0.25), 60, 1000)].map((times) =>
        built.takenOut(
          times.map((time, i) => (CAB[i] === 'long' ? effect * time : time)),
          by,
          ['cab', 'colour'],
        ),
      );
  it('are found where there are none in 3 to 7 % of tables', () => {
    const some = told(1).filter(({ factors }) => factors.length > 0).length;
    expect(some / 1000).toBeGreaterThan(0.03);
    expect(some / 1000).toBeLessThan(0.07);
  });
  it('are right on average, and beside a true one a false one is found in 3 to 7 %', () => {
    const found = told(1.4),
      cab = found.flatMap(({ factors }) =>
        factors.flatMap(({ option, factors: of }) => (option === 'cab' ? [of['long']] : [])),
      );
    expect(cab.length).toBeGreaterThan(980);
    // The standard error of a ratio is 7 %, of the mean of them 0.2 %.
    expect(cab.reduce((a, b) => a + b) / cab.length).toBeCloseTo(1.4, 1);
    const both = found.filter(({ factors }) => factors.length > 1).length;
    expect(both / 1000).toBeGreaterThan(0.03);
    expect(both / 1000).toBeLessThan(0.07);
  });
});

import { describe, expect, it } from 'vitest';
import { lognormalOf } from '../../../../src/random/shapes.js';
import { Draws, someOf } from '../../../../src/study/fit/goodness/draws.js';
import { SequentialP } from '../../../../src/study/fit/goodness/sequential-p.js';
import {
  andersonDarling,
  kolmogorovSmirnov,
  sharesAt,
} from '../../../../src/study/fit/goodness/statistics.js';
import { testsOfFit } from '../../../../src/study/fit/goodness/test-of-fit.js';
import { FAMILIES } from '../../../../src/study/fit/kinds/families.js';
import { sampleOf } from '../../../../src/study/fit/kinds/sample.js';

const family = (name: string) => FAMILIES.find((each) => each.name === name)!;

describe('the two statistics', () => {
  it('of one value in the middle are 2 ln 2 - 1 and 1/2', () => {
    const shares = Float64Array.from([0.5]);
    expect(andersonDarling(shares)).toBeCloseTo(2 * Math.LN2 - 1, 14);
    expect(kolmogorovSmirnov(shares)).toBe(0.5);
  });

  it('by hand: shares 0.2, 0.4, 0.9', () => {
    const shares = Float64Array.from([0.2, 0.4, 0.9]);
    const byHand =
      -3 -
      (Math.log(0.2) +
        Math.log(1 - 0.9) +
        3 * (Math.log(0.4) + Math.log(0.6)) +
        5 * (Math.log(0.9) + Math.log(0.8))) /
        3;
    expect(andersonDarling(shares)).toBeCloseTo(byHand, 12);
    expect(kolmogorovSmirnov(shares)).toBeCloseTo(2 / 3 - 0.4, 14);
  });

  it('shares of equal values are equal, and reckoned once', () => {
    let asked = 0;
    const shares = sharesAt(Float64Array.from([1, 1, 2]), (x) => {
      asked++;
      return x / 4;
    });
    expect([...shares]).toEqual([0.25, 0.25, 0.5]);
    expect(asked).toBe(2);
  });
});

describe('a p-value that ends early', () => {
  const fed = (most: number, ...isAsGreat: boolean[]): SequentialP => {
    const p = new SequentialP(most);
    for (const each of isAsGreat) p.add(each);
    return p;
  };
  const times = (n: number, value: boolean): boolean[] => Array.from({ length: n }, () => value);

  it('is 20 over the number where 20 were as great (Besag & Clifford 1991)', () => {
    const p = fed(400, ...times(20, false), ...times(30, true));
    expect([p.isDone, p.p, p.simulated]).toEqual([true, 0.5, 40]);
  });

  it('ends after 150 of which none was', () => {
    const p = fed(400, ...times(200, false));
    expect([p.isDone, p.p, p.simulated]).toEqual([true, 1 / 151, 150]);
  });

  it('is (count + 1) / (all + 1) at the end, and 19 of 400 are below 0.05', () => {
    const p = fed(400, true, ...times(381, false), ...times(18, true));
    expect([p.isDone, p.p, p.simulated]).toEqual([true, 20 / 401, 400]);
    expect(p.p).toBeLessThan(0.05);
  });
});

describe('the test of fit', () => {
  const lognormals = sampleOf(new Draws(lognormalOf(42, 0.4), 100, 'sample of this test').next()),
    options = { simulated: 400, stream: 'this test', unit: 0 };

  it('keeps a lognormal and rejects an exponential of lognormal times', () => {
    const p = (name: string): number =>
      testsOfFit(family(name), family(name).fit(lognormals)!, lognormals, options).andersonDarling.p;
    expect(p('lognormal')).toBeGreaterThan(0.05);
    expect(p('exponential')).toBeLessThan(0.01);
  });

  it('gives the same p for the same stream, and another for another', () => {
    const at = (stream: string) =>
      testsOfFit(family('lognormal'), family('lognormal').fit(lognormals)!, lognormals, {
        ...options,
        stream,
      });
    expect(at('a')).toEqual(at('a'));
    expect(at('a').andersonDarling.p).not.toBe(at('b').andersonDarling.p);
  });

  it('of rounded times simulates rounded ones: else many of them are rejected', () => {
    const rounded = sampleOf(new Draws(lognormalOf(42, 0.2), 300, 'rounded', 10).next()),
      fit = family('lognormal').fit(rounded)!,
      p = (unit: number): number =>
        testsOfFit(family('lognormal'), fit, rounded, { ...options, unit }).andersonDarling.p;
    expect(p(10)).toBeGreaterThan(0.05);
    expect(p(0)).toBeLessThan(0.01);
  });
});

describe('draws', () => {
  it('rounded ones are multiples of the unit, and none is 0', () => {
    const values = [...new Draws(lognormalOf(10, 1), 500, 'units', 15).next()];
    expect(values.every((value) => value % 15 === 0 && value > 0)).toBe(true);
  });

  it('some of a sample are values of it, each once', () => {
    const some = someOf(sampleOf(Array.from({ length: 100 }, (_, i) => i)), 30, 'some');
    expect(new Set(some.values).size).toBe(30);
    expect(some.values.every((value) => Number.isInteger(value) && value >= 0 && value < 100)).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { toExpOfLine } from '../../src/random/exponential-function.js';

describe('the exponential function', () => {
  const exp = (x: number) => {
    const out = Float64Array.of(x);
    toExpOfLine(out, 0, 1, 0, 1);
    return out[0];
  };

  it('agrees with Math.exp to 5e-16 of the value from -650 to 650', () => {
    const points = Float64Array.from({ length: 100_001 }, (_, k) => -650 + k * 0.013);
    const out = points.slice();
    toExpOfLine(out, 0, out.length, 0, 1);
    const worst = out.reduce((gap, value, k) => Math.max(gap, Math.abs(value / Math.exp(points[k]) - 1)), 0);
    expect(worst).toBeLessThan(5e-16);
  });

  it('is exact at 0 and keeps the limits at the ends of the range', () => {
    expect(exp(0)).toBe(1);
    expect(exp(1000)).toBe(Infinity);
    expect(exp(-1000)).toBe(0);
    expect(exp(NaN)).toBeNaN();
  });

  it('takes the line and the part of the array that it is given', () => {
    const out = Float64Array.of(2, 2, 2);
    toExpOfLine(out, 1, 2, 3, -1.5);
    expect([...out]).toEqual([2, 1, 2]);
  });
});

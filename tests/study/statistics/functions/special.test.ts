import { describe, expect, it } from 'vitest';
import { digamma, trigamma } from '../../../../src/study/statistics/functions/digamma.js';
import { highest } from '../../../../src/study/statistics/functions/highest.js';
import { incompleteBeta } from '../../../../src/study/statistics/functions/incomplete-beta.js';
import { incompleteGamma } from '../../../../src/study/statistics/functions/incomplete-gamma.js';
import {
  chiSquareAbove,
  normalAbove,
  normalBelow,
  normalHazard,
  studentBeyond,
} from '../../../../src/study/statistics/functions/normal.js';
import { risingRoot } from '../../../../src/study/statistics/functions/root.js';

/** All values: scipy 1.10.1 (scipy.special, scipy.stats). */
const near = (got: number, wanted: number, share = 1e-12): void => {
  expect(Math.abs(got - wanted), `${got} for ${wanted}`).toBeLessThanOrEqual(share * Math.abs(wanted));
};

describe('special functions', () => {
  it.each([
    [0.01, -100.56088545786868, 10001.621213528311],
    [0.5, -1.9635100260214235, 4.93480220054468],
    [1, -0.5772156649015329, 1.6449340668482266],
    [2.5, 0.7031566406452432, 0.4903577561002349],
    [9.9, 2.2411803166063815, 0.1062830416287406],
    [10, 2.251752589066721, 0.10516633568168576],
    [123.4, 4.8113737751162775, 0.008136651610865263],
  ])('psi(%d) and its derivative', (x, psi, derivative) => {
    near(digamma(x), psi);
    near(trigamma(x), derivative);
  });

  it.each([
    [0.5, 0.001, 0.035670591729679894, 0.9643294082703201],
    [0.5, 3, 0.9856941215645704, 0.014305878435429641],
    [1, 1, 0.6321205588285577, 0.36787944117144245],
    [4.2, 5, 0.7016346974530382, 0.2983653025469618],
    [4.2, 40, 0.9999999999999205, 7.950215796836074e-14],
    [30, 20, 0.021818217525557418, 0.9781817824744425],
    [1010.5, 1000, 0.3741183673585333, 0.6258816326414667],
    [1e5, 1e5, 0.5004205221103651, 0.4995794778896348],
  ])('P(%d, %d) and Q', (a, x, low, high) => {
    // Logarithms of large numbers are subtracted: a x ln x loses as many digits as it has.
    const share = a > 1000 ? 1e-9 : 1e-12;
    near(incompleteGamma(a, x), low, share);
    near(incompleteGamma(a, x, true), high, share);
  });

  it.each([
    [0.3, 2.5, 3.5, 0.2967529892956661],
    [0.9, 1, 5, 0.99999],
    [0.001, 0.5, 0.5, 0.020135041633377496],
    [0.5, 200, 220, 0.8357289170949257],
    [0.02, 5, 1, 3.2000000000000005e-9],
  ])('I_%d(%d, %d)', (x, a, b, wanted) => {
    near(incompleteBeta(x, a, b), wanted);
  });

  it.each([
    [-8, 0.9999999999999993],
    [-1, 0.8413447460685429],
    [0, 0.5],
    [0.5, 0.3085375387259869],
    [1.96, 0.024997895148220435],
    [6, 9.865876450376946e-10],
    [20, 2.7536241186061556e-89],
    [35, 1.1249107064724061e-268],
  ])('the normal curve above %d', (z, wanted) => {
    near(normalAbove(z), wanted, 1e-11);
    expect(normalAbove(z) + normalBelow(z)).toBeCloseTo(1, 14);
  });

  it.each([
    [-5, 1.486719940904906e-6],
    [0, 0.7978845608028654],
    [1, 1.5251352761609822],
    [10, 10.098093233962564],
    [34.9, 34.92860643774286],
    [40, 40.024968847210886],
  ])('the hazard of the normal at %d', (z, wanted) => {
    near(normalHazard(z), wanted, 1e-8);
  });

  it('chi-square and Student', () => {
    near(chiSquareAbove(3.84, 1), 0.05004352124870519);
    near(chiSquareAbove(10, 4), 0.04042768199451279);
    near(studentBeyond(2.1, 18), 0.050090405709568346);
    near(studentBeyond(-0.5, 3), 0.651447964848151);
  });
});

describe('roots and maxima', () => {
  it('a root where Newton alone runs away: atan from far off', () => {
    // The slope 1 / (1 + x^2) throws the first step out of the interval.
    const root = risingRoot((x) => ({ value: Math.atan(x - 1), slope: 1 / (1 + (x - 1) ** 2) }), -1000, 5000);
    expect(root).toBeCloseTo(1, 12);
  });

  it('without a slope it halves the interval', () => {
    expect(risingRoot((x) => ({ value: x * x * x - 2, slope: NaN }), 0, 10)).toBeCloseTo(2 ** (1 / 3), 12);
  });

  it('the valley of Rosenbrock 1960 ends at (1, 1)', () => {
    const { at, value } = highest(([x, y]) => -(100 * (y - x * x) ** 2 + (1 - x) ** 2), [[-1.2, 1]], {
      most: 500,
    });
    expect(value).toBeCloseTo(0, 8);
    expect(at[0]).toBeCloseTo(1, 3);
    expect(at[1]).toBeCloseTo(1, 3);
  });

  it('of two peaks the higher is taken, from a start beside each', () => {
    const peaks = ([x, y]: readonly [number, number]): number =>
      Math.max(1 - (x * x + y * y), 2 - ((x - 9) ** 2 + (y - 9) ** 2));
    expect(highest(peaks, [[1, 1]]).value).toBeCloseTo(1, 8);
    expect(
      highest(peaks, [
        [1, 1],
        [8, 8],
      ]).value,
    ).toBeCloseTo(2, 8);
  });
});

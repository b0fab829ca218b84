import { expect, it } from 'vitest';
import { leastSquares } from '../../../src/study/chances/line.js';

// NIST StRD, linear regression, Norris (lower difficulty): data and certified values as scipy's own tests have
// them; the residual standard deviation from memory.
const x = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
  447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
  229.2, 669.1, 448.9, 0.5,
];
const y = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
  448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
  228.9, 668.4, 449.2, 0.2,
];

it('has the certified line of Norris to ten digits', () => {
  const line = leastSquares(x, y);
  expect(line.slope).toBeCloseTo(1.00211681802045, 11);
  expect(line.intercept).toBeCloseTo(-0.262323073774029, 9);
  expect(line.slopeError).toBeCloseTo(0.000429796848199937, 13);
  expect(line.interceptError).toBeCloseTo(0.232818234301152, 10);
  expect(line.standardDeviation).toBeCloseTo(0.884796396144373, 10);
  expect(line.freedom).toBe(34);
});

it('asks for three points, and for x that differ', () => {
  expect(() => leastSquares([1, 2], [1, 2])).toThrow('at least 3');
  expect(() => leastSquares([2, 2, 2], [1, 2, 3])).toThrow('x that differ');
});

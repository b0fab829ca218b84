import { describe, expect, it } from 'vitest';
import { Counts } from '../../../src/study/statistics/counts.js';

const countsOf = (values: readonly number[]): Counts => {
  const counts = new Counts();
  for (const value of values) counts.add(value);
  return counts;
};

describe('counts of numbers', () => {
  const values = Array.from({ length: 200 }, (_, i) => (i * 7919) % 23).concat(Infinity, -4, Infinity),
    sorted = [...values].sort((a, b) => a - b);

  it('have every order statistic of the values themselves', () => {
    const counts = countsOf(values);
    expect(Array.from(values, (_, i) => counts.ranked(i + 1))).toEqual(sorted);
    expect([counts.n, counts.of(Infinity), counts.of(-4), counts.of(99)]).toEqual([203, 2, 1, 0]);
    expect(() => counts.ranked(204)).toThrow('expected one from 1 to 203, got 204');
  });

  it('have new values among them when asked again', () => {
    const counts = countsOf([5, 7]);
    expect(counts.ranked(1)).toBe(5);
    counts.add(2);
    counts.add(7);
    expect([1, 2, 3, 4].map((rank) => counts.ranked(rank))).toEqual([2, 5, 7, 7]);
  });

  it('have the quantiles of rank ceil(n p), and the mean', () => {
    // David & Nagaraja 2003: the inverse of the empirical distribution. 1 to 10: P10 is 1, P11 is 2, P90 is
    // 9.
    const ten = countsOf([10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect([0.001, 0.1, 0.11, 0.5, 0.9, 1].map((p) => ten.quantile(p))).toEqual([1, 1, 2, 5, 9, 10]);
    expect(ten.mean).toBe(5.5);
    expect(countsOf([2, 2, 8]).mean).toBe(4);
  });

  it('go on apart from their copy', () => {
    const counts = countsOf([1, 1]),
      copy = counts.copy();
    counts.add(0);
    expect([copy.n, copy.ranked(1), counts.ranked(1)]).toEqual([2, 1, 0]);
  });
});

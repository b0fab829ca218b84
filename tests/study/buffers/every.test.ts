import { describe, expect, it } from 'vitest';
import { mayReach } from '../../../src/study/buffers/search/bar.js';
import { everyLayout, MOST_LAYOUTS } from '../../../src/study/buffers/search/every.js';
import { toSettle, verdictOf } from '../../../src/study/buffers/verdict.js';

const estimate = (mean: number, half: number) => ({
  ...{ mean, low: mean - half, high: mean + half },
  ...{ level: 0.95, n: 20 },
});
const bound = { rate: 5, name: 'press', kind: 'station' } as const;

describe('all layouts within a number of places', () => {
  it('are counted and listed once, those with the most places first, of them the most even', () => {
    expect(everyLayout([0, 1], 3)).toEqual([
      [1, 2],
      [2, 1],
      [0, 3],
      [1, 1],
      [0, 2],
      [0, 1],
    ]);
    expect(everyLayout([0, 0, 0], 10)).toHaveLength(286);
    expect(new Set(everyLayout([0, 0, 0], 10)!.map(String)).size).toBe(286);
    expect(everyLayout([0, 1], 0)).toEqual([]);
  });

  it('are not listed where there are too many of them', () => {
    expect(everyLayout([0, 0, 0], 11)).toBeNull();
    expect(everyLayout(new Array<number>(48).fill(0), 104)).toBeNull();
    expect(MOST_LAYOUTS).toBe(300);
  });

  it('are given up only where their few replications surely stay below', () => {
    expect(mayReach([1, 1.1, 0.9], [1.05, 1.05, 1.05])).toBe(true);
    expect(mayReach([1, 1.1, 0.9], [1.5, 1.6, 1.4])).toBe(false);
    // In pairs: always just below.
    expect(mayReach([1, 2, 3], [1.01, 2.01, 3.01])).toBe(false);
  });
});

describe('the verdict on a target', () => {
  const goal = { kind: 'target', rate: 4, relative: null } as const;

  it('goes by the whole interval of what is above it', () => {
    expect(verdictOf(goal, estimate(0.1, 0.05), true, null)).toBe('reached');
    expect(verdictOf(goal, estimate(0.1, 0.2), true, null)).toBe('not settled');
    expect(verdictOf(goal, estimate(-0.1, 0.05), true, null)).toBe('not reached');
  });

  it('is out of reach only where arithmetic says so: what no limit ships is no bound', () => {
    expect(verdictOf(goal, estimate(-0.1, 0.05), false, bound)).toBe('not reached');
    expect(verdictOf(goal, estimate(-0.1, 0.05), false, null)).toBe('not reached');
    expect(verdictOf({ ...goal, rate: 5.1 }, estimate(-0.1, 0.05), false, bound)).toBe('out of reach');
  });

  it('says how many replications would settle it: twice as narrow takes four times as many', () => {
    expect(toSettle(estimate(0.1, 0.2))).toBe(80);
    expect(toSettle(estimate(-0.1, 0.2))).toBe(80);
    expect(toSettle(estimate(1.1, 0.2), 1)).toBe(80);
    // About: two digits, rounded up.
    expect(toSettle(estimate(0.03, 0.2))).toBe(890);
    expect(toSettle(estimate(0.3, 0.2))).toBeNull();
    expect(toSettle(estimate(0, 0.2))).toBeNull();
  });
});

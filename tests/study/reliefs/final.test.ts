import { describe, expect, it } from 'vitest';
import {
  byGain,
  finalists,
  movesMost,
  notBehind,
  othersAsGood,
  type Seen,
  seenBy,
} from '../../../src/study/reliefs/final.js';
import type { Compared } from '../../../src/study/reliefs/runs.js';
import type { Out } from '../../../src/study/reliefs/screen.js';
import { meanInterval } from '../../../src/study/statistics/interval.js';

const row = (...shipped: number[]): Compared[] =>
  shipped.map((throughput) => ({ throughput, cost: NaN, lastUnit: NaN }));
const BASE = row(10, 12, 11);
/** Set against the base at 95 %; t(2; 0.975) = 4.302653 (tables of Student's t). */
const seen = (all: Readonly<Record<string, [Compared[], Out | null]>>): Seen<string>[] =>
  seenBy(
    BASE,
    Object.entries(all).map(([member, [values, out]]) => ({ member, row: values, out })),
    0.95,
  );
const names = (all: readonly Seen<string>[]): string[] => all.map(({ member }) => member);

describe('the final of reliefs', () => {
  // Gains 2, 2, 2; 1, 1, 1; 5, 5, 5 but dropped; 3, 0, 3: mean 2.0, sd 1.73, so perhaps nothing.
  const all = byGain(
    seen({
      two: [row(12, 14, 13), null],
      one: [row(11, 13, 12), null],
      dropped: [row(15, 17, 16), 'behind'],
      perhaps: [row(13, 12, 14), null],
      slight: [row(10.1, 12.1, 11.1), 'no effect'],
    }),
  );

  it('has the first by gain of those compared to the end, sure or not', () => {
    expect(names(all)).toEqual(['two', 'perhaps', 'one', 'dropped', 'slight']);
    expect(names(finalists(all, 2))).toEqual(['two', 'perhaps']);
    expect(names(finalists(all, 5))).toEqual(['two', 'perhaps', 'one']);
  });

  it('has nobody where none of them surely gains', () => {
    expect(finalists(byGain(seen({ perhaps: [row(13, 12, 14), null] })), 5)).toEqual([]);
  });

  it('leaves out only whom another is surely ahead of, in pairs', () => {
    // Second less first: 1, 1, 1. Third less second: 1, -1, 2, mean 0.67, sd 1.53: across 0. Third less first: 2,
    // 0, 3, mean 1.67, sd 1.53, half-width 4.302653 x 1.53 / sqrt 3 = 3.8: across 0 as well.
    expect(notBehind([row(1, 5, 9), row(2, 6, 10), row(3, 5, 12)], 0.95)).toEqual([false, true, true]);
    // The same are not told apart.
    expect(notBehind([row(1, 2), row(1, 2)], 0.95)).toEqual([true, true]);
  });

  it('counts whom it did not have: not surely behind its first, or dropped where the best may be no better', () => {
    const [first] = all,
      within = { level: 0.95, zone: 0.5, inGroups: 3 };
    // First less perhaps: -1, 2, -1: across 0. First less one: 1, 1, 1.
    expect(othersAsGood(all, [first], first.effect.gain, within)).toBe(1);
    // A best that may gain less than the zone: what was dropped for less than that may be as good.
    // So may be those that were given up together.
    expect(othersAsGood(all, [first], meanInterval([0.4, 0.4], 0.95), within)).toBe(2 + 3);
    expect(othersAsGood(all, [], first.effect.gain, within)).toBe(0);
  });

  it('has the value that surely moves it most, either way, if by more than the zone', () => {
    const less = seen({
      less: [row(7, 9, 8), null],
      more: [row(12, 14, 13), null],
      unsure: [row(30, 12, 11), null],
      dropped: [row(1, 1, 1), 'no effect'],
    });
    expect(movesMost(less, 2.5)?.member).toBe('less');
    expect(movesMost(less, 3)).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import {
  asEstimate,
  bounds,
  count,
  exact,
  intervalAndCount,
  mean,
  number,
  percentWithInterval,
  short,
  shortForms,
  signed,
  withInterval,
} from '../../src/study/format.js';

const estimate = (middle: number, low: number | null, high: number | null) => ({
  mean: middle,
  low,
  high,
  level: 0.95,
  n: low === null ? 1 : 40,
});

describe('numbers with their intervals', () => {
  it('shows the digits that the interval deserves, the same for mean and bounds', () => {
    expect(withInterval(estimate(5.6123, 5.4049, 5.8197))).toBe('5.6 (95 % CI 5.4 to 5.8)');
    expect(withInterval(estimate(61.4, 59.5, 63.3), 'units')).toBe('61.4 units (95 % CI 59.5 to 63.3)');
    expect(bounds(estimate(1234.5, 1180.2, 1288.8))).toBe('1,180 to 1,289');
    expect(mean(estimate(0.03456, 0.0341, 0.03502))).toBe('0.0346');
  });

  it('says that there is no interval where there is none', () => {
    expect(withInterval(estimate(3.3812, null, null), 'days')).toBe('3.38 days (no interval, 1 replication)');
    expect(bounds(estimate(3, null, null))).toBe('no interval');
  });

  it('says what all replications have in common, instead of an interval of no width', () => {
    const always = { ...estimate(1, null, null), n: 40 };
    expect(withInterval(always)).toBe('1 (the same in all 40 replications)');
    expect(withInterval({ ...always, n: 2 }, 'a day')).toBe('1 a day (the same in both replications)');
    expect(short(always)).toBe('1 (always)');
    // A difference that is the same in all pairs.
    expect(withInterval(estimate(0, 0, 0))).toBe('0 (the same in all 40 replications)');
    expect(short(estimate(0, 0, 0))).toBe('0 (always)');
  });

  it('says that nothing was seen, and up to how many events there may be', () => {
    const none = { ...estimate(0, null, null), n: 20 };
    expect(withInterval(none, '%', 100)).toBe('0 % (not seen in 20 replications)');
    expect(short(none, 100)).toBe('0 (not seen)');
    expect(withInterval({ ...none, most: 0.1498 }, 'failures')).toBe(
      '0 failures (not seen in 20 replications; under 0.15 a replication)',
    );
    expect(short({ ...none, most: 0.1498 })).toBe('0 (not seen, under 0.15)');
    expect(short({ ...estimate(0, null, null), n: 0 })).toBe('none');
  });

  it('says that there are too few replications, and about how many would do, rounded up to two digits', () => {
    const few = { ...estimate(0.1, null, null), n: 20, needs: 1234 };
    expect(withInterval(few)).toBe('0.1 (too few replications to say; about 1,300 would do)');
    expect(intervalAndCount({ ...few, needs: 80 })).toBe('too few replications to say; about 80 would do');
    expect(short({ ...few, needs: 54 })).toBe('0.1 (too few, 54 would do)');
    expect(intervalAndCount(estimate(5.6123, 5.4049, 5.8197))).toBe('95 % CI 5.4 to 5.8, 40 replications');
  });

  it('explains each short form that stands in a text, and no other', () => {
    expect(shortForms('3 (2 to 4)\n0 (none)')).toEqual([]);
    expect(shortForms('0.1 (too few, 1,300 would do)')).toEqual(['too few: so many replications would do']);
    expect(shortForms('always on top\n0 (not seen)')).toEqual(['not seen: in none of the replications']);
    expect(shortForms('0 (not seen, under 0.15)')).toEqual([
      'not seen, under: in none of the replications, so at most so many in one',
    ]);
    expect(shortForms('4 (always)\n3 (2 to 4)')).toEqual(['always: the same in all replications']);
  });

  it('rounds halves up even where the share times 100 falls a hair below', () => {
    expect(0.575 * 100).toBeLessThan(57.5);
    expect(percentWithInterval(estimate(0.575, 0.42, 0.71))).toBe('58 % (95 % CI 42 to 71)');
  });

  it('writes no negative zero, no useless zeros and no exponent', () => {
    expect(number(-1e-9)).toBe('0');
    expect(number(4)).toBe('4');
    expect(number(3.4)).toBe('3.4');
    expect(number(123456)).toBe('123,456');
    expect(bounds(estimate(0, -0.04, 0.4))).not.toContain('-0 ');
  });

  it('marks thousands with a comma, ahead of the point only, and puts a currency behind the number', () => {
    expect(withInterval(estimate(16480.3, 16391, 16570), 'EUR')).toBe(
      '16,480 EUR (95 % CI 16,391 to 16,570)',
    );
    expect(number(-1234567)).toBe('-1,234,567');
    expect(number(999.6)).toBe('1,000');
    expect(exact(1234.56789)).toBe('1,234.56789');
    expect(exact(-100)).toBe('-100');
    expect(signed(estimate(1027, 900, 1154))).toBe('+1,027');
    expect(signed(estimate(-1027, -1154, -900))).toBe('-1,027');
    expect(signed(estimate(0.001, -1, 1))).toBe('0.0');
    expect(count(1000, 'replication')).toBe('1,000 replications');
  });

  it('reads a proportion as an estimate of its share', () => {
    expect(asEstimate({ share: 0.5, low: 0.35, high: 0.65, level: 0.9, count: 20, n: 40 })).toEqual({
      mean: 0.5,
      low: 0.35,
      high: 0.65,
      level: 0.9,
      n: 40,
    });
  });

  it('counts one thing in the singular', () => {
    expect([count(1, 'replication'), count(2, 'replication')]).toEqual(['1 replication', '2 replications']);
  });
});

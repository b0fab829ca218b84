import { describe, expect, it } from 'vitest';
import {
  asEstimate,
  bounds,
  count,
  exact,
  mean,
  number,
  percentWithInterval,
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

  it('adds no zeros to an interval of no width', () => {
    expect(withInterval(estimate(1, 1, 1))).toBe('1 (95 % CI 1 to 1)');
    expect(withInterval(estimate(0, 0, 0))).toBe('0 (95 % CI 0 to 0)');
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

import { describe, expect, it } from 'vitest';
import { figures, told, toldOf, toldShort } from '../../../src/report/charts/figures.js';
import type { Estimate } from '../../../src/study/statistics/estimate.js';

const around = (mean: number, low: number, high: number): Estimate => ({
  mean,
  low,
  high,
  level: 0.95,
  n: 20,
});

describe('figures of pictures', () => {
  it.each([
    // The demo's: no third decimal, and no digit that the interval leaves open.
    [around(3.44, 3.424, 3.456), '3.44 (3.42 to 3.46)'],
    [around(-965, -1078, -851), '-970 (-1,080 to -850)'],
    [around(16_481, 16_437, 16_524), '16,480 (16,440 to 16,520)'],
    [around(1084.1, 1082.8, 1085.5), '1,084 (1,083 to 1,086)'],
    [around(0.014, -0.003, 0.032), '0.01 (0.00 to 0.03)'],
    [around(-0.0001, -0.4, 0.4), '0.0 (-0.4 to 0.4)'],
    // Both ends would read like the mean.
    [around(0.901, 0.8995, 0.9025), '0.90'],
  ])('have the digits that %j deserves: %s', (estimate, text) => {
    expect(toldShort(estimate)).toBe(text);
  });

  it('share their decimals in a column', () => {
    const write = figures([around(0.3, 0.24, 0.36), around(0.006, -0.001, 0.014)]);
    expect(write.short(around(0.006, -0.001, 0.014))).toBe('0.01 (0.00 to 0.01)');
    expect(write.signed(around(0.3, 0.24, 0.36))).toBe('+0.30');
  });

  it('are per cent by a scale, and say why there is no interval', () => {
    expect(told(around(0.6759, 0.6746, 0.6772), 100)).toBe('67.6');
    expect(toldOf({ ...around(3.381, 0, 0), low: null, high: null, n: 1 }, 'a day')).toBe(
      '3.38 a day (no interval)',
    );
    expect(toldShort({ ...around(2, 2, 2), n: 20 })).toBe('2 (always)');
    expect(toldShort({ ...around(0, 0, 0), n: 0 })).toBe('none');
  });
});

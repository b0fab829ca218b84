import { describe, expect, it } from 'vitest';
import { drift, nextCorrelation, warningsOfOrder } from '../../../../src/study/fit/warnings/order.js';

/** Michelson's 100 measurements of the speed of light, 1879 (in NIST StRD: 299 and these thousandths). */
const MICHELSON = [
  850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960, 960,
  940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800, 790, 760, 800, 880, 880,
  880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840, 850, 840, 840, 840, 890, 810, 810,
  820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780, 890, 840, 780, 810,
  760, 810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870,
];
/** Made up. */
const TIMES = [44, 37, 60, 52, 33, 48, 71, 39, 55, 42, 66, 41, 58, 47, 36, 62, 50, 45, 49, 40];
const order = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1);

describe('correlation of each time with the next', () => {
  it('is the certified one of NIST StRD Michelso', () => {
    const values = MICHELSON.map((thousandths) => 299 + thousandths / 1000);
    expect(nextCorrelation(values).correlation).toBeCloseTo(0.535199668621283, 12);
  });

  it('is the certified one of NIST StRD NumAcc2, whose data alternate (built from memory)', () => {
    const values = [1.2, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? 1.1 : 1.3))];
    expect(nextCorrelation(values).correlation).toBeCloseTo(-0.999, 12);
  });

  it('has the p of Ljung and Box, by Box.test of R 4.2.2', () => {
    expect(nextCorrelation(TIMES).p).toBeCloseTo(0.04077318, 7);
    expect(nextCorrelation(MICHELSON).p / 5.557545035284e-8).toBeCloseTo(1, 6);
  });
});

describe('drift', () => {
  it('has the correlation and the p of cor.test(method = "spearman", exact = FALSE) of R 4.2.2', () => {
    const { correlation, p } = drift(order(20), TIMES);
    expect(correlation).toBeCloseTo(0.03308270677, 10);
    expect(p).toBeCloseTo(0.889876, 6);
  });

  it('of times that only rise is certain, and its size is that of the thirds', () => {
    const { correlation, p, change } = drift(order(9), [10, 10.1, 10.2, 11, 12, 13, 14.9, 15, 15.1]);
    expect(correlation).toBeCloseTo(1, 14);
    expect(p).toBeLessThan(1e-9);
    expect(change).toBeCloseTo(15 / 10.1 - 1, 12);
  });
});

describe('what is told of the order', () => {
  it('times that fall with the date drift, and their neighbours are not told too', () => {
    const falling = TIMES.map((time, i) => time - 2 * i + 40),
      [warning, ...others] = warningsOfOrder(order(20), falling);
    expect(warning).toMatchObject({
      kind: 'drift',
      told: expect.stringContaining('Times get shorter with the date') as unknown,
    });
    expect(others).toEqual([]);
  });

  it('a wave without a drift is told as neighbours that are alike', () => {
    const wave = TIMES.map((time, i) => 40 + 10 * Math.cos((2 * Math.PI * i) / 10) + time / 50);
    expect(warningsOfOrder(order(20), wave)).toMatchObject([{ kind: 'not independent' }]);
  });

  it('nothing is told of times without either, nor of nine', () => {
    expect(warningsOfOrder(order(20), TIMES)).toEqual([]);
    expect(warningsOfOrder(order(9), order(9))).toEqual([]);
  });
});

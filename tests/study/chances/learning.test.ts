import { describe, expect, it } from 'vitest';
import { fitLearning, plainTimes } from '../../../src/study/chances/learning.js';
import { unitCurve, wrightCurve } from '../../../src/study/chances/learning-curve.js';

/** Invented. */
const UNITS = [1, 2, 3, 4, 5, 6, 8, 9, 10, 12, 13, 15, 17, 18, 20, 22, 25, 27, 30, 33, 36, 40, 44, 48],
  MINUTES = [
    212, 188, 150, 171, 149, 128, 141, 117, 126, 122, 109, 118, 95, 112, 101, 108, 92, 99, 88, 103, 90, 84,
    91, 80,
  ],
  TIMES = UNITS.map((unit, i) => ({ unit, minutes: MINUTES[i]! }));

/** Times about a curve, with a scatter that sums to nothing and follows no trend. */
const about = (n: number, at: (unit: number) => number, scatter = 0.05) =>
  Array.from({ length: n }, (_, i) => ({
    unit: i + 1,
    minutes: at(i + 1) * Math.exp(scatter * [1, -1, 0.4, -0.4, -1, 1, -0.4, 0.4][i % 8]!),
  }));

describe('learning', () => {
  it('is the line that R 4.2.2 draws, lm(log(minutes) ~ log(unit))', () => {
    const { curve, rate, learns, floor, told } = fitLearning(TIMES);
    expect(curve?.curve).toBe('unit');
    expect(curve?.slope).toBeCloseTo(-0.243124736063, 11);
    expect(curve?.slopeError).toBeCloseTo(0.0139696398822, 11);
    expect(curve?.standardDeviation).toBeCloseTo(0.0687954347663, 11);
    expect(curve?.first).toBeCloseTo(214.894915995, 7);
    expect(rate?.low).toBeCloseTo(0.828115557235, 10); // 2^confint
    expect(rate?.high).toBeCloseTo(0.862051833725, 10);
    expect(learns).toBe(true);
    expect(floor).toBeNull();
    expect(told[0]).toBe(
      'Each doubling of the build number leaves 84.5 % of the time (95 % interval 82.8 % to 86.2 %; 24 times of ' +
        'units 1 to 48, unit form (Crawford)); the first unit took about 3.6 h.',
    );
  });

  it('has the Wright form of R, nls(log(minutes) ~ a + log(unit^(b + 1) - (unit - 1)^(b + 1)))', () => {
    const wright = wrightCurve(TIMES);
    expect(wright.slope).toBeCloseTo(-0.204963689925, 6);
    expect(wright.slopeError).toBeCloseTo(0.0132154028004, 5);
    expect(Math.log(wright.first)).toBeCloseTo(5.481297019234, 5);
    expect(wright.standardDeviation).toBeCloseTo(0.0774277269808, 9);
    expect(unitCurve(TIMES).aic - wright.aic).toBeCloseTo(-5.67396281166, 6); // AIC(lm) - AIC(nls)
  });

  it('takes the Wright form where times come from it', () => {
    const b = Math.log2(0.8),
      fit = fitLearning(about(40, (n) => 300 * (n ** (b + 1) - (n - 1) ** (b + 1)), 0.03));
    expect(fit.curve?.curve).toBe('cumulative mean');
    expect(fit.rate?.value).toBeCloseTo(0.8, 2);
  });

  it('finds a floor where the late units are flat, and none on a straight line', () => {
    const bent = fitLearning(about(60, (n) => 300 * Math.max(0.55, n ** Math.log2(0.8))));
    expect(bent.floor).toBeCloseTo(0.55, 1);
    expect(bent.rate?.value).toBeCloseTo(0.8, 1);
    expect(bent.told[1]).toMatch(/^From unit \d+ on times fall no more: the floor is/);
    expect(fitLearning(about(60, (n) => 300 * n ** Math.log2(0.8))).floor).toBeNull();
  });

  it('gives back the plain times of the first unit', () => {
    const exact = about(20, (n) => 200 * n ** Math.log2(0.9), 0),
      scattered = about(20, (n) => 200 * n ** Math.log2(0.9));
    for (const minutes of plainTimes(exact, fitLearning(exact))) expect(minutes).toBeCloseTo(200, 6);
    const plain = plainTimes(scattered, fitLearning(scattered));
    expect(plain[0]! / plain[1]!).toBeCloseTo(Math.exp(0.1), 1);
  });

  it('is none where times are flat, and they stay as they are', () => {
    const flat = about(40, () => 90),
      fit = fitLearning(flat);
    expect(fit.learns).toBe(false);
    expect(fit.told[0]).toMatch(/^No learning shows in 40 times of units 1 to 40/);
    expect(plainTimes(flat, fit)).toEqual(flat.map(({ minutes }) => minutes));
  });

  it('is none where times rise, which is told', () => {
    const fit = fitLearning(about(40, (n) => 90 * n ** 0.2));
    expect(fit.learns).toBe(false);
    expect(fit.told[0]).toMatch(/^Times rise with the build number .* That is no learning/);
  });

  it('is not told by few times, or of less than a doubling', () => {
    expect(fitLearning(about(5, (n) => 90 * n ** -0.3))).toMatchObject({ curve: null, learns: false });
    const late = Array.from({ length: 30 }, (_, i) => ({ unit: 100 + i, minutes: 200 - 3 * i }));
    expect(fitLearning(late).told[0]).toMatch(/^Units 100 to 129 are less than one doubling/);
  });

  it('refuses a time of 0 and a unit of 0', () => {
    expect(() => fitLearning([{ unit: 0, minutes: 4 }])).toThrow('whole build number from 1, got 0');
    expect(() => fitLearning([{ unit: 1, minutes: 0 }])).toThrow('minutes above 0, got 0');
  });
});

import { describe, expect, it } from 'vitest';
import { cyclesToEvenOut, weightsOver, wholeCycles } from '../../../src/study/loads/weights.js';

/** Weighted count of loads of `units` every `cycle` days, the first at `begin`, as a rate. */
function rateOf(days: number, boxes: readonly number[], combs: readonly (readonly number[])[]): number {
  const weights = weightsOver(days, boxes);
  let counted = 0;
  for (const [units = 0, cycle = 1, begin = 0] of combs)
    for (let time = begin; time < days; time += cycle) counted += units * weights(time, time);
  return counted / (weights(0, days) * days);
}

describe('weights of a count', () => {
  it('are all 1 without a box', () => {
    const weights = weightsOver(20, []);
    expect([weights(0, 1), weights(7, 12.5), weights(19, 20), weights(3, 3)]).toEqual([1, 1, 1, 1]);
  });

  it('rise over one box, are 1, and fall over the last', () => {
    // A window of 6 that begins somewhere in the first 4 of 10 days covers day x with the chance x / 4.
    const weights = weightsOver(10, [4]);
    expect(weights(0, 1)).toBeCloseTo(0.125, 12);
    expect(weights(0, 4)).toBeCloseTo(0.5, 12);
    expect(weights(4, 6)).toBeCloseTo(1, 12);
    expect(weights(9, 10)).toBeCloseTo(0.125, 12);
    expect(weights(1, 1)).toBeCloseTo(0.25, 12);
  });

  it('are the chance of a sum of two uniform parts over two boxes', () => {
    // Parts of 2 and 4: P(sum <= x) = x^2 / 16 up to 2, then (x - 1) / 4; its integrals are 1/6 and 1.
    const weights = weightsOver(20, [2, 4]);
    expect(weights(0, 2) * 2).toBeCloseTo(1 / 6, 12);
    expect(weights(2, 4) * 2).toBeCloseTo(1, 12);
    expect(weights(18, 20) * 2).toBeCloseTo(1 / 6, 12);
  });

  it('add up to the length without the boxes, so to a window', () => {
    expect(weightsOver(130, [28, 35]).call(null, 0, 130) * 130).toBeCloseTo(67, 9);
  });

  it('count loads at their mean rate wherever in their cycle the time begins', () => {
    for (let part = 0; part < 1; part += 0.05) {
      const begin = part * 3.7;
      expect(rateOf(50, [3.7], [[10, 3.7, begin]])).toBeCloseTo(10 / 3.7, 4);
      // A plain count sees 13 or 14 loads: 130 or 140 units in 50 days.
      expect(['2.60', '2.80']).toContain(rateOf(50, [], [[10, 3.7, begin]]).toFixed(2));
    }
  });

  it('count two kinds of loads at once, with a box for each', () => {
    for (let part = 0; part < 1; part += 0.1)
      expect(
        rateOf(
          60,
          [7, 3.1],
          [
            [10, 7, part * 7],
            [4, 3.1, ((7 * part) % 1) * 3.1],
          ],
        ),
      ).toBeCloseTo(10 / 7 + 4 / 3.1, 4);
  });
});

describe('boxes for cycles', () => {
  const week = 5;

  it('hold as many whole cycles as go into half of the time; a week goes into ten days', () => {
    expect(wholeCycles([10], { days: 130, week })).toEqual([60]);
  });

  it('are made longer in turn, the shortest first, a week beside them', () => {
    // 14 and 5 leave 46 of 65: 5 to 15 leaves 36, 14 to 28 leaves 22, 15 to 35 leaves 2.
    expect(wholeCycles([14], { days: 130, week })).toEqual([28, 35]);
  });

  it('leave the week out where only the load goes in, and are none where not even that does', () => {
    expect(wholeCycles([29], { days: 60, week })).toEqual([29]);
    expect(wholeCycles([31], { days: 60, week })).toBeNull();
    expect(wholeCycles([20, 11], { days: 60, week })).toBeNull();
    expect(wholeCycles([], { days: 60, week })).toEqual([]);
  });

  it('that even a picture out are the least whole cycles that make a week, and a week', () => {
    expect(cyclesToEvenOut([2.5], week)).toEqual([5, 5]);
    expect(cyclesToEvenOut([12, 3], week)).toEqual([12, 5]);
    expect(cyclesToEvenOut([12.5, 3], week)).toEqual([12.5, 6, 5]);
  });
});

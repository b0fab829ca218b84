import { describe, expect, it } from 'vitest';
import { studentBeyond } from '../../../src/study/statistics/functions/normal.js';
import { judge } from '../../../src/study/validate/judge.js';
import type { Measure, Topic } from '../../../src/study/validate/seen/measures.js';

const measure = (topic: Topic, value: number, n = 0, sd?: number): Measure => ({
  topic,
  of: 'line',
  what: 'it',
  value,
  n,
  ...(sd === undefined ? {} : { sd }),
});

describe('a real value beside simulated ones', () => {
  // 2 * (1 - pt(t, df)) of R 4.2.2.
  it.each([
    [2.262157162740992, 9, 0.05],
    [1, 9, 0.3434363961379807],
    [4, 19, 0.0007661923372],
    [6.5, 39, 1.048389397e-7],
  ])('has P(|T| >= %f) with %i degrees of freedom', (t, df, p) => {
    expect(studentBeyond(t, df) / p).toBeCloseTo(1, 5);
  });

  it('is judged by the prediction interval of one more value', () => {
    // mean 10, s 1: 10 +- t(0.975, 4) sqrt(1 + 1/5) = 10 +- 2.776445 * 1.095445 (R 4.2.2).
    const values = [9, 9, 10, 11, 11].map((value) => [measure('rate', value)]);
    const [judged] = judge([measure('rate', 12)], values, 0.95);
    expect(judged.low).toBeCloseTo(10 - 3.041443, 5);
    expect(judged.high).toBeCloseTo(10 + 3.041443, 5);
    expect(judged.agrees).toBe(true);
    expect(judge([measure('rate', 13.1)], values, 0.95)[0]?.agrees).toBe(false);
  });

  it('adjusts for all measures by Holm', () => {
    // p.adjust(c(0.01, 0.04, 0.03), "holm") of R 4.2.2: 0.03 0.06 0.06.
    const values = [9, 9, 10, 11, 11].map((value) => Array.from({ length: 3 }, () => measure('rate', value))),
      at = (t: number): Measure => measure('rate', 10 + t * Math.sqrt(1.2)),
      judged = judge([at(4.604095), at(2.998528), at(3.29763)], values, 0.95);
    expect(judged.map(({ p }) => p)).toEqual([0.01, 0.04, 0.03].map((p) => expect.closeTo(p, 4) as unknown));
    expect(judged.map(({ adjusted }) => adjusted)).toEqual(
      [0.03, 0.06, 0.06].map((p) => expect.closeTo(p, 4) as unknown),
    );
    // The interval shown is the one by which it was judged.
    for (const {
      measure: { value },
      low,
      high,
      agrees,
    } of judged)
      expect(value > low && value < high).toBe(agrees);
  });

  it('does not take what never happened for a gap, however many units there were', () => {
    const values = Array.from({ length: 20 }, (_, i) => [measure('quality', 0, 150 + i)]);
    expect(judge([measure('quality', 0, 300)], values, 0.95)[0]?.t).toBe(0);
    // One of 300 where the model had none in 3,000 is luck, 30 are not.
    expect(judge([measure('quality', 1 / 300, 300)], values, 0.95)[0]?.agrees).toBe(true);
    expect(judge([measure('quality', 0.1, 300)], values, 0.95)[0]?.agrees).toBe(false);
  });

  it('does not hold rounding or scatter of real times against a model without spread', () => {
    const values = Array.from({ length: 20 }, () => [measure('minutes', 30, 100, 0)]);
    expect(judge([measure('minutes', 30.01, 100, 0)], values, 0.95)[0]?.agrees).toBe(true);
    expect(judge([measure('minutes', 31, 100, 8)], values, 0.95)[0]?.agrees).toBe(true);
    expect(judge([measure('minutes', 34, 100, 8)], values, 0.95)[0]?.agrees).toBe(false);
  });

  it('leaves out what too few logs have', () => {
    const values = Array.from({ length: 20 }, (_, i) => [measure('finds', i < 10 ? NaN : 0.5, 20)]);
    expect(judge([measure('finds', 0.1, 20)], values, 0.95)[0]?.t).toBeNaN();
  });

  it('takes one unit more or less of a count for the same', () => {
    const week = (units: number): Measure => ({ ...measure('rate', units), least: 1 }),
      values = Array.from({ length: 20 }, () => [week(5)]);
    expect(judge([week(4)], values, 0.95)[0]?.t).toBe(0);
    expect(judge([week(6)], values, 0.95)[0]?.agrees).toBe(true);
    // Without any spread one more of a count is as much as it may miss by.
    expect(judge([week(10)], values, 0.95)[0]).toMatchObject({ t: 4, agrees: false });
  });

  it('does not let what is the same in all logs take from what differs', () => {
    const constant = Array.from({ length: 50 }, () => measure('people', 0)),
      values = [9, 9, 10, 11, 11].map((value) => [measure('rate', value), ...constant]),
      [judged, same] = judge([measure('rate', 13.1), ...constant], values, 0.95);
    expect(judged.agrees).toBe(false);
    expect(judged.adjusted).toBe(judged.p);
    expect(same).toMatchObject({ t: 0, p: 1, adjusted: 1, agrees: true });
    // But what no build of the model ever has is one.
    expect(judge([measure('people', 0.3)], [[constant[0]], [constant[0]]], 0.95)[0]?.agrees).toBe(false);
  });

  it('shows a share on the scale on which it is written', () => {
    const values = Array.from({ length: 20 }, (_, i) => [measure('finds', i % 2 === 0 ? 0.2 : 0.3, 40)]),
      none = values.map(() => [measure('finds', 0, 40)]);
    expect(judge([measure('finds', 0.25, 40)], values, 0.95)[0]?.middle).toBeCloseTo(0.25, 2);
    expect(judge([measure('finds', 0, 40)], none, 0.95)[0]?.middle).toBeCloseTo(0, 12);
  });
});

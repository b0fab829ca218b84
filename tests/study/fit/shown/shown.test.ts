import { describe, expect, it } from 'vitest';
import { lognormalOf } from '../../../../src/random/shapes.js';
import { curveOf, familyOf } from '../../../../src/study/fit/kinds/families.js';
import { sampleOf } from '../../../../src/study/fit/kinds/sample.js';
import { againstScenario } from '../../../../src/study/fit/shown/against.js';
import { histogramOf, quantileOf } from '../../../../src/study/fit/shown/histogram.js';
import { ranksToLook } from '../../../../src/study/fit/shown/matters.js';
import { quantilePlot } from '../../../../src/study/fit/shown/quantiles.js';

/** Made up. */
const TIMES = [31, 35, 38, 40, 42, 44, 47, 52, 33, 36, 39, 41, 43, 45, 49, 55, 34, 37, 46, 50, 29.5, 61];
const sample = sampleOf(TIMES);
/** As scipy 1.10.1 fits it. */
const FITTED = { kind: 'lognormal', mu: Math.log(41.44566931504843), sigma: 0.1843509688936841 } as const;

describe('a histogram', () => {
  it('has bars of the width that numpy 1.24.2 calls auto, 5.77, or the next round one below', () => {
    const { from, width, counts, expected, curve } = histogramOf(sample, 0, curveOf(FITTED));
    expect({ from, width, counts }).toEqual({ from: 25, width: 5, counts: [1, 3, 5, 5, 4, 2, 1, 1] });
    // Expected numbers by scipy 1.10.1.
    [0.808276, 3.075593, 5.369068].forEach((wanted, i) => {
      expect(expected?.[i]).toBeCloseTo(wanted, 5);
    });
    const area = (curve ?? []).reduce((sum, [, times]) => sum + times, 0) * (40 / 80);
    expect(area / width).toBeCloseTo(22, 0);
  });
  it('stands in the middle of what was rounded, and is one bar where all are the same', () => {
    const rounded = histogramOf(sampleOf([10, 15, 15, 20, 20, 20, 25, 25, 30]), 5, undefined);
    expect(rounded).toEqual({ from: 7.5, width: 5, counts: [1, 2, 3, 2, 1], expected: null, curve: null });
    expect(histogramOf(sampleOf([18, 18]), 0, undefined)).toMatchObject({ counts: [2] });
  });
  it('stays readable with one time far from all others, none of which is lost', () => {
    const { counts, width } = histogramOf(sampleOf([...TIMES, 4000]), 0, undefined);
    expect(counts.length).toBeLessThanOrEqual(41);
    expect(counts.reduce((a, b) => a + b)).toBe(23);
    expect(width).toBe(100);
  });
  it('has quantiles as numpy 1.24.2 has them', () => {
    const sorted = [...TIMES].sort((a, b) => a - b);
    expect([0.1, 0.25, 0.75, 0.9].map((p) => quantileOf(sorted, p))).toEqual(
      [33.1, 36.25, 46.75, 51.8].map((value) => expect.closeTo(value, 9) as unknown),
    );
  });
});

describe('a quantile plot', () => {
  const plot = (times: readonly number[], hasBand = true) =>
    quantilePlot(sampleOf(times), FITTED, {
      ...{ against: 'lognormal', isChosen: true, stream: 'test', unit: 0, hasBand },
    })!;
  it('sets times against quantiles as scipy 1.10.1 has them', () => {
    const { observed, fitted } = plot(TIMES, false);
    expect(observed).toEqual([...TIMES].sort((a, b) => a - b));
    expect([fitted[0], fitted[10], fitted[21]]).toEqual(
      [28.6628934, 41.01244065, 59.92917328].map((value) => expect.closeTo(value, 5) as unknown),
    );
  });
  it('has a band around the line that these times stay in, and a time twice as long as all does not', () => {
    const { low, high, fitted, outside } = plot(TIMES);
    expect(outside).toBe(0);
    fitted.forEach((minutes, i) => {
      expect(low?.[i]).toBeLessThan(minutes);
      expect(high?.[i]).toBeGreaterThan(minutes);
    });
    expect(plot([...TIMES.slice(0, -1), 150]).outside).toBeGreaterThan(0);
  });
  it('shows at most 60 points of many, both ends among them', () => {
    const many = Array.from({ length: 500 }, (_, i) => 20 + i * 0.1),
      { observed } = plot(many, false);
    expect(observed).toHaveLength(60);
    expect([observed[0], observed[1], observed.at(-2), observed.at(-1)]).toEqual(
      [20, 20.1, 69.8, 69.9].map((value) => expect.closeTo(value, 9) as unknown),
    );
    expect(new Set(observed).size).toBe(60);
  });
  it('is of families alone', () => {
    expect(familyOf(lognormalOf(1, 0.2))).toBeDefined();
    expect(
      quantilePlot(
        sample,
        { kind: 'constant', value: 3 },
        {
          ...{ against: '', isChosen: true, stream: '', unit: 0, hasBand: false },
        },
      ),
    ).toBeUndefined();
  });
});

describe('clocked means against those of the scenario', () => {
  it('differ surely or not, each in an interval for all of them, and not of fewer than ten times', () => {
    const step = (now: number | null, times: readonly number[] = TIMES) => ({ times, now, mix: 1 }),
      found = againstScenario([step(60), step(42), step(null), step(60, TIMES.slice(0, 9)), step(20)]);
    expect(found.map((each) => each?.differs)).toEqual(['shorter', null, undefined, undefined, 'longer']);
    expect(found[0]?.interval.level).toBeCloseTo(1 - 0.05 / 3, 10);
  });
});

describe('what to look at', () => {
  it('is first what the scenario has otherwise, then what nothing fits, then what has warnings', () => {
    const step = { n: 20, off: 0, isUnfitted: false, warnings: 0 };
    expect(
      ranksToLook([
        step,
        { ...step, n: 40 },
        { ...step, warnings: 2 },
        { ...step, isUnfitted: true },
        { ...step, off: 0.1 },
        { ...step, off: 0.4 },
      ]),
    ).toEqual([6, 5, 4, 3, 2, 1]);
  });
});

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { rateScale } from '../../../../src/report/charts/studies/rate-scale.js';
import { rateThroughput } from '../../../../src/report/charts/studies/rate-throughput.js';
import { INK, LAYOUT } from '../../../../src/report/style.js';
import type { RatePoint, RateResults } from '../../../../src/study/rate/results.js';
import { inked, meets } from '../../samples/inked.js';

const demo = JSON.parse(readFileSync('reports/rate/results.json', 'utf8')) as RateResults;
const wide = { ...LAYOUT };
afterEach(() => {
  Object.assign(LAYOUT, wide);
});

/** The rates of the demo, with other units shipped; `half` of an interval, null: too few builds for one. */
interface Shipped {
  readonly mean: number;
  readonly half: number | null;
  readonly builds: number;
}
const shipping = (all: readonly Shipped[]): RateResults => ({
  ...demo,
  points: demo.points.slice(0, all.length).map((point, i): RatePoint => {
    const { mean, half, builds } = all[i] ?? { mean: 0, half: null, builds: 2 };
    return {
      ...point,
      replications: builds,
      shippedPerDay: {
        mean,
        low: half === null ? null : mean - half,
        high: half === null ? null : mean + half,
        level: 0.95,
        n: builds,
        ...(half === null && { needs: 14 }),
      },
    };
  }),
});
const THIN = '#8a8a8a';
const scaleOf = (results: RateResults) => rateScale(results, ({ shippedPerDay }) => shippedPerDay);

describe('bars of the picture of rates', () => {
  // 2 % may be missing: of 3.4 that is 0.068.
  const some = shipping([
    { mean: 3, half: 0.01, builds: 20 },
    { mean: 3.4, half: 0.067, builds: 12 },
    { mean: 3.4, half: 0.069, builds: 5 },
    { mean: 3.5, half: 3, builds: 6 },
    { mean: 3.3, half: null, builds: 5 },
  ]);

  it('are thin where the mean is not known to what matters, and the note says of how many builds', () => {
    const { isLoose, words } = scaleOf(some);
    expect(some.points.map(isLoose)).toEqual([false, false, true, true, false]);
    expect(words).toBe(
      'Thin: 5 to 6 builds, mean unsure by over 2 %; arrow: runs on. No bar: too few builds.',
    );
    expect(rateThroughput(some).how).toContain(words);
    expect(rateThroughput(some).how).toContain('5 to 20 builds a rate');
  });

  it('stretch the axis by a quarter of means and firm bars at most: 2.99 to 3.5, so by 0.1275', () => {
    const { low, high } = scaleOf(some);
    expect(low).toBeCloseTo(2.99 - 0.1275, 9);
    expect(high).toBeCloseTo(3.5 + 0.1275, 9);
  });

  it('need no words where all are firm', () => {
    const firm = shipping([
      { mean: 3, half: 0.01, builds: 20 },
      { mean: 3.3, half: 0.02, builds: 20 },
    ]);
    expect(scaleOf(firm).words).toBe('');
    expect(rateThroughput(firm).how).not.toMatch(/Thin|arrow|No bar/);
  });

  const bars = (results: RateResults) =>
    inked(rateThroughput(results)).uprights.filter(({ colour }) => [THIN, INK].includes(colour));

  it('are drawn in these two ways, and end at the edge of the plot at the latest', () => {
    const drawn = bars(some),
      { area } = inked(rateThroughput(some));
    expect(drawn.map(({ colour }) => colour).sort()).toEqual([INK, INK, THIN, THIN]);
    for (const { top, bottom } of drawn) {
      expect(top).toBeGreaterThanOrEqual(area.top - 0.5);
      expect(bottom).toBeLessThanOrEqual(area.bottom + 0.5);
    }
  });
});

describe('names of lines in the picture of rates', () => {
  it.each([
    ['a PNG file', wide],
    ['a wide page', { width: 1000, hasTitles: false, mostRows: 10 }],
    ['a phone', { width: 346, hasTitles: false, mostRows: 10 }],
  ])(
    'lie over no firm bar and no mean, whatever was shipped, and thin ones run on below them: %s',
    (_, layout) => {
      Object.assign(LAYOUT, layout);
      const one = fc.record({
        mean: fc.double({ min: 0.5, max: 6, noNaN: true }),
        half: fc.option(fc.double({ min: 0, max: 6, noNaN: true }), { nil: null }),
        builds: fc.integer({ min: 2, max: 120 }),
      });
      fc.assert(
        fc.property(
          fc.array(one, { minLength: 2, maxLength: 10 }),
          fc.double({ min: 2.5, max: 7, noNaN: true }),
          fc.double({ min: 2.5, max: 7, noNaN: true }),
          (all, plannedPerDay, perDay) => {
            const chart = rateThroughput({
                ...shipping(all),
                plannedPerDay,
                arithmetic: { kind: 'station', name: 'colour booth', perDay },
              }),
              { texts, uprights } = inked(chart),
              names = texts.filter(({ text }) => /^(?:plan: |averages)/.test(text));
            expect(names).toHaveLength(2);
            const struck = names.filter(({ box }) =>
              uprights.some(
                ({ colour, x, top, bottom }) =>
                  [THIN, INK].includes(colour) && meets(box, { left: x - 2, right: x + 2, top, bottom }),
              ),
            );
            expect(struck).toEqual([]);
          },
        ),
        { numRuns: 60, seed: 1 },
      );
    },
  );
});

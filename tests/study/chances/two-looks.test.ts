import { describe, expect, it } from 'vitest';
import { sideBySide } from '../../../src/study/chances/side-by-side.js';
import { inTurn, oneLook } from '../../../src/study/chances/two-looks.js';
import { proportion } from '../../../src/study/statistics/proportion.js';

describe('made and detection', () => {
  it('cannot be told apart by one inspection', () => {
    const look = oneLook(proportion(24, 300, 0.95));
    expect([look.made, look.detection]).toEqual([null, null]);
    expect(look.told[0]).toContain('That is 8 % made if all are seen, 10 % if 80 % are.');
  });

  // R 4.2.2: profile likelihood with optimize and uniroot; Wilson by prop.test(60, 72, correct = FALSE), 0.730893
  // to 0.902006, put through d = 2 - 1 / s, s, and 0.9 s / (1 - s + 0.9 s).
  it.each([
    ['the same share', 0.8, 2 - 1 / 0.730892930695, 2 - 1 / 0.902006287574, 0.1875, 0.149780426, 0.231163028],
    [1, 60 / 72, 0.730892930695, 0.902006287574, 0.18, 0.144454977, 0.219629584],
    [0.9, 60 / (60 + 12 / 0.9), 0.70967, 0.89231, 0.18333333, 0.147102317, 0.223749621],
  ] as const)('are those of R where the second finds %s', (finds, d, dLow, dHigh, m, mLow, mHigh) => {
    const { made, detection } = inTurn({ units: 400, first: 60, second: 12 }, finds);
    expect(detection?.value).toBeCloseTo(d, 12);
    expect(detection?.low).toBeCloseTo(dLow, 4);
    expect(detection?.high).toBeCloseTo(dHigh, 4);
    expect(made?.value).toBeCloseTo(m, 7);
    expect(made?.low).toBeCloseTo(mLow, 6);
    expect(made?.high).toBeCloseTo(mHigh, 6);
  });

  it('are the two-catch estimates of Seber & Le Cren (1967): N = c1^2 / (c1 - c2), p = 1 - c2 / c1', () => {
    const { made, detection } = inTurn({ units: 1000, first: 50, second: 30 }, 'the same share');
    expect(detection?.value).toBeCloseTo(1 - 30 / 50, 12);
    expect((made?.value ?? 0) * 1000).toBeCloseTo((50 * 50) / (50 - 30), 9);
  });

  it('are told to be open where the second finds as many as the first, or nothing is found', () => {
    const many = inTurn({ units: 100, first: 10, second: 12 }, 'the same share');
    expect(many.made).toBeNull();
    expect(many.detection).toMatchObject({ value: 0, low: 0 });
    expect(many.told[0]).toContain('either they differ, or nearly everything is missed');
    expect(inTurn({ units: 100, first: 0, second: 0 }, 1).told[0]).toContain('Nothing found tells nothing');
  });

  it('have an interval of detection that takes part in how many have it: few seconds, no upper limit', () => {
    const { made, told } = inTurn({ units: 100, first: 9, second: 7 }, 'the same share');
    expect(made?.high).toBe(1);
    expect(told.at(-1)).toMatch(/^So few tell no upper limit/);
  });
});

describe('two looks side by side', () => {
  it('are those of Chapman: 100 and 100 seen, 20 of them by both, are (101 x 101) / 21 - 1', () => {
    const { made, detection } = sideBySide({ units: 1000, first: 100, second: 100, both: 20 }),
      many = (101 * 101) / 21 - 1,
      error = Math.sqrt((101 * 101 * 80 * 80) / (21 * 21 * 22));
    expect(detection?.value).toBe(0.2);
    expect(made?.value).toBeCloseTo(many / 1000, 12);
    expect(made?.high).toBeCloseTo((many + 1.959964 * error) / 1000, 6);
  });

  it('leave no fewer than were seen, and nothing without one seen by both', () => {
    expect(sideBySide({ units: 50, first: 10, second: 10, both: 10 }).made).toMatchObject({
      value: 0.2,
      low: 0.2,
    });
    expect(sideBySide({ units: 50, first: 3, second: 2, both: 0 }).made).toBeNull();
  });
});

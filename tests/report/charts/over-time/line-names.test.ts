import { describe, expect, it } from 'vitest';
import { spread } from '../../../../src/report/charts/over-time/line-names.js';

describe('names beside lines', () => {
  it('never cover one another and stay inside', () => {
    const blocks = [10, 12, 14, 95].map((wanted) => ({ wanted, height: 20 }));
    const tops = spread(blocks, 0, 100).map(({ at }) => at);
    tops.slice(1).forEach((top, index) => {
      expect(top - (tops[index] ?? 0)).toBeGreaterThanOrEqual(20);
    });
    expect(tops[0]).toBeGreaterThanOrEqual(0);
    expect((tops.at(-1) ?? 0) + 20).toBeLessThanOrEqual(100);
  });

  it('stand where they are wanted when there is room', () => {
    expect(
      spread(
        [
          { wanted: 10, height: 20 },
          { wanted: 50, height: 20 },
        ],
        0,
        100,
      ).map(({ at }) => at),
    ).toEqual([10, 50]);
  });
});

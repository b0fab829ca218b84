import { describe, expect, it } from 'vitest';
import { draw } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

describe('place time', () => {
  it('adds to 100 % of the time on shift for every station, sites in route order, nine states', () => {
    const { labels, datasets: states } = draw('03-place-time').configuration.data;
    expect(states).toHaveLength(9);
    const sums = (labels ?? []).map((_, row) =>
      states.reduce((sum, state) => sum + ((state.data[row] as number | null) ?? 0), 0),
    );
    expect(sums.filter((sum) => sum === 0)).toHaveLength(3); // headings of the sites
    for (const sum of sums) if (sum !== 0) expect(sum).toBeCloseTo(100, 9);
    expect([labels?.[0], labels?.[16], labels?.[32]]).toEqual([
      'coachworks north',
      'paint and finishing works',
      'final plant',
    ]);
  });

  it('grows with the stations', () => {
    const heights = [3, 45, 60].map((stations) => draw('03-place-time', sampleResults({ stations })).height);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    expect(heights[2]).toBeGreaterThan(60 * 20);
  });
});

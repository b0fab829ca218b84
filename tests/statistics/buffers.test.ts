import { describe, expect, it } from 'vitest';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { exactThroughput } from './exact-line.js';
import { exponential, lineYaml, noRoom } from './line.js';

/**
 * Best allocations to small balanced exponential lines, by the Markov chain over every allocation; their
 * shape, more room in the middle, is that of Hillier, So & Boling (1993), Management Science 39(1), 126-133
 * (digits computed, not theirs).
 */
const CASES = [
  { stations: 4, places: 2, best: 0.589703, at: ['1,1,0', '0,1,1'] },
  { stations: 4, places: 4, best: 0.657175, at: ['1,2,1'] },
  { stations: 4, places: 5, best: 0.676672, at: ['2,2,1', '1,2,2'] },
  { stations: 5, places: 2, best: 0.553091, at: ['0,1,1,0'] },
  { stations: 5, places: 5, best: 0.627503, at: ['1,1,2,1', '1,2,1,1'] },
];
const ZONE = 0.01;

const study = async (stations: number, goal: Parameters<typeof built.buffersStudy>[0]['goal']) => {
  const scenario = scenarioBuilt(
    lineYaml({
      work: new Array<string>(stations).fill(exponential(1)),
      between: noRoom(stations),
      hours: 4000,
    }),
  );
  return built.buffersStudy({
    scenario,
    file: 'line.yaml',
    goal,
    replications: 12,
    seed: 'buffers',
    workers: 1,
    zone: ZONE,
  });
};

describe('places shared out over a balanced exponential line, against the exact best', SLOW, () => {
  it.each(CASES)(
    '$places over $stations stations are shared out within the zone of 1 % of the best, and told within the interval',
    async ({ stations, places, best, at }) => {
      const found = await study(stations, { kind: 'budget', places });
      const exact = exactThroughput(new Array<number>(stations).fill(1), found.chosen.places);
      // The table is that of this chain.
      expect(
        Math.max(
          ...at.map((layout) =>
            exactThroughput(new Array<number>(stations).fill(1), layout.split(',').map(Number)),
          ),
        ),
      ).toBeCloseTo(best, 6);
      expect(found.chosen.total).toBe(places);
      expect(best - exact, `regret of ${found.chosen.places.join('-')}`).toBeLessThanOrEqual(ZONE * best);
      // 12 and more replications: twice the half-width of 95 % is over 4 standard errors.
      const { mean, low, high } = found.chosen.rate;
      expect((high! - low!) / 2 / mean).toBeLessThanOrEqual(0.01);
      expect(Math.abs(mean - exact)).toBeLessThanOrEqual(high! - low!);
    },
  );

  it('the fewest places for a rate between the exact best of 3 and of 4 places are 4', async () => {
    const ones = [1, 1, 1, 1],
      three = Math.max(
        ...[
          [1, 1, 1],
          [0, 2, 1],
          [1, 2, 0],
          [0, 3, 0],
          [2, 1, 0],
          [0, 1, 2],
        ].map((layout) => exactThroughput(ones, layout)),
      );
    const found = await study(4, { kind: 'target', rate: (three + 0.657175) / 2 });
    expect(found.chosen.total).toBe(4);
    expect(0.657175 - exactThroughput(ones, found.chosen.places)).toBeLessThanOrEqual(ZONE * 0.657175);
    expect(found.answer.verdict).not.toBe('out of reach');
  });
});

import { describe, expect, it } from 'vitest';
import { SLOW } from './agree.js';
import { built, replicateBuilt, scenarioBuilt } from './built.js';
import { valley } from './valley.js';

const AT = ['ferry: bank', 'fit'],
  QUANTITY = 150,
  MOST = 13;
type Goal = Parameters<typeof built.buffersStudy>[0]['goal'];
const study = (quantity: number, goal: Goal, seed: string, from: 'least' | 'present', replications: number) =>
  built.buffersStudy({
    scenario: scenarioBuilt(valley(quantity, { bank: 3, buffer: 1 })),
    file: 'valley.yaml',
    workers: 1,
    looksAround: false,
    at: AT,
    ...{ goal, seed, from, replications },
  });

/** Over two spots, with at most so many places. */
function layouts(places: number, { spots }: Awaited<ReturnType<typeof study>>): number {
  const free = places - spots.reduce((sum, { least }) => sum + least, 0);
  return ((free + 1) * (free + 2)) / 2;
}

describe('a valley between two good banks, against all layouts run', SLOW, () => {
  /** Units a working day of each layout, by replications that no study sees. */
  const truth = new Map<string, number>();
  for (let bank = 1; bank <= MOST; bank++)
    for (let buffer = 0; bank + buffer <= MOST; buffer++) {
      const each = replicateBuilt(valley(QUANTITY, { bank, buffer }), 12, 'truth', ({ endedAt, outcome }) =>
        outcome === 'gridlock' ? 0 : QUANTITY / (endedAt / 1440 / 7) / 5,
      );
      truth.set(`${bank},${buffer}`, each.reduce((a, b) => a + b, 0) / each.length);
    }
  const rateOf = (places: readonly number[]): number => truth.get(places.join()) ?? 0,
    bestOf = (budget: number): number =>
      Math.max(
        ...[...truth]
          .filter(([key]) => budget >= Number(key.split(',')[0]) + Number(key.split(',')[1]))
          .map(([, rate]) => rate),
      );

  it('has a valley: a fourth place in the bank costs, and three bring more', () => {
    expect(rateOf([4, 5])).toBeLessThan(0.9 * rateOf([3, 5]));
    expect(rateOf([6, 5])).toBeGreaterThan(1.05 * rateOf([3, 5]));
  });

  it.each([10, 13])('with %i places the regret is at most 1 % in 20 of 20 seeds', async (places) => {
    const best = bestOf(places);
    for (let seed = 1; seed <= 20; seed++) {
      const from = seed % 2 === 0 ? 'least' : 'present',
        found = await study(QUANTITY, { kind: 'budget', places }, `of ${seed}`, from, 3);
      expect(found.search.within).toBe(layouts(places, found));
      expect(
        1 - rateOf(found.best!.places) / best,
        `seed ${seed}: ${found.best!.places.join('-')}`,
      ).toBeLessThanOrEqual(0.01);
    }
  });

  it.each(['least', 'present'] as const)(
    '12 places, 6 and 6, are found for 4.5 a day from %s',
    async (from) => {
      const found = await study(900, { kind: 'target', rate: 4.5 }, '1', from, 6);
      expect(found.spots.map(({ chosen }) => chosen)).toEqual([6, 6]);
      expect(found.search.fewer).toBe(layouts(11, found));
      expect(found.chosen.rate.mean).toBeGreaterThanOrEqual(4.5);
    },
  );
});

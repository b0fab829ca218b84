import { beforeAll, describe, expect, it } from 'vitest';
import { placeStanding } from '../../../../src/study/buffers/around/place-by-place.js';
import {
  cheapestSentence,
  cliffsSentence,
  gainsSentence,
} from '../../../../src/study/buffers/around/words.js';
import { buffersStudy } from '../../../../src/study/buffers/buffers.js';
import type { BufferResults } from '../../../../src/study/buffers/results.js';
import { familyLevel } from '../../../../src/study/statistics/difference.js';
import { threeStations } from '../buffers-line.js';

const study = (more: Partial<Parameters<typeof buffersStudy>[0]> = {}): Promise<BufferResults> =>
  buffersStudy({
    scenario: threeStations('{ exponential: { mean: 1 h } }', [3, 3]),
    file: 'three.yaml',
    goal: { kind: 'budget', places: 3 },
    replications: 4,
    seed: 'a',
    workers: 1,
    ...more,
  });
const estimate = (low: number, high: number) => ({ mean: (low + high) / 2, low, high, level: 0.99, n: 9 });

describe('what lies around the chosen layout', { timeout: 60_000 }, () => {
  let found: BufferResults;
  beforeAll(async () => {
    found = await study();
  });

  it('is up to three places more and fewer at each spot, never below the least', () => {
    const { spots, leftOut } = found.placeByPlace!;
    expect(leftOut).toBeNull();
    expect(spots.map(({ name, chosen }) => [name, chosen])).toEqual(
      found.spots.map(({ name, chosen }) => [name, chosen]),
    );
    for (const { chosen, points } of spots)
      expect(points.map(({ places }) => places)).toEqual(
        [-3, -2, -1, 1, 2, 3].map((by) => chosen + by).filter((places) => places >= 0),
      );
  });

  it('is told from ten fresh replications at least, at one level for all of it', () => {
    const { spots, replications, eachLevel } = found.placeByPlace!,
      points = spots.flatMap((each) => each.points);
    expect(replications).toBe(10);
    // With what a unit costs more, as there are prices.
    expect(eachLevel).toBe(familyLevel(0.95, 2 * points.length));
    for (const { more, cost } of points) {
      expect(more).toMatchObject({ n: 10, level: eachLevel });
      expect(cost).toMatchObject({ n: 10, level: eachLevel });
    }
  });

  it('says nothing where it is not looked for, and where nothing does what is asked', async () => {
    expect(await study({ looksAround: false })).toMatchObject({ placeByPlace: null, cheapest: null });
    const never = await study({ goal: { kind: 'target', rate: 2 } });
    expect(never.answer.verdict).toBe('out of reach');
    expect(never).toMatchObject({ placeByPlace: null, cheapest: null });
  });

  it('holds the cheapest layout that does what is asked, with parts that add to its cost', async () => {
    const { cheapest } = await study({ goal: { kind: 'target', rate: 0.6 } });
    for (const { parts, cost } of cheapest!.layouts)
      expect(parts.reduce((sum, each) => sum + each, 0)).toBeCloseTo(cost!.mean, 9);
    // Only floor has a price, so none at all would be cheapest; but 0.564 units an hour are too few.
    expect(cheapest!.cheapest.total).toBeGreaterThan(0);
    const { cheapest: free } = await study({ goal: { kind: 'budget', places: 3 } });
    expect(free!.cheapest.places).toEqual([0, 0]);
    expect(free!.verdict).toBe('cheaper');
  });

  it('holds the cheapest layout that ships the share asked, of what the other ships in the same runs', async () => {
    const { cheapest, placeByPlace } = await study({ goal: { kind: 'share', share: 0.9, of: 'present' } }),
      { layouts, cheapest: least, within } = cheapest!,
      present = layouts.find(({ role }) => role === 'as it is')!,
      rateOf = ({ more }: typeof least): number => placeByPlace!.rate + (more?.mean ?? 0);
    expect(within).toBeNull();
    expect(present.total).toBe(6);
    expect(rateOf(least)).toBeGreaterThanOrEqual(0.9 * rateOf(present));
    // Only floor has a price, so none at all would be cheapest; but it ships three quarters (exactly).
    expect(least.total).toBeGreaterThan(0);
  });

  it('calls a cliff only what surely loses three zones, whatever its mean', () => {
    expect(placeStanding(estimate(-5, -3), 1)).toBe('cliff');
    expect(placeStanding(estimate(-9, -2.9), 1)).toBe('loses');
    expect(placeStanding(estimate(-0.5, -0.1), 1)).toBe('equal');
    expect(placeStanding(estimate(-9, 1.1), 1)).toBe('not told apart');
    expect(placeStanding(estimate(0.1, 2), 1)).toBe('gains');
  });

  it('has cliffs and gains in words where there are some, and not where results are changed to fool it', () => {
    const { placeByPlace } = found,
      [spot] = placeByPlace!.spots;
    const changed = (by: number, low: number, high: number, standing: 'cliff' | 'gains' | 'equal') => ({
      ...found,
      placeByPlace: {
        ...placeByPlace!,
        spots: [
          { ...spot, points: [{ ...spot.points[0], by, more: estimate(low, high), standing, nothingIn: 0 }] },
        ],
      },
    });
    expect(cliffsSentence(changed(-1, -0.2, -0.1, 'cliff'))).toMatch(
      /^A cliff \(units an hour\): one fewer at second loses 0\.15 \(0\.10 to 0\.20\) of 0\.\d+\.$/,
    );
    // Two places away is no neighbour.
    expect(cliffsSentence(changed(-2, -0.2, -0.1, 'cliff'))).toMatch(/^No cliff/);
    expect(cliffsSentence(changed(1, -0.01, 0.01, 'equal'))).toMatch(/^No cliff/);
    const room = { kind: 'budget', places: found.chosen.total + 1 } as const;
    expect(gainsSentence({ ...changed(1, 0.1, 0.2, 'gains'), goal: room })).toMatch(/it ships \+0\.15/);
    // Less than the zone by its interval, or more places than the budget has.
    expect(gainsSentence({ ...changed(1, 0.0001, 0.2, 'gains'), goal: room })).toBeNull();
    expect(gainsSentence({ ...changed(2, 0.1, 0.2, 'gains'), goal: room })).toBeNull();
    // That more places than a target needs ship more is no news; that fewer do is.
    const target = { kind: 'target', rate: 0.5, relative: null } as const;
    expect(gainsSentence({ ...changed(1, 0.1, 0.2, 'gains'), goal: target })).toBeNull();
    expect(gainsSentence({ ...changed(-1, 0.1, 0.2, 'gains'), goal: target })).toMatch(/it ships \+0\.15/);
  });

  it('says that another layout is cheaper only where the whole interval says so', () => {
    const { cheapest } = found,
      told = (
        verdict: 'cheaper' | 'as cheap' | 'not told apart' | 'chosen',
        within = cheapest!.within,
        goal = found.goal,
      ) => cheapestSentence({ ...found, goal, cheapest: { ...cheapest!, verdict, within } });
    expect(cheapest!.cheapest.dearer!.high).toBeLessThan(0);
    expect(cheapest!.verdict).toBe('cheaper');
    expect(told('cheaper')).toMatch(/^Cheapest found of all 10 layouts with up to 3 places: 0 places \(/);
    expect(told('cheaper', null)).toMatch(/^Cheapest found of the layouts tried: 0 places \(/);
    expect(told('cheaper', null, { kind: 'target', rate: 0.5, relative: null })).toMatch(
      /^Cheapest found of the layouts tried that reach the target: /,
    );
    expect(told('as cheap')).toMatch(/^The chosen layout costs as little, to within 1 %/);
    expect(told('not told apart')).toMatch(
      /^Cheapest by the means alone of all 10.*more replications would tell/,
    );
    expect(told('chosen')).toMatch(
      /^Of all 10 layouts with up to 3 places the chosen one costs least by the mean/,
    );
  });
});

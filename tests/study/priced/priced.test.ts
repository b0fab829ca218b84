import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import { pricePerGain } from '../../../src/study/priced/per-gain.js';
import { reliefsStudy } from '../../../src/study/reliefs/reliefs.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';

/** 240 units of an hour each, one after another, round the clock: ten days, 24 a day. */
const yaml = (changes: string): string => `
scenario: one machine
programme: { start: 2027-04-05, quantity: 240, arrivals: saturated }
sites: { a: { stations: { s: { buffer: 3 }, t: {} } } }
costs:
  currency: EUR
${changes === '' ? '' : `  changes:\n${changes}`}
route:
  - { step: one, at: s, work: 1 h }
  - { step: two, at: t, work: 0 min }
`;
async function study(changes: string): Promise<ReliefsResults> {
  const text = yaml(changes),
    { scenario, problems } = readScenario(text, 'made.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  const data = scenarioData(text, 'made.yaml', () => '');
  return reliefsStudy({ ...{ scenario, data, file: 'made.yaml', replications: 2, seed: 's', workers: 1 } });
}
const of = ({ reliefs }: ReliefsResults, text: string) => {
  const found = reliefs.find((each) => each.text === text);
  if (found === undefined)
    throw new Error(`no relief ${text} among ${reliefs.map((each) => each.text).join()}`);
  return found;
};
const PLACE = 'one place more at s',
  WORK = '10 % off the work of one';

describe('gain per money, by hand', () => {
  const changes = `
    second machine: { relief: place, of: s, price: 240000, day: 480, ready after: 5 months, at most: 1 }
    sharper tools: { relief: work, of: one, price: 8000 }
    three machines: { changes: [{ sites.a.stations.s.places: 3 }], price: 960000 }
    two as a bundle: { changes: [{ sites.a.stations.t.places: 2 }], price: 7 }
    tools too: { changes: [{ "route[one].work": 50 min }], price: 1000, requires: second machine }
    not priced: { changes: [{ sites.a.stations.s.places: 2, "route[one].work": 30 min }] }
`;
  it('ranks another first than gain alone does, where what gains most is dear', async () => {
    const results = await study(changes),
      place = of(results, PLACE),
      work = of(results, WORK),
      three = of(results, '“three machines”');
    // 240 units in 5 days are 48 a day, in 9 days 26 2/3, in 10/3 days 72.
    expect(place.gain.mean).toBeCloseTo(24, 9);
    expect(work.gain.mean).toBeCloseTo(8 / 3, 9);
    expect(three.gain.mean).toBeCloseTo(48, 9);
    // 240,000 / 24, 8,000 / (8 / 3), 960,000 / 48.
    expect(place.pricePerGain?.mean).toBeCloseTo(10000, 6);
    expect(work.pricePerGain?.mean).toBeCloseTo(3000, 6);
    expect(three.pricePerGain?.mean).toBeCloseTo(20000, 6);
    expect(three.rank).toBeLessThan(place.rank);
    expect(place.rank).toBeLessThan(work.rank);
    expect(work.rankPerPrice!).toBeLessThan(place.rankPerPrice!);
    expect(place.rankPerPrice!).toBeLessThan(three.rankPerPrice!);
    // 240,000 and 960,000 over 240 units.
    expect(place.offer).toEqual({
      ...{
        names: ['second machine'],
        currency: 'EUR',
        price: 240000,
        pricePerUnit: 1000,
        day: 480,
        needs: [],
      },
      ...{ readyAfter: '5 months', atMost: 1 },
    });
    expect(three.offer).toMatchObject({ names: ['three machines'], pricePerUnit: 4000, readyAfter: null });
    // 480 a day for the five days in which it now takes 240 units; nothing else has a price.
    expect(place.costPerUnit?.mean).toBeCloseTo(10, 9);
    expect(work.costPerUnit?.mean).toBe(0);
  });

  it('tries a bundle that is a relief once, and one that needs others with these', async () => {
    const results = await study(changes),
      texts = results.reliefs.map(({ text }) => text);
    expect(of(results, 'one place more at t').offer).toMatchObject({ names: ['two as a bundle'], price: 7 });
    expect(texts).not.toContain('“two as a bundle”');
    expect(texts).not.toContain('“tools too”');
    const both = of(results, '“tools too” and “second machine”');
    // 240 units of 50 min at two places: 100 h, 57.6 a day.
    expect(both.gain.mean).toBeCloseTo(57.6 - 24, 9);
    expect(both.offer).toMatchObject({ price: 241000, names: ['second machine', 'tools too'], needs: [] });
    expect(results.skipped).toEqual([]);
  });

  it('gives no rank to what has no price, does not gain, or is bought only with another', async () => {
    const results = await study(
      `${changes}    other: { relief: place, of: t, requires: second machine, price: 1 }\n`.replace(
        / {4}two as.*\n/,
        '',
      ),
    );
    const free = of(results, '“not priced”');
    expect(free.gain.mean).toBeGreaterThan(0);
    expect(free).toMatchObject({ pricePerGain: null, rankPerPrice: null, offer: { price: null } });
    expect(of(results, 'one place more at t')).toMatchObject({
      ...{ rankPerPrice: null, offer: { price: 1, needs: ['second machine'] } },
    });
    expect(of(results, 'one space more ahead of s')).toMatchObject({ offer: null, rankPerPrice: null });
  });

  it('leaves all other results as they were', async () => {
    const plain = await study(''),
      named = await study('    second machine: { relief: place, of: s, price: 240000 }\n');
    expect(plain.reliefs.every((each) => !('offer' in each || 'rankPerPrice' in each))).toBe(true);
    const added = ['offer', 'pricePerGain', 'rankPerPrice'],
      rest = (results: ReliefsResults): unknown =>
        JSON.parse(
          JSON.stringify(results, (key, value: unknown) => (added.includes(key) ? undefined : value)),
        );
    expect(rest(named)).toEqual(rest(plain));
    expect(JSON.stringify(named)).not.toBe(JSON.stringify(plain));
  });
});

describe('the price of a unit gained', () => {
  const gain = { mean: 0.25, low: 0.2, high: 0.4, level: 0.95, n: 20 };
  it('has the interval of the gain turned over', () => {
    expect(pricePerGain(100, gain)).toEqual({ mean: 400, low: 250, high: 500, level: 0.95, n: 20 });
    expect(pricePerGain(0, gain)).toMatchObject({ mean: 0, low: 0, high: 0 });
  });
  it('is not told of what may gain nothing', () => {
    expect(pricePerGain(100, { ...gain, low: 0 })).toBeNull();
    expect(pricePerGain(100, { ...gain, low: null, high: null })).toBeNull();
  });
});

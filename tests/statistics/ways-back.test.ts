import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { exponential } from './line.js';
import { twoPlants } from './two-plants.js';

/** Work, drives and tests of two plants, hours; `lane` and `booth` are keys of both lanes and of the booth. */
const plants = (
  programme: string,
  { paint, out, test, home, back }: Parameters<typeof twoPlants>[0],
  { lane, booth, bay }: { readonly lane: string; readonly booth: string; readonly bay: string },
): string => `
scenario: two plants
programme: { ${programme} }
sites:
  paint shop: { stations: { booth: { ${booth} } } }
  final plant: { stations: { bay: { ${bay} } } }
lanes:
  out: { from: paint shop, to: final plant, capacity: 1, drive: ${exponential(out)}, ${lane} }
  home: { from: final plant, to: paint shop, capacity: 1, drive: ${exponential(home)}, ${lane} }
route:
  - { step: paint, at: booth, work: ${exponential(paint)} }
  - { lane: out }
  - { step: test, at: bay, work: ${exponential(test)}, fails: { chance: ${100 * back} %, back to: paint, limit: unlimited } }
`;

describe('units that a test sends back to another plant', SLOW, () => {
  // Jackson (1957), Operations Research 5(4), 518-521: each station is an M/M/1 of the rate 1/3 / (1 - 1/4) =
  // 4/9 an hour, so 0.6 / 0.4 and 0.5 / 0.5 units are there; on lanes with trucks for everybody the rate times
  // the drive. Units sent back go first: with exponential work that changes who waits, not how many.
  const times = { paint: 1.35, out: 2, test: 1.125, home: 4, back: 0.25 },
    yaml = plants(`arrivals: ${exponential(3)}, length: 60000 h, warm up: 1000 h`, times, {
      lane: 'trucks: 40',
      booth: 'buffer: unlimited',
      bay: 'buffer: unlimited',
    }),
    seen = observations(yaml, { replications: 80 });

  it('take 1.5 + 1 units at the stations and 8/9 + 4/9 on the lanes, by Jackson (1957)', () => {
    const expected = [1.5, 1, 8 / 9, 4 / 9];
    for (const [location, units] of expected.entries())
      expectAgreement(
        seen.map((o) => o.wipByLocation[location]),
        units,
        0.01,
      );
  });

  it('have a lead time of 3 h for each of these units, by Little (1961)', () => {
    expectAgreement(
      seen.map((o) => (o.wip * o.minutes) / 60 / o.shipped),
      3 * (1.5 + 1 + 8 / 9 + 4 / 9),
      0.01,
    );
  });

  it('load each lane as `check` says: 4/3 units out and 1/3 home for each released', () => {
    const scenario = scenarioBuilt(yaml),
      { rows } = built.capacity(built.compile(scenario), scenario);
    for (const [lane, visits] of [4 / 3, 1 / 3].entries()) {
      const said = rows.find(({ kind, name }) => kind === 'lane' && name === ['out', 'home'][lane])!;
      expect(said.visitsPerUnit).toBeCloseTo(visits, 6);
      expectAgreement(
        seen.map((o) => o.lanes.carried[lane] / o.entered),
        visits,
        0.01,
      );
      // Trucks are away as long as their units are.
      expectAgreement(
        seen.map((o) => o.lanes.truckBusy[lane]),
        said.load!,
        0.01,
      );
    }
  });
});

describe('two plants with little room between them', SLOW, () => {
  // One truck and a bank of one each way: the booth waits for the bank, the truck out for the bay, the bay for
  // the bank home. Not too much room for the chain, which is solved without chance.
  const times = { paint: 1, out: 0.8, test: 0.9, home: 2.5, back: 0.3 },
    exact = twoPlants(times),
    seen = observations(
      plants('arrivals: saturated, length: 40000 h, warm up: 500 h', times, {
        lane: 'trucks: 1, bank: 1',
        booth: 'buffer: 0, rework buffer: unlimited',
        bay: 'buffer: 0',
      }),
      { replications: 30 },
    );

  it('ship as many units as the Markov chain', () => {
    expectAgreement(seen.map(perHour), exact.throughput);
  });

  it('have as many units in the paint shop', () => {
    expectAgreement(
      seen.map((o) => o.wipByLocation[0]),
      exact.atBooth,
    );
  });

  it('have the truck out wait for room as often', () => {
    expectAgreement(
      seen.map((o) => o.lanes.truckBlocked[0]),
      exact.truckWaits,
    );
  });
});

import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/measure/observe.js';
import { lotChain } from '../study/capacity/lot-chain.js';
import { expectAgreement, observations, SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';

/** An oven that always has parts before it, of which some are baked at 60, some at 80 and some at 120 degrees. */
const SHARES = [0.4, 0.35, 0.25];
const oven = (station: string): string => `
scenario: oven
programme:
  start: 2027-03-01
  arrivals: saturated
  quantity: 20000
  options: { part: { lid: ${SHARES[0]}, frame: ${SHARES[1]}, beam: ${SHARES[2]} } }
sites: { hall: { stations: { oven: { ${station} } } } }
route: [{ step: bake, at: oven, process: 40 min, setting: { part: { lid: 60, frame: 80, beam: 120 } } }]
`;
const HEATS = 'changeover: { on: setting, process: 20 min';
const sum = (values: Iterable<number>): number => [...values].reduce((a, b) => a + b, 0);
const aUnit = ({ changeovers, taken }: Observation): number => sum(changeovers) / taken[0];

/**
 * Batches by setting with so many spaces ahead and at most k in a row, as an exact Markov chain: the settings of
 * those in the spaces in order, the setting of the place and how many in a row. A unit is one step; the one that
 * stands outside gets the space that comes free. Chances of a change from one setting to another.
 */
function batchChain(spaces: number, k: number): number[] {
  const n = SHARES.length;
  let chance = new Map([[`${'0'.repeat(spaces)}|0|1`, 1]]),
    pairs: number[] = [];
  for (let round = 0; round < 400; round++) {
    const next = new Map<string, number>();
    pairs = Array.from({ length: n * n }, () => 0);
    for (const [state, p] of chance) {
      const [queue = '', place = '', row = ''] = state.split('|'),
        wanted = Array.from(queue).findIndex((each) => (each !== place) === Number(row) >= k),
        at = Math.max(0, wanted),
        value = queue[at],
        inRow = value !== place || Number(row) >= k ? 1 : Number(row) + 1,
        left = queue.slice(0, at) + queue.slice(at + 1);
      if (value !== place) pairs[Number(place) * n + Number(value)] += p;
      SHARES.forEach((share, drawn) => {
        const key = `${left}${drawn}|${value}|${inRow}`;
        next.set(key, (next.get(key) ?? 0) + p * share);
      });
    }
    chance = next;
  }
  return pairs;
}

describe('settings of an oven', SLOW, () => {
  it('change 1 - sum p^2 of the times in order of arrival: independent draws (renewal-reward, from memory)', () => {
    expectAgreement(
      observations(oven(`buffer: 5, ${HEATS} }`)).map(aUnit),
      1 - sum(SHARES.map((p) => p * p)),
      0.005,
    );
  });

  it.each([
    [2, 2],
    [4, 3],
  ])('change in batches as the exact chain does, with %i spaces and at most %i in a row', (spaces, most) => {
    const chain = batchChain(spaces, most),
      seen = observations(oven(`buffer: ${spaces}, ${HEATS}, batch: { most: ${most} } }`), {
        replications: 40,
      });
    expectAgreement(seen.map(aUnit), sum(chain), 0.005);
    // The rarest pair too.
    expectAgreement(
      seen.map(({ changeovers, taken }) => changeovers[2 * 3 + 1] / taken[0]),
      chain[2 * 3 + 1],
      0.01,
    );
  });

  it('change between lots of four as the exact chain does: superposition of renewals, Cox & Smith 1954 (from memory)', () => {
    const chain = lotChain(SHARES, 4),
      same = chain[0] + chain[4] + chain[8];
    expectAgreement(
      observations(oven(`places: 4, buffer: 200, lot: { least: 4, most: 4 }, ${HEATS} }`)).map(
        (seen) => 4 * aUnit(seen),
      ),
      1 - same,
      0.01,
    );
  });

  it('change once in k lots with batches of k while all of three wait', () => {
    const seen = observations(
      oven(`places: 4, buffer: 200, lot: { least: 4, most: 4 }, ${HEATS}, batch: { most: 3 } }`),
    );
    // But for the last units of a run, to which nothing comes any more.
    for (const each of seen) expect(Math.abs(12 * aUnit(each) - 1)).toBeLessThanOrEqual(0.002);
  });
});

describe('the capacity of an oven in check', SLOW, () => {
  /** Units a day as check says, and the mean of those simulated where the oven always has work. */
  function rates(yaml: string): { check: number; simulated: number[] } {
    const scenario = scenarioBuilt(yaml),
      { highestRatePerDay } = built.capacity(built.compile(scenario), scenario);
    return {
      check: highestRatePerDay!,
      simulated: observations(yaml).map(({ shipped, minutes }) => (shipped / minutes) * 1440),
    };
  }
  function expectWithin(yaml: string, share: number): void {
    const { check, simulated } = rates(yaml),
      mean = sum(simulated) / simulated.length;
    expect(Math.abs(mean / check - 1), `check ${check}, simulated ${mean}`).toBeLessThanOrEqual(share);
  }

  it.each([
    ['in order of arrival', `buffer: 60, ${HEATS} }`],
    ['in batches of five', `buffer: 60, ${HEATS}, batch: { most: 5 } }`],
    ['in lots of four', `places: 4, buffer: 60, lot: { least: 4, most: 4 }, ${HEATS} }`],
    [
      'in lots of four, three in a row',
      `places: 4, buffer: 60, lot: { least: 4, most: 4 }, ${HEATS}, batch: { most: 3 } }`,
    ],
  ])('is within 2 % of the simulated one %s', (_, station) => {
    expectWithin(oven(station), 0.02);
  });

  it('is within 2 % where three bakes of each unit share it in batches', () => {
    expectWithin(
      `
scenario: three bakes
programme: { start: 2027-03-01, arrivals: saturated, quantity: 3000 }
carriers: { skids: { count: 40, from: come, to: clear bake, return: 1 min } }
sites:
  hall:
    stations:
      gate: {}
      booth: { places: 12, buffer: unlimited }
      oven: { buffer: unlimited, ${HEATS}, batch: { most: 5 } } }
route:
  - { step: come, at: gate }
  - { step: prime, at: booth, work: { mean: 60 min, cv: 0.5 } }
  - { step: prime bake, at: oven, process: 40 min, setting: 60 degrees }
  - { step: base, at: booth, work: { mean: 60 min, cv: 0.5 } }
  - { step: base bake, at: oven, process: 40 min, setting: 80 degrees }
  - { step: clear, at: booth, work: { mean: 60 min, cv: 0.5 } }
  - { step: clear bake, at: oven, process: 40 min, setting: 120 degrees }
`,
      0.02,
    );
  });

  it('is that of the engine to the minute where a unit keeps its place between two settings', () => {
    // 30 + 20 + 40 + 20 back: 110 min.
    const { check, simulated } = rates(`
scenario: two settings in a place
programme: { start: 2027-03-01, arrivals: saturated, length: 1100 h, warm up: 110 h }
sites: { hall: { stations: { oven: { ${HEATS} } } } } }
route:
  - { step: dry, at: oven, process: 30 min, setting: 60 degrees }
  - { step: cure, at: oven, process: 40 min, setting: 80 degrees }
`);
    expect(check).toBeCloseTo(1440 / 110, 9);
    expect(simulated[0]).toBeCloseTo(check, 1);
  });
});

import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import type { OptionMix } from '../../../src/scenario/types/programme.js';
import type { StationStep } from '../../../src/scenario/types/steps.js';

import { optionMix } from '../../../src/study/capacity/mix.js';
import { expectedVisits } from '../../../src/study/capacity/visits/visits.js';
import {
  back,
  chance,
  minutes,
  programme,
  repair,
  scenario,
  scrap,
  site,
  station,
  step,
} from '../../scenario/compile-scenario.js';

/** Visits of the only build of a route of one-station steps. */
function visitsOf(steps: readonly StationStep[], options: OptionMix = {}) {
  const stations = Object.fromEntries(steps.map(({ at }) => [at, station()]));
  const kinds = new Set(
    steps.flatMap(({ creates, finds }) => [...Object.keys(creates), ...Object.keys(finds)]),
  );
  const defects = Object.fromEntries([...kinds].map((kind) => [kind, { note: undefined }]));
  const model = compile(
    scenario({ sites: { yard: site(stations) }, route: steps, defects, programme: programme({ options }) }),
  );
  const { builds } = optionMix(model);
  return builds.map((build) => ({ weight: build.weight, ...expectedVisits(model, 0, build) }));
}
const endless = 1_000_000;
const one = (name: string, more: Partial<StationStep> = {}): StationStep =>
  step(name, `bay of ${name}`, { work: minutes(10), ...more });

describe('expected visits', () => {
  it('are 1 / (1 - p) in a loop of chance p (Jackson 1957, the rework loop of p = 0.2)', () => {
    const [{ visits, yield: share }] = visitsOf([
      one('build'),
      one('test', { fails: back(0.2, 'build', { limit: endless }) }),
    ]);
    expect(visits[0]).toBeCloseTo(1.25, 8);
    expect(visits[1]).toBeCloseTo(1.25, 8);
    expect(share).toBeCloseTo(1, 8);
  });

  it('are (1 - p^(L + 1)) / (1 - p) with a limit of L send-backs (geometric, cut off)', () => {
    for (const [p, limit] of [
      [0.2, 5],
      [0.5, 2],
      [0.9, 3],
      [1, 4],
    ] as const) {
      const expected = Array.from({ length: limit + 1 }, (_, k) => p ** k).reduce((a, b) => a + b, 0);
      const [{ visits, yield: share }] = visitsOf([
        one('build'),
        one('test', { fails: back(p, 'build', { limit }) }),
      ]);
      expect(visits[0]).toBeCloseTo(expected, 6);
      expect(share).toBeCloseTo(1, 6);
    }
  });

  it('lose p^(L + 1) of the units where the limit scraps them', () => {
    const [{ visits, yield: share }] = visitsOf([
      one('build'),
      one('test', { fails: back(0.5, 'build', { limit: 2, atLimit: 'scrap' }) }),
    ]);
    expect(visits[1]).toBeCloseTo(1.75, 6);
    expect(share).toBeCloseTo(1 - 0.125, 6);
  });

  it('multiply where loops lie one inside the other (a chain solved by hand)', () => {
    // From c back to a with 0.3, from b back to a with 0.2: v_b = v_a, v_c = 0.8 v_a, v_a = 1 + 0.2 v_a + 0.3
    // * 0.8 v_a.
    const [{ visits }] = visitsOf([
      one('a'),
      one('b', { fails: back(0.2, 'a', { limit: endless }) }),
      one('c', { fails: back(0.3, 'a', { limit: endless }) }),
    ]);
    const a = 1 / (1 - 0.2 - 0.24);
    [a, a, 0.8 * a].forEach((expected, i) => {
      expect(visits[i]).toBeCloseTo(expected, 7);
    });
  });

  it('come from defects made anew by the rework: found 0.9 of 0.4, again of each return', () => {
    // A return mends the item, and the step makes it anew with 0.4; a miss goes on. Each visit ends in a
    // send-back with 0.36.
    const [{ visits, yield: share }] = visitsOf([
      one('coat', { creates: { runs: chance(0.4) } }),
      one('look', { finds: { runs: back(0.9, 'coat', { limit: endless }) } }),
    ]);
    expect(visits[0]).toBeCloseTo(1 / (1 - 0.36), 7);
    expect(share).toBeCloseTo(1, 7);
  });

  it('do not repeat where the rework does not pass the step that made the defect', () => {
    // The item is mended by the return to "polish", which makes none: found once at most.
    const [{ visits }] = visitsOf([
      one('coat', { creates: { runs: chance(0.4) } }),
      one('polish'),
      one('look', { finds: { runs: back(0.9, 'polish', { limit: endless }) } }),
    ]);
    [1, 1.36, 1.36].forEach((expected, i) => {
      expect(visits[i]).toBeCloseTo(expected, 8);
    });
  });

  it('let what one inspection misses be found by the next', () => {
    const [{ repairs }] = visitsOf([
      one('coat', { creates: { dirt: chance(0.5) } }),
      one('first look', { finds: { dirt: repair(0.8, minutes(10)) } }),
      one('last look', { finds: { dirt: repair(0.9, minutes(10)) } }),
    ]);
    expect([...repairs[1].values()]).toEqual([expect.closeTo(0.4, 10)]);
    expect([...repairs[2].values()]).toEqual([expect.closeTo(0.5 * 0.2 * 0.9, 10)]);
  });

  it('go on without the scrapped', () => {
    const [{ visits, yield: share }] = visitsOf([
      one('cast', { creates: { crack: chance(0.1) } }),
      one('x-ray', { finds: { crack: scrap(0.5) } }),
      one('paint'),
    ]);
    [1, 1, 0.95].forEach((expected, i) => {
      expect(visits[i]).toBeCloseTo(expected, 10);
    });
    expect(share).toBeCloseTo(0.95, 10);
  });

  it('are 1 / n at a sample of one in n, and those sent back are seen again', () => {
    // 0.2 come to the test; each visit sends 0.5 back to "fit", and a unit sent back is tested again whatever
    // the sample says.
    const [{ visits }] = visitsOf([
      one('fit'),
      one('road test', { sample: { oneIn: 5, by: 'turn' }, fails: back(0.5, 'fit', { limit: endless }) }),
    ]);
    expect(visits[1]).toBeCloseTo(0.2 / 0.5, 8);
    expect(visits[0]).toBeCloseTo(1 + 0.2, 8);
  });

  it('heed the words skip and only', () => {
    const [{ visits }] = visitsOf([
      one('strip', { rework: 'only' }),
      one('mask', { rework: 'skip' }),
      one('coat'),
      one('cure', { rework: 'both' }),
      one('look', { fails: back(0.2, 'strip', { limit: endless }) }),
    ]);
    [0.25, 1, 1.25, 1.25, 1.25].forEach((expected, i) => {
      expect(visits[i]).toBeCloseTo(expected, 8);
    });
  });

  it('go to the earliest of the steps named by what was found', () => {
    // Independent tests at one inspection: 0.5 back to b, 0.2 back to a. To a: 0.2; to b alone: 0.8 * 0.5 =
    // 0.4.
    const creates = { left: chance(0.2) };
    const [{ visits }] = visitsOf([
      one('a', { creates }),
      one('b'),
      one('look', {
        finds: { left: back(1, 'a', { limit: endless }) },
        fails: back(0.5, 'b', { limit: endless }),
      }),
    ]);
    // First look: to a 0.2, to b 0.4. A unit from b has no item left (it was not found with certainty), so it
    // fails by half only; one from a is as new. With A, B the visits to "look" of units as new, and after b
    // alone: A = 1 + 0.2 A, B = 0.4 A + 0.5 B.
    const asNew = 1.25,
      afterB = (0.4 * asNew) / 0.5;
    expect(visits[0]).toBeCloseTo(asNew, 6);
    expect(visits[2]).toBeCloseTo(asNew + afterB, 6);
  });

  it('follow conditions build by build', () => {
    const found = visitsOf([one('coat'), one('band', { when: { stripe: ['yes'] } })], {
      stripe: { yes: 0.35, no: 0.65 },
      radio: { a: 0.5, b: 0.5 },
    });
    expect(found).toHaveLength(2);
    expect(found.reduce((sum, build) => sum + build.weight * build.visits[1], 0)).toBeCloseTo(0.35, 12);
  });
});

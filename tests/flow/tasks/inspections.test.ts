import { describe, expect, it } from 'vitest';
import { play, shippedAt, visits } from '../run-yaml.js';

/** Rules 8 and 9, by hand. Chances are 100 %, or so near it that none of a handful of units escapes. */
const NEARLY = '99.9999999 %';
const route = (steps: string, { quantity = 1, more = '' } = {}): string => `
scenario: quality
programme: { arrivals: saturated, quantity: ${quantity}${more} }
defects: { dirt: {}, runs: {} }
sites: { hall: { stations: { mill: { rework buffer: unlimited }, wash: {}, sanding: {}, gate: {}, second gate: {} } } }
route:
${steps}
`;

describe('a found defect', () => {
  it('is repaired on the spot', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 10 min, creates: { dirt: 100 %, runs: 100 % } }
  - { step: look, at: gate, work: 7 min, finds: { dirt: { chance: 100 %, repair: 25 min }, runs: { chance: 100 %, repair: 3 min } } }`),
    );
    expect(shippedAt(played)).toEqual([10 + 7 + 28]);
    expect(played.seen).toMatchObject({ openAtShipping: 0, repairMinutes: 28 });
    expect(played.seen.inspections).toMatchObject({
      inspected: Float64Array.of(1),
      repaired: Float64Array.of(1),
      firstPasses: Float64Array.of(0),
    });
  });

  it.each([
    ['lime', 'van', 40],
    ['lime', 'cab', 40],
    ['white', 'van', 30],
    ['white', 'cab', 25],
  ])(
    'on a %s %s is repaired in the time of the first option in the file that it has: %d min',
    (colour, body, minutes) => {
      const only = (values: readonly string[], value: string): string =>
        values.map((each) => `${each}: ${each === value ? 100 : 0} %`).join(', ');
      const played = play(
        route(
          `
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, work: 60 min, finds: { dirt: { chance: 100 %, repair: { usual: 25 min, colour: { lime: 40 min }, body: { van: 30 min } } } } }`,
          {
            more: `, options: { colour: { ${only(['lime', 'white'], colour)} }, body: { ${only(['van', 'cab'], body)} } }`,
          },
        ),
      );
      expect(shippedAt(played)).toEqual([61 + minutes]);
      expect(played.seen.repairMinutes).toBe(minutes);
    },
  );

  it('leaves the repairs of other units as they are when one option gets a time of its own', () => {
    const minutes = (repair: string): number[] => {
      const played = play(
        route(
          `
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, finds: { dirt: { chance: 100 %, repair: ${repair} } } }`,
          { quantity: 60, more: ', options: { colour: { lime: 30 %, white: 70 % } }' },
        ),
      );
      const out = shippedAt(played);
      // Of white units only: 1 in the order of the options.
      return out.flatMap((time, i) =>
        played.seen.optionsOf[i] === 1
          ? [Math.round(1e4 * (time - Math.max(out[i - 1] ?? 0, i + 1))) / 1e4]
          : [],
      );
    };
    const alike = minutes('{ mean: 20 min, cv: 0.5 }'),
      apart = minutes('{ usual: { mean: 20 min, cv: 0.5 }, colour: { lime: { mean: 90 min, cv: 0.3 } } }');
    expect(alike.length).toBeGreaterThan(20);
    expect(apart).toEqual(alike);
  });

  it('sends the unit back, and is mended by the step it was sent to; steps of rework only are visited then, and others skipped', () => {
    // 1 + 10 + 5 (mask) + 9, then 10 + 7 (sand) + 9.
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: clean, at: wash, work: 10 min }
  - { step: mask, at: wash, rework: skip, work: 5 min }
  - { step: sand, at: sanding, rework: only, work: 7 min }
  - { step: look, at: gate, work: 9 min, finds: { dirt: { chance: 100 %, back to: clean } } }`),
    );
    expect(shippedAt(played)).toEqual([25 + 26]);
    expect(['make', 'clean', 'mask', 'sand', 'look'].map((step) => visits(played, step))).toEqual([
      1, 2, 1, 1, 2,
    ]);
    expect(played.seen.inspections).toMatchObject({
      sentBack: Float64Array.of(1),
      inspected: Float64Array.of(2),
      firstVisits: Float64Array.of(1),
    });
    expect(played.seen.openAtShipping).toBe(0);
  });

  it('sends the unit back to the earliest of the steps that two finds name, and each step mends its own', () => {
    // 1 + 10 + 7 + 9, then 10 + 7 + 9 once.
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 %, runs: 100 % } }
  - { step: clean, at: wash, work: 10 min }
  - { step: sand, at: sanding, work: 7 min }
  - { step: look, at: gate, work: 9 min, finds: { runs: { chance: 100 %, back to: sand }, dirt: { chance: 100 %, back to: clean } } }`),
    );
    expect(shippedAt(played)).toEqual([27 + 26]);
    expect(played.seen.inspections.sentBack[0]).toBe(1);
  });

  it('scraps the unit, which leaves at once', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, work: 7 min, finds: { dirt: { chance: 100 %, scrap: true } } }
  - { step: pack, at: second gate, work: 100 min }`,
        { quantity: 3 },
      ),
    );
    expect(played.seen).toMatchObject({
      outcome: 'finished',
      entered: 3,
      shipped: 0,
      scrapped: 3,
      endedAt: 37,
    });
    expect(shippedAt(played)).toEqual([NaN, NaN, NaN]);
    expect(visits(played, 'pack')).toBe(0);
  });
});

describe('a missed defect', () => {
  it('escapes to the next inspection, which may find it', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, work: 7 min, finds: { dirt: { chance: 0 %, repair: 50 min } } }
  - { step: look again, at: second gate, work: 5 min, finds: { dirt: { chance: 100 %, repair: 3 min } } }`,
        { quantity: 2 },
      ),
    );
    expect(shippedAt(played)[0]).toBe(10 + 7 + 5 + 3);
    expect(Array.from(played.seen.inspections.escaped)).toEqual([2, 0]);
    expect(Array.from(played.seen.inspections.firstPasses)).toEqual([2, 0]);
  });

  it('that nobody finds is open at shipping', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, work: 7 min, finds: { dirt: { chance: 0 %, repair: 50 min } } }`,
        { quantity: 2 },
      ),
    );
    expect(played.seen.openAtShipping).toBe(2);
  });
});

describe('the limit of a loop', () => {
  const loop = (atLimit: string) =>
    play(
      route(
        `
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: look, at: gate, work: 1 min, finds: { dirt: { chance: ${NEARLY}, back to: make, limit: 3, at limit: ${atLimit} } } }`,
        { quantity: 5 },
      ),
    );

  it('lets the unit pass with the item open, and is reported', () => {
    const played = loop('pass');
    expect(visits(played, 'look')).toBe(20);
    expect(played.seen).toMatchObject({
      shipped: 5,
      scrapped: 0,
      openAtShipping: 5,
      limitReached: Float64Array.of(5),
    });
  });

  it('scraps the unit where that is said, and is reported', () => {
    const played = loop('scrap');
    expect(visits(played, 'make')).toBe(20);
    expect(played.seen).toMatchObject({ shipped: 0, scrapped: 5, limitReached: Float64Array.of(5) });
  });

  it('may be far beyond what two bytes hold: 70 000 send-backs, each looked at, then the unit is scrapped', () => {
    // Found at every look but one in 10^15: 70 001 times made and looked at, a minute each.
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { dirt: 99.9999999999999 % } }
  - { step: look, at: gate, work: 1 min, finds: { dirt: { chance: 100 %, back to: make, limit: 70000, at limit: scrap } } }`),
    );
    expect(visits(played, 'look')).toBe(70_001);
    expect(played.seen).toMatchObject({ shipped: 0, scrapped: 1, endedAt: 140_002 });
  });

  it('may be left out: a test that fails 95 times in 100 is taken until it is passed, 20 times a unit', () => {
    // Tries are geometric: mean 1 / 0.05, standard deviation sqrt(0.95) / 0.05 = 19.5; of 4000 units 0.31.
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 1 min }
  - { step: test, at: gate, work: 1 min, fails: { chance: 95 %, back to: test, limit: unlimited } }`,
        { quantity: 4000 },
      ),
    );
    expect(Math.abs(visits(played, 'test') / 4000 - 20)).toBeLessThan(3 * 0.31);
    expect(played.seen).toMatchObject({ shipped: 4000, limitReached: Float64Array.of(0) });
    // With the usual limit of 5 it would be 1 + 0.95 + .. + 0.95^5 = 5.30.
    expect(visits(played, 'test') / 4000).toBeGreaterThan(6);
  });
});

describe('a test', () => {
  it('of every third unit tests units 3, 6 and 9', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min }
  - { step: test, at: gate, sample: 1 in 3, work: 5 min }`,
        { quantity: 10 },
      ),
    );
    expect(shippedAt(played).map((time, i) => time - 10 * (i + 1))).toEqual([0, 0, 5, 0, 0, 5, 0, 0, 5, 0]);
  });

  it('that fails sends back, and the unit is tested again whatever the sample says', () => {
    // Unit 2 is tested, fails twice (limit 2) and passes at the third test.
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min }
  - { step: test, at: gate, sample: 1 in 2, work: 5 min, fails: { chance: ${NEARLY}, back to: make, limit: 2 } }`,
        { quantity: 2 },
      ),
    );
    expect(visits(played, 'test')).toBe(3);
    expect(shippedAt(played)).toEqual([10, 20 + 5 + 15 + 15]);
  });

  it('by option is for the units that have it', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min }
  - { step: test, at: gate, when: stripe, work: 5 min }`,
        { quantity: 40, more: ', options: { stripe: 35 % }' },
      ),
    );
    const tested = shippedAt(played).map((time, i) => time - 10 * (i + 1) > 2);
    const { values } = played.model.options[0];
    expect(tested).toEqual(Array.from(played.seen.optionsOf, (value) => values[value] === 'yes'));
    expect(new Set(tested).size).toBe(2);
  });
});

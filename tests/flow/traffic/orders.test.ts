import { describe, expect, it } from 'vitest';
import { SHORT_PARTS, WORKING } from '../../../src/flow/floor/states.js';
import { enteredAt, minutesIn, play, shippedAt, visits } from '../run-yaml.js';

/** Chains worked by hand; each run is audited too: units conserved, place-time, Little's identity. */
describe('units that stand on the floor at the start', () => {
  const chain = (
    programme: string,
    stations = '{ cut: {}, bend: { buffer: 1 }, weld: { buffer: 1 } }',
  ): string => `
scenario: opening
programme: ${programme}
sites: { hall: { stations: ${stations} } }
route:
  - { step: cut, at: cut, work: 10 min }
  - { step: bend, at: bend, work: 20 min }
  - { step: weld, at: weld, work: 30 min }
`;

  it('begin the step where they stand, the farthest first, and come before the released ones', () => {
    // Units 1, 2 at weld: 0-30, 30-60. Unit 3 bends 0-20 and blocks its place until unit 2 leaves the buffer
    // at 30; weld 60-90. Unit 4 by the clock at 100: cut 110, bend 130, weld 160.
    const played = play(
      chain('{ arrivals: 100 min, quantity: 4, opening: [{ at: bend }, { at: weld, units: 2 }] }'),
    );
    expect(shippedAt(played)).toEqual([30, 60, 90, 160]);
    expect(enteredAt(played)).toEqual([0, 0, 0, 100]);
    expect(minutesIn(played, 'bend', WORKING)).toBe(40);
    // Units passed over the steps behind them: only the fourth was cut.
    expect(['cut', 'bend', 'weld'].map((step) => visits(played, step))).toEqual([1, 2, 4]);
    // In the system from the start: (30 + 60 + 90 + 60) unit-minutes over 160.
    expect(played.seen.wip).toBeCloseTo(240 / 160, 12);
    expect([played.seen.entered, Array.from(played.seen.enteredIn).reduce((a, b) => a + b)]).toEqual([4, 1]);
  });

  it('let a saturated source fill what is left', () => {
    // Unit 1 bends from 0; unit 2 enters cut at 0 and goes into the buffer of bend at 10, unit 3 is cut 10-20
    // and blocks until unit 2 takes the place at 20. Bend: 0-20, 20-40, 40-60; weld: 20-50, 50-80, 80-110.
    const played = play(chain('{ arrivals: saturated, quantity: 3, opening: [{ at: bend }] }'));
    expect(enteredAt(played)).toEqual([0, 0, 10]);
    expect(shippedAt(played)).toEqual([50, 80, 110]);
  });

  it('gather in a lot of their step and wait in the buffer for the next', () => {
    const played = play(`
scenario: lot
programme: { arrivals: 500 min, quantity: 4, opening: [{ at: bake, units: 3 }] }
sites: { hall: { stations: { bench: {}, oven: { places: 2, buffer: 1, lot: { least: 1, most: 2 } } } } }
route: [{ step: fit, at: bench, work: 5 min }, { step: bake, at: oven, process: 40 min }]
`);
    expect(shippedAt(played)).toEqual([40, 40, 80, 545]);
  });

  it('have their own parts, taken off at a step behind them, begin the feeder at once', () => {
    const played = play(`
scenario: doors
programme: { arrivals: 300 min, quantity: 3, options: { kind: { open: 50 %, closed: 50 % } }, opening: [{ at: doors on, options: { kind: open } }, { at: test }] }
sites: { hall: { stations: { bay: {}, stand: {}, bench: { buffer: unlimited }, pool: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 25 min }] } }
route:
  - { step: doors off, at: bay, work: 10 min, takes off: doors }
  - { step: doors on, at: stand, work: 5 min, parts: { doors: own } }
  - { step: test, at: pool, work: 8 min }
`);
    // Unit 1 at test has its doors back: out at 8. Unit 2 waits for them to 25, then 5 and 8. Unit 3: 310,
    // doors 335, 340, 348.
    expect(shippedAt(played)).toEqual([8, 38, 348]);
    expect(visits(played, 'trim')).toBe(2);
    expect(minutesIn(played, 'stand', SHORT_PARTS)).toBe(25 + 25);
  });

  it('wait in the bank of a lane for a truck', () => {
    const played = play(`
scenario: lane
programme: { arrivals: 60 min, quantity: 3, opening: [{ at: road, units: 1 }] }
sites: { a: { zone: UTC, stations: { one: {} } }, b: { zone: UTC, stations: { two: { buffer: 2 } } } }
lanes: { road: { from: a, to: b, trucks: 1, capacity: 2, drive: 30 min, return: 30 min, leaves: when full } }
route: [{ step: first, at: one, work: 10 min }, { lane: road }, { step: last, at: two, work: 5 min }]
`);
    // Unit 2 comes to the bank at 70: both leave, arrive at 100. Unit 3 is there at 130, alone, when nothing
    // else can come; the truck is back at 130 too.
    expect(shippedAt(played)).toEqual([105, 110, 165]);
    expect(played.seen.lanes.waitMinutes[0]).toBe(70);
  });
});

describe('options of an order', () => {
  const yaml = (opening: string): string => `
scenario: options
programme: { arrivals: 1 h, quantity: 200, options: { colour: { red: 50 %, white: 50 % }, trim: { plain: 50 %, rich: 50 % } }${opening} }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: 1 min }]
`;
  it('go before the draw and leave the draws of all other units as they are', () => {
    const drawn = play(yaml('')),
      given = play(yaml(', opening: [{ at: fit, options: { colour: white } }]'));
    const colour = (played: typeof drawn, unit: number): number => played.seen.optionsOf[2 * (unit - 1)],
      trim = (played: typeof drawn, unit: number): number => played.seen.optionsOf[2 * (unit - 1) + 1];
    expect(colour(given, 1)).toBe(1);
    for (let unit = 1; unit <= 200; unit++) {
      expect(trim(given, unit)).toBe(trim(drawn, unit));
      if (unit > 1) expect(colour(given, unit)).toBe(colour(drawn, unit));
    }
  });
});

describe('due dates', () => {
  it('count from the release, also while a unit waits outside', () => {
    // Released at 10, 20, 30; bench of 15 min: out at 25, 40, 55, that is after 15, 20, 25 min.
    const { seen } = play(
      'scenario: due\nprogramme: { arrivals: 10 min, quantity: 3, due after: 20 min }\nsites: { hall: { stations: { bench: {} } } }\nroute: [{ step: fit, at: bench, work: 15 min }]\n',
    );
    expect(Array.from(seen.dueAt)).toEqual([30, 40, 50]);
    // A unit out at the very end of its time is not late.
    expect([seen.due, seen.late, seen.lateMinutes]).toEqual([3, 1, 5]);
  });

  it('are counted in a steady-state run from the end of the warm-up on', () => {
    const { seen } = play(
      'scenario: steady\nprogramme: { arrivals: 10 min, length: 100 min, warm up: 15 min, due after: 5 min }\nsites: { hall: { stations: { bench: {} } } }\nroute: [{ step: fit, at: bench, work: 6 min }]\n',
    );
    // Shipped 16, .. 106, each a minute late; see the test of the same run in release.test.ts.
    expect([seen.due, seen.late]).toEqual([10, 10]);
    expect(seen.lateMinutes).toBeCloseTo(10, 9);
    expect(seen.dueAt).toHaveLength(0);
  });
});

describe('an order whose unit is scrapped', () => {
  const yaml = (replaced: boolean): string => `
scenario: scrap
programme: { arrivals: 30 min, quantity: 40, due after: 1 h, options: { colour: { red: 50 %, white: 50 % } }${replaced ? ', replace scrapped: true' : ''} }
sites: { hall: { stations: { bench: {}, pool: {} } } }
route:
  - { step: fit, at: bench, work: 10 min, work factor: { colour: { red: 2 } } }
  - { step: test, at: pool, work: 5 min, fails: { chance: 30 %, scrap: true } }
`;
  it('is built again until it is shipped, with the same number, options and due date', () => {
    const { seen } = play(yaml(true)),
      plain = play(yaml(false)).seen;
    expect(plain.shipped + plain.scrapped).toBe(40);
    expect(plain.scrapped).toBeGreaterThan(3);
    expect(seen.outcome).toBe('finished');
    expect(seen.shipped).toBe(40);
    expect(Array.from(seen.shippedAt).every((time) => time > 0)).toBe(true);
    expect(seen.entered).toBe(40 + seen.scrapped);
    expect(seen.scrapped).toBeGreaterThan(3);
    expect(Array.from(seen.optionsOf)).toEqual(Array.from(plain.optionsOf));
    expect(Array.from(seen.dueAt)).toEqual(Array.from({ length: 40 }, (_, i) => 30 * (i + 1) + 60));
  });

  it('is released at the very moment of its scrapping', () => {
    // One unit that fails by turn: the test is a sample of one in two, so the second build of it is tested
    // and scrapped, the third is not.
    const played = play(`
scenario: again
programme: { arrivals: 30 min, quantity: 2, replace scrapped: true }
sites: { hall: { stations: { bench: {}, pool: {} } } }
route:
  - { step: fit, at: bench, work: 10 min }
  - { step: test, at: pool, work: 5 min, sample: 1 in 2, fails: { chance: 99.9999999 %, scrap: true } }
`);
    // Unit 1: 30-40, not tested. Unit 2: 60-70, tested 70-75, scrapped; again 75-85, not tested.
    expect(shippedAt(played)).toEqual([40, 85]);
    expect(enteredAt(played)).toEqual([30, 75]);
    expect(played.seen.scrapped).toBe(1);
  });

  it('does not make a saturated source let in one more than it should', () => {
    const { seen, run } = play(
      yaml(true).replace('arrivals: 30 min', 'arrivals: saturated').replace(', due after: 1 h', ''),
    );
    expect([seen.shipped, run.shop.routes[0].begun]).toEqual([40, 40]);
  });
});

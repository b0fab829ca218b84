import { describe, expect, it } from 'vitest';
import { SHORT_PARTS, STARVED } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, play, shippedAt, visits } from '../run-yaml.js';

/** Rule 6, by hand. */
describe('a feeder for a stock', () => {
  const axles = (stock: number, atStart: number, perUnit = 1): string => `
scenario: axles
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { bench: { buffer: unlimited }, line: {} } } }
feeders: { axles: { stock: ${stock}, at start: ${atStart}, route: [{ step: build, at: bench, work: 30 min }] } }
route: [{ step: fit, at: line, parts: { axles: ${perUnit} }, work: 10 min }]
`;

  it('starves the line when it is late, and builds the next when one is taken', () => {
    // Axles at 30, 60, 90; fits 30-40, 60-70, 90-100.
    const played = play(axles(1, 0));
    expect(shippedAt(played)).toEqual([40, 70, 100]);
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(70);
    expect(played.seen.stockOut[0]).toBe(1);
  });

  it('hides its time behind a stock', () => {
    // Three in stock: fits 0-10, 10-20, 20-30; the feeder begins at 0, 10, 20, its first is done at 30.
    const played = play(axles(3, 3));
    expect(shippedAt(played)).toEqual([10, 20, 30]);
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(0);
    // Stock 2 for 10 min, 1 for 10, 0 for 10.
    expect(played.seen.stockMean[0]).toBeCloseTo(1, 12);
    expect(played.seen.stockOut[0]).toBeCloseTo(1 / 3, 12);
  });

  it('gives a step that wants two both or none', () => {
    // Axles at 30, 60 (one alone is left in stock), 90, 120, ..: fits 60-70, 120-130, 180-190.
    expect(shippedAt(play(axles(2, 0, 2)))).toEqual([70, 130, 190]);
  });

  it('begins as many as its stock lacks, counting those in the making, and never more', () => {
    // Four are wanted and one is there: three begin at 0, and one for each of the three that units take.
    const played = play(axles(4, 1).replace('bench: { buffer: unlimited }', 'bench: { places: 9 }'));
    expect(visits(played, 'build')).toBe(3 + 3);
    expect(played.seen.stockMean[0]).toBeLessThanOrEqual(4);
  });
});

describe('a kit of several feeders', () => {
  it('takes parts of other feeders, is short of parts until all are there, and is itself a part', () => {
    // Looms 20 min, hoses 25 min, both from 0; a kit wants one loom and two hoses, 10 min. Hoses 25, 50, 75,
    // 100, ..; looms 20, 40, .. Kit 1 50-60, kit 2 100-110, kit 3 150-160; fits of 5 min follow at once.
    const kits = (fullKit: boolean): Played =>
      play(`
scenario: kits
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { loom bench: { buffer: unlimited }, hose bench: { buffer: unlimited }, kit bench: { buffer: unlimited }, line: {} } } }
feeders:
  kits: { stock: 1, full kit: ${fullKit}, route: [{ step: make ready, at: kit bench, parts: { looms: 1, hoses: 2 }, work: 10 min }] }
  looms: { stock: 2, route: [{ step: wire, at: loom bench, work: 20 min }] }
  hoses: { stock: 4, route: [{ step: cut, at: hose bench, work: 25 min }] }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`);
    const played = kits(false);
    expect(shippedAt(played)).toEqual([65, 115, 165]);
    // The next kit is begun when a unit takes one: 0-50, 60-100, 110-150, 160-165.
    expect(minutesIn(played, 'kit bench', SHORT_PARTS)).toBe(50 + 40 + 40 + 5);
    expect(visits(played, 'make ready')).toBe(3 + 1);
    // With a full kit the bench stays free meanwhile.
    const full = kits(true);
    expect(shippedAt(full)).toEqual([65, 115, 165]);
    expect(minutesIn(full, 'kit bench', STARVED)).toBe(50 + 40 + 40 + 5);
    expect(visits(full, 'make ready')).toBe(3);
  });

  it('replaces a component that fails its test, and tests again', () => {
    // Looms are in stock. The test as good as always fails (100 % is refused) until its limit of 2: a kit is
    // wired three times, each time with another loom.
    const played = play(`
scenario: replaced
programme: { arrivals: saturated, quantity: 1 }
defects: { dead pin: {} }
sites: { hall: { stations: { loom bench: { buffer: unlimited }, bench: { buffer: unlimited }, line: {} } } }
feeders:
  looms: { stock: 5, at start: 5, route: [{ step: make loom, at: loom bench, work: 100 min }] }
  kits:
    stock: 1
    route:
      - { step: wire, at: bench, parts: { looms: 1 }, work: 10 min, creates: { dead pin: 99.999999999999 % } }
      - { step: test, at: bench, work: 5 min, finds: { dead pin: { chance: 100 %, back to: wire, limit: 2 } } }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`);
    // Three times 15 min, then the fit; the unit took the kit at 45, and the next kit had its first loom
    // then.
    expect(shippedAt(played)).toEqual([50]);
    expect(visits(played, 'wire')).toBe(3 + 1);
    // Stock 5 less one at 0, 15, 30, 45.
    expect(played.seen.stockMean[0] * 50).toBeCloseTo(4 * 15 + 3 * 15 + 2 * 15 + 1 * 5, 9);
  });
});

describe('own parts', () => {
  it('are not waited for again by a unit in rework that has them on', () => {
    // take off 0-10; doors 10-30; fit 30-35; check 35-40 finds; fit again 40-45; check 45-50.
    const played = play(`
scenario: doors on
programme: { arrivals: saturated, quantity: 1 }
defects: { rattle: {} }
sites: { hall: { stations: { strip: {}, bench: { buffer: unlimited }, line: {}, stand: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 20 min }] } }
route:
  - { step: take off, at: strip, work: 10 min, takes off: doors, creates: { rattle: 100 % } }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
  - { step: check, at: stand, work: 5 min, finds: { rattle: { chance: 100 %, back to: fit } } }
`);
    expect(shippedAt(played)).toEqual([50]);
    expect(visits(played, 'trim')).toBe(1);
  });

  it('go through their feeder again where the loop takes them off again', () => {
    // prepare 0-10; take off 10-20; doors 20-40; fit 40-45; check 45-50; take off 50-60; doors 60-80; fit
    // 80-85; check 85-90.
    const played = play(`
scenario: doors off again
programme: { arrivals: saturated, quantity: 1 }
defects: { rattle: {} }
sites: { hall: { stations: { pit: {}, strip: {}, bench: { buffer: unlimited }, line: {}, stand: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 20 min }] } }
route:
  - { step: prepare, at: pit, work: 10 min, creates: { rattle: 100 % } }
  - { step: take off, at: strip, work: 10 min, takes off: doors }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
  - { step: check, at: stand, work: 5 min, finds: { rattle: { chance: 100 %, back to: take off } } }
`);
    expect(shippedAt(played)).toEqual([90]);
    expect(visits(played, 'trim')).toBe(2);
  });

  it('that are off already are not taken off twice', () => {
    // take off 0-10; doors 10-110; check 10-15 finds; take off 15-25; check 25-30; fit waits for the one set
    // of doors, 110-115.
    const played = play(`
scenario: doors off once
programme: { arrivals: saturated, quantity: 1 }
defects: { rattle: {} }
sites: { hall: { stations: { pit: {}, strip: {}, bench: { buffer: unlimited }, line: {}, stand: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 100 min }] } }
route:
  - { step: prepare, at: pit, work: 1 min, creates: { rattle: 100 % } }
  - { step: take off, at: strip, work: 10 min, takes off: doors }
  - { step: check, at: stand, work: 5 min, finds: { rattle: { chance: 100 %, back to: take off } } }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
`);
    expect(shippedAt(played)).toEqual([116]);
    expect(visits(played, 'trim')).toBe(1);
  });

  it('rejoin the unit they came off', () => {
    // take off 0-10, 10-20, 20-30; doors 10-30, 30-50, 50-70. Unit 2 makes a detour 20-120, so its doors wait
    // from 50 on, while unit 3 stands ready from 30 and waits for its own until 70.
    const played = play(`
scenario: doors
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { strip: {}, yard: {}, bench: { buffer: unlimited }, line: { places: 3 } } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 20 min }] } }
route:
  - { step: take off, at: strip, work: 10 min, takes off: doors }
  - { step: detour, at: yard, sample: 1 in 2, work: 100 min }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
`);
    expect(shippedAt(played)).toEqual([35, 125, 75]);
    // Unit 1 from 10 to 30, unit 3 from 30 to 70.
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(60);
  });

  it('go by the options of their unit', () => {
    const played = play(`
scenario: long doors
programme: { arrivals: 500 min, quantity: 40, options: { cab: { short: 50 %, crew: 50 % } } }
sites: { hall: { stations: { strip: {}, bench: {}, line: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 20 min }, { step: second row, at: bench, when: { cab: crew }, work: 30 min }] } }
route:
  - { step: take off, at: strip, work: 10 min, takes off: doors }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
`);
    const lead = shippedAt(played).map((time, i) => time - played.seen.enteredAt[i]);
    expect(lead).toEqual(Array.from(played.seen.optionsOf, (cab) => (cab === 0 ? 35 : 65)));
    expect(new Set(lead).size).toBe(2);
  });

  it('that are scrapped are made again for the same unit', () => {
    const played = play(`
scenario: scrapped doors
programme: { arrivals: saturated, quantity: 50 }
defects: { dent: {} }
sites: { hall: { stations: { strip: {}, bench: { buffer: unlimited }, line: { places: 5 } } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 3 min, creates: { dent: 50 % } }, { step: gauge, at: bench, work: 1 min, finds: { dent: { chance: 100 %, scrap: true } } }] } }
route:
  - { step: take off, at: strip, work: 10 min, takes off: doors }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
`);
    const scrapped = played.seen.inspections.scrapped[0];
    expect(played.seen.shipped).toBe(50);
    expect(scrapped).toBeGreaterThan(20);
    expect(visits(played, 'trim')).toBe(50 + scrapped);
  });
});

describe('a sub-assembly for stock that is scrapped', () => {
  it('is replaced by another', () => {
    const played = play(`
scenario: scrapped axles
programme: { arrivals: saturated, quantity: 50 }
defects: { crack: {} }
sites: { hall: { stations: { bench: { buffer: unlimited }, line: {} } } }
feeders: { axles: { stock: 2, route: [{ step: build, at: bench, work: 9 min, creates: { crack: 40 % } }, { step: gauge, at: bench, work: 1 min, finds: { crack: { chance: 100 %, scrap: true } } }] } }
route: [{ step: fit, at: line, parts: { axles: 1 }, work: 5 min }]
`);
    const scrapped = played.seen.inspections.scrapped[0];
    expect(played.seen.shipped).toBe(50);
    expect(scrapped).toBeGreaterThan(10);
    // Each of the 50, and of those scrapped, took 10 min at the one bench; the last fit 5 min.
    expect(played.seen.endedAt).toBeCloseTo(10 * (50 + scrapped) + 5, 9);
  });
});

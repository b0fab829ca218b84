import { describe, expect, it } from 'vitest';
import { play, shippedAt, visits } from '../run-yaml.js';

/** Rule 8 at a join, by hand. */
const shop = (feeders: string, route: string, { quantity = 1 } = {}): string => `
scenario: carried items
programme: { arrivals: saturated, quantity: ${quantity} }
defects: { crack: {}, dent: {} }
sites: { hall: { stations: { bench: { buffer: unlimited }, kit bench: { buffer: unlimited }, pit: {}, line: {}, gate: {}, second gate: {} } } }
feeders:
${feeders}
route:
${route}
`;
const axles = (more: string, { stock = 1, start = 0 } = {}): string =>
  `  axles: { stock: ${stock}, at start: ${start}, route: [{ step: build axle, at: bench, work: 10 min, creates: { crack: 100 % } }${more}] }`;

describe('an open item of a sub-assembly from a stock', () => {
  it('is open on the unit that takes it, and found by an inspection of the unit', () => {
    // Axle 0-10, fit 10-15, look 15-20, repair 8.
    const played = play(
      shop(
        axles(''),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([28]);
    expect(played.seen.openAtShipping).toBe(0);
  });

  it('is found at the end of the very step that takes it', () => {
    const played = play(
      shop(
        axles(''),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([23]);
  });

  it('leaves the stock first in, first out; what was there at the start has none', () => {
    // Two axles without a flaw at the start; those made have one.
    const played = play(
      shop(
        axles('', { stock: 3, start: 2 }),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 20 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
        { quantity: 4 },
      ),
    );
    expect(shippedAt(played)).toEqual([25, 45, 60 + 13, 80 + 13]);
  });

  it('is one item with the same flaw of a second axle', () => {
    const played = play(
      shop(
        axles('', { stock: 2 }),
        `
  - { step: fit, at: line, parts: { axles: 2 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([20 + 5 + 5 + 8]);
    // Two more were made for the stock after those two.
    expect(played.seen.quality.merged[0]).toBe(1);
  });

  it('comes through a kit', () => {
    // Axle 0-10, kit 10-13, fit 13-18, look 18-23, repair 8.
    const played = play(
      shop(
        `${axles('')}
  kits: { stock: 1, route: [{ step: build kit, at: kit bench, parts: { axles: 1 }, work: 3 min }] }`,
        `
  - { step: fit, at: line, parts: { kits: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([31]);
  });

  it('may be found by an inspection of the kit', () => {
    const played = play(
      shop(
        `${axles('')}
  kits: { stock: 1, route: [{ step: build kit, at: kit bench, parts: { axles: 1 }, work: 3 min, finds: { crack: { chance: 100 %, repair: 4 min } } }] }`,
        `
  - { step: fit, at: line, parts: { kits: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([10 + 3 + 4 + 5 + 5]);
  });

  it('that the feeder passed on at its limit is open on the unit, and noted', () => {
    // Build and gauge 10 + 1, twice; fit 22-27; the hold mends it in 45.
    const played = play(
      shop(
        axles(
          ', { step: gauge, at: bench, work: 1 min, finds: { crack: { chance: 99.9999999 %, back to: build axle, limit: 1 } } }',
        ),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: hold, at: gate, hold: { mend: 45 min } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([22 + 5 + 45]);
    expect(played.seen.openAtShipping).toBe(0);
  });

  it('goes with a failed test of the feeder that was carried on', () => {
    const played = play(
      shop(
        '  axles: { stock: 1, route: [{ step: build axle, at: bench, work: 10 min, fails: { chance: 100 %, carry: 6 min } }] }',
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: hold, at: gate, hold: true }`,
      ),
    );
    expect(shippedAt(played)).toEqual([21]);
  });

  it('is none where the feeder surely cleans it: its stock keeps no items then', () => {
    const played = play(
      shop(
        axles(
          ', { step: gauge, at: bench, work: 1 min, finds: { crack: { chance: 100 %, repair: 2 min } } }',
        ),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min, finds: { crack: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([10 + 3 + 5]);
    expect(played.run.shop.resources.map(({ partDefects }) => partDefects)).toEqual([null]);
  });

  it('is shipped with it where nobody looks well enough', () => {
    const played = play(
      shop(
        axles(''),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 0 %, repair: 8 min } } }`,
        { quantity: 3 },
      ),
    );
    expect(played.seen).toMatchObject({ openAtShipping: 3, inspections: { escaped: Float64Array.of(3) } });
    expect(Array.from(played.seen.quality.shippedUnfound)).toEqual([3]);
  });
});

describe('a part that is taken from the stock again', () => {
  it('replaces the first one, with its items', () => {
    // Axle 1, cracked, 0-10; fit 10-15; look 15-20 sends back to fit, which takes axle 2 at 20, cracked too;
    // look 25-30 finds it, and scraps at the limit.
    const played = play(
      shop(
        axles(''),
        `
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 99.9999999 %, back to: fit, limit: 1, at limit: scrap } } }`,
      ),
    );
    expect(played.seen).toMatchObject({ shipped: 0, scrapped: 1, endedAt: 30 });
    expect(visits(played, 'fit')).toBe(2);
    expect(played.seen.quality.replaced[0]).toBe(1);
  });

  it('is sound where the first had a flaw and the second has none', () => {
    // Every second axle is cracked.
    const played = play(
      shop(
        '  axles: { stock: 2, route: [{ step: build axle, at: bench, work: 10 min }, { step: etch, at: kit bench, sample: 1 in 2, work: 1 min, creates: { crack: 100 % } }] }',
        `
  - { step: wait, at: pit, work: 25 min }
  - { step: fit, at: line, parts: { axles: 1 }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 99.9999999 %, back to: fit, limit: 5 } } }`,
        { quantity: 2 },
      ),
    );
    // Axles 1 (sound, 10) and 2 (cracked, 21) in stock. Unit 1 takes axle 1: 25 + 10. Unit 2 at 50 takes axle
    // 2, fails at 60, takes axle 3 (sound, made from 25): 70.
    expect(shippedAt(played)).toEqual([35, 70]);
    expect(visits(played, 'fit')).toBe(3);
    expect(played.seen.quality.replaced[0]).toBe(1);
    expect(played.seen.openAtShipping).toBe(0);
  });

  it('is what a failed test asks for that sends back to the step which takes it: component replaced and tested again', () => {
    // A kit takes a pump at 10, 10-13; the test 13-15 fails twice (limit 2): each time another pump. The last
    // passes on.
    const played = play(
      shop(
        `  pumps: { stock: 1, route: [{ step: build pump, at: bench, work: 10 min }] }
  kits: { stock: 1, route: [{ step: build kit, at: kit bench, parts: { pumps: 1 }, work: 3 min }, { step: test kit, at: gate, work: 2 min, fails: { chance: 99.9999999 %, back to: build kit, limit: 2 } }] }`,
        `
  - { step: fit, at: line, parts: { kits: 1 }, work: 5 min }`,
      ),
    );
    // Pumps at 10, 20, 30: kit 10-13, test -15, waits for pump 2 until 20: -23, -25, pump 3 at 30: -33, -35;
    // fit -40.
    expect(shippedAt(played)).toEqual([40]);
    // The fourth visit is that of the next kit, begun when the first is taken at 35.
    expect(visits(played, 'build kit')).toBe(4);
    expect(played.seen.limitReached[0]).toBe(1);
  });
});

describe('an open item of own parts', () => {
  const doors =
    '  doors: { own: true, route: [{ step: trim, at: bench, work: 20 min, creates: { dent: 100 % } }] }';

  it('is on the unit from the step at which they rejoin, not before', () => {
    // off 0-10; doors 10-30; detour until 40; look 40-45, when the doors are back but not on the unit; fit
    // 45-50; last look 50-55, repair 8.
    const played = play(
      shop(
        doors,
        `
  - { step: take off, at: pit, takes off: doors, work: 10 min }
  - { step: detour, at: second gate, work: 30 min }
  - { step: look, at: gate, work: 5 min, creates: { dent: 0 % }, finds: { dent: { chance: 100 %, repair: 100 min } } }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
  - { step: last look, at: gate, work: 5 min, finds: { dent: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    expect(shippedAt(played)).toEqual([10 + 30 + 5 + 5 + 5 + 8]);
  });

  it('goes back to the feeder with them when they come off again', () => {
    // The crack sends the unit back to where the doors come off; they take their dent along, and another is
    // no second item.
    const played = play(
      shop(
        doors,
        `
  - { step: take off, at: pit, takes off: doors, work: 10 min, creates: { crack: { usual: 100 % } } }
  - { step: fit, at: line, parts: { doors: own }, work: 5 min }
  - { step: look, at: gate, work: 5 min, finds: { crack: { chance: 99.9999999 %, back to: take off, limit: 1, at limit: pass } } }
  - { step: last look, at: second gate, work: 5 min, finds: { dent: { chance: 100 %, repair: 8 min } } }`,
      ),
    );
    // off 0-10, doors 10-30, fit 30-35, look 35-40; off 40-50, doors 50-70, fit 70-75, look -80, last look
    // -85, repair -93.
    expect(shippedAt(played)).toEqual([93]);
    // The dents made on the doors: a second one on a door that has one already is none.
    expect(Array.from(played.seen.quality.made)).toEqual([1 + 1, 1]);
    expect(Array.from(played.seen.created)).toEqual([2, 2]);
  });
});

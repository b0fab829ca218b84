import { describe, expect, it } from 'vitest';
import { BLOCKED, SHORT_PARTS, STARVED } from '../../../src/flow/floor/states.js';
import { minutesIn, play, ringIn, shippedAt, visits } from '../run-yaml.js';

/** Rule 6, full kit, by hand. */
describe('a bench that builds both a part and what the part goes into', () => {
  const bench = (key = ''): string => `
scenario: dashboards
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { bench: { buffer: unlimited }, line: {} } } }
feeders:
  dashboards: { stock: 1${key}, route: [{ step: wire, at: bench, parts: { looms: 2 }, work: 20 min }] }
  looms: { stock: 2, route: [{ step: bind, at: bench, work: 30 min }] }
route: [{ step: fit, at: line, parts: { dashboards: 1 }, work: 10 min }]
`;

  it('works on looms until two are there for a dashboard', () => {
    // Looms 0-30-60, dashboard 1 60-80 and fit 80-90; looms 80-110-140, dashboard 140-160; 160-190-220-240.
    const played = play(bench());
    expect(shippedAt(played)).toEqual([90, 170, 250]);
    expect(minutesIn(played, 'bench', SHORT_PARTS)).toBe(0);
    // Two looms more are begun for those of each dashboard.
    expect([visits(played, 'wire'), visits(played, 'bind')]).toEqual([3, 7]);
  });

  it('stands still without a full kit: the dashboard has the bench that its second loom needs', () => {
    const played = play(bench(', full kit: false'));
    expect(played.seen).toMatchObject({ outcome: 'gridlock', shipped: 0, minutes: 30 });
    expect(ringIn(played)).toEqual([
      'dashboards 1 in place bench: parts looms of 2',
      'looms 2 in space bench: room bench of 1',
    ]);
  });
});

describe('a full kit', () => {
  const twice = (key = ''): string => `
scenario: two looms
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { loom bench: { buffer: unlimited }, a: {}, b: {}, line: {} } } }
feeders:
  kits:
    stock: 1${key}
    route:
      - { step: open, at: a, parts: { looms: 1 }, work: 10 min }
      - { step: close, at: b, parts: { looms: 1 }, work: 10 min }
  looms: { stock: 2, route: [{ step: bind, at: loom bench, work: 20 min }] }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`;

  it('is what all steps take, at once and before the first of them', () => {
    // Looms at 20, 40, 60, ..: the first kit from 40, open 40-50, close 50-60; the next ones from 80 and 120.
    const played = play(twice());
    expect(shippedAt(played)).toEqual([65, 105, 145]);
    expect(minutesIn(played, 'b', SHORT_PARTS)).toBe(0);
  });

  it('is gathered step by step where it is turned off', () => {
    // Open 20-30, and from 40 on close, to 50; then 60-70 and 80-90, 100-110 and 120-130.
    const played = play(twice('\n    full kit: false'));
    expect(shippedAt(played)).toEqual([55, 95, 135]);
    expect(minutesIn(played, 'b', SHORT_PARTS)).toBe(3 * 10);
  });

  it('is claimed in the order of starting, and keeps nothing from who wants none of what it lacks', () => {
    // `a` asks for two looms and a gauge at 0, `b` for one loom at 5, `c` for a gauge at 0. The loom of 30 is
    // kept for `a`, which is built 60-70; `c` has its gauges at 0 and 6.
    const played = play(`
scenario: scarce looms
programme: { start: 2027-03-01, arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { loom bench: { buffer: unlimited }, a: {}, b: {}, c: {}, yard: {}, line: {} } } }
supplies: { gauges: { site: hall, at start: 3, reorder: { level: 0, lot: 1, lead time: 90 days } } }
feeders:
  looms: { stock: 2, route: [{ step: bind, at: loom bench, work: 30 min }] }
  kits b: { stock: 1, at start: 1, route: [{ step: wire b, at: b, parts: { looms: 1 }, work: 1 min }] }
  kits c: { stock: 1, route: [{ step: wire c, at: c, parts: { gauges: 1 }, work: 1 min }] }
  kits a: { stock: 1, route: [{ step: wire a, at: a, parts: { looms: 2, gauges: 1 }, work: 10 min }] }
route:
  - { step: come, at: yard, work: 5 min }
  - { step: fit b, at: line, parts: { kits b: 1 }, work: 1 min }
  - { step: fit c, at: line, parts: { kits c: 1 }, work: 1 min }
  - { step: fit a, at: line, parts: { kits a: 1 }, work: 1 min }
`);
    expect(shippedAt(played)).toEqual([71]);
    expect([visits(played, 'wire a'), visits(played, 'wire b'), visits(played, 'wire c')]).toEqual([1, 0, 2]);
  });

  it('leaves out what is taken only of a sample or in rework: that is claimed at its step', () => {
    // Each second kit takes a loom in its second step, which is there at 50; what is taken in rework never is.
    const played = play(`
scenario: samples
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { stations: { loom bench: { buffer: unlimited }, a: {}, b: {}, line: {} } } }
feeders:
  kits:
    stock: 1
    route:
      - { step: open, at: a, work: 10 min }
      - { step: mend, at: b, rework: only, parts: { looms: 1 } }
      - { step: close, at: b, sample: 1 in 2, parts: { looms: 1 }, work: 10 min }
      - { step: test, at: b, fails: { chance: 0 %, back to: open, limit: 2 } }
  looms: { stock: 1, route: [{ step: bind, at: loom bench, work: 50 min }] }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`);
    // Kit 1 0-10; kit 2 10-20, and then from 50 on to 60.
    expect(shippedAt(played)).toEqual([15, 65]);
    expect(minutesIn(played, 'b', SHORT_PARTS)).toBe(30);
  });

  it('of own parts is what those of this unit take', () => {
    // Doors of red units take a handle, built by 60; those of white ones begin at once.
    const { seen, run } = play(`
scenario: handles
programme: { arrivals: 200 min, quantity: 30, options: { colour: { red: 60 %, white: 40 % } } }
sites: { hall: { stations: { bay: {}, door bench: { places: 9 }, handle bench: {}, line: { places: 9 } } } }
feeders:
  doors:
    own: true
    route:
      - { step: trim, at: door bench, work: 10 min }
      - { step: set handle, at: door bench, when: { colour: red }, parts: { handles: 1 }, work: 5 min }
  handles: { stock: 1, at start: 1, route: [{ step: file, at: handle bench, work: 260 min }] }
route:
  - { step: doors off, at: bay, work: 1 min, takes off: doors }
  - { step: doors on, at: line, parts: { doors: own }, work: 1 min }
`);
    // A handle takes 260 min from when the one before was taken.
    let handle = 0;
    const expected = Array.from(run.optionsOf, (colour, n) => {
      const off = 200 * (n + 1) + 1;
      if (colour === 1) return off + 10 + 1;
      const begin = Math.max(off, handle);
      handle = begin + 260;
      return begin + 10 + 5 + 1;
    });
    expect(Array.from(seen.shippedAt)).toEqual(expected);
    expect(new Set(run.optionsOf).size).toBe(2);
    expect(expected.some((at, n) => at > 200 * (n + 1) + 17)).toBe(true);
  });

  it('asks for the supplies of all steps together', () => {
    // At level 0 one bolt is ordered at 0, and two more for the two that the kit wants: it has them at 40.
    const played = play(`
scenario: bolts
programme: { start: 2027-03-01, arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { a: {}, b: {}, line: {} } } }
supplies: { bolts: { site: hall, reorder: { level: 0, lot: 1, lead time: 40 min } } }
feeders:
  kits:
    stock: 1
    route:
      - { step: open, at: a, parts: { bolts: 1 }, work: 10 min }
      - { step: close, at: b, parts: { bolts: 1 }, work: 10 min }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`);
    expect(shippedAt(played)).toEqual([65]);
    // Another kit is begun at 60 and lacks a bolt: one wait each.
    expect(played.run.shop.supplies[0]).toMatchObject({ unitsUsed: 2, waits: 2 });
  });

  it('that can never be there is told from its moment on, with what stands for want of it', () => {
    const played = play(`
scenario: no more bolts
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 30 }
sites: { hall: { stations: { bench: {}, line: {} } } }
supplies: { bolts: { site: hall, at start: 4, deliveries: { lot: 1, every: 7 days, from: 2027-03-01, to: 2027-03-01 } } }
feeders: { brackets: { stock: 1, route: [{ step: bend, at: bench, parts: { bolts: 3 }, work: 5 min }] } }
route: [{ step: fit, at: line, parts: { brackets: 1 }, work: 1 min }]
`);
    // Bracket 1 takes three at 0; unit 1 takes it at 10, bracket 2 is begun and never has its kit.
    expect(played.seen).toMatchObject({ outcome: 'gridlock', minutes: 10 });
    expect(ringIn(played)).toEqual(['brackets 2 in outside bench: supply bolts of nobody']);
    expect(minutesIn(played, 'bench', STARVED)).toBe(5);
    expect(minutesIn(played, 'bench', BLOCKED)).toBe(0);
  });
});

describe('a sub-assembly that is scrapped', () => {
  // The supplies say what was taken in all.
  const tested = (chance: string): string => `
scenario: scrapped
programme: { start: 2027-03-01, arrivals: saturated, quantity: 6 }
sites: { hall: { stations: { a: {}, b: {}, line: {} } } }
supplies:
  frames: { site: hall, at start: 90, reorder: { level: 0, lot: 1, lead time: 1 day } }
  looms: { site: hall, at start: 90, reorder: { level: 0, lot: 1, lead time: 1 day } }
feeders:
  kits:
    stock: 1
    route:
      - { step: open, at: a, parts: { frames: 1 }, work: 10 min }
      - { step: test, at: a, fails: { chance: ${chance}, scrap: true } }
      - { step: close, at: b, parts: { looms: 1 }, work: 10 min }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: 5 min }]
`;

  it('leaves what it had set aside and not built in to the one that is begun in its stead', () => {
    const { run, ...played } = play(tested('50 %')),
      [frames, looms] = run.shop.supplies;
    const opened = visits({ run, ...played }, 'open');
    expect(opened).toBeGreaterThan(7);
    // Whoever is opened took a frame; each loom set aside is built in, but for that of the kit under way.
    expect(frames.unitsUsed).toBe(opened);
    expect(looms.unitsUsed).toBe(6 + 1);
  });
});

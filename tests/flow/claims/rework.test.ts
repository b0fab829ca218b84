import { describe, expect, it } from 'vitest';
import { SHORT_CARRIER, SHORT_CREW, SHORT_PARTS } from '../../../src/flow/floor/states.js';
import { whoWaits } from '../../../src/study/answer/gridlock.js';
import { minutesIn, type Played, play, shippedAt, visits } from '../run-yaml.js';

/** Minutes of what stays with units, and how often it was given back. */
const kept = ({ seen }: Played, id = 0): { held: number; ended: number } => ({
  held: Math.round(seen.kept.held[id] * seen.minutes * 1e6) / 1e6,
  ended: seen.kept.ended[id],
});

/** Each unit fails the test behind the stretch once and is sent back to `back`. */
const line = (back: string, carts: string, buffer: number | string, quantity = 2): string => `
scenario: sent back from behind
programme: { arrivals: saturated, quantity: ${quantity} }
sites: { hall: { stations: { s: { buffer: unlimited }, a: { buffer: ${buffer} }, b: { buffer: ${buffer} }, t: {} } } }
carriers: { carts: { ${carts}, from: one, to: two } }
route:
  - { step: start, at: s }
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, work: 10 min }
  - { step: test, at: t, work: 10 min, fails: { chance: 99.9999 %, back to: ${back}, limit: 1 } }
`;

/** Rule 7, by hand: what a unit that is sent back claims again. */
describe('a unit that is sent back into a stretch from behind it', () => {
  it('goes on without a cart where it does not do again the step that claims it', () => {
    // 1: a 0-10, b 10-20, t 20-30, b 30-40 without the cart, which 2 has from 20: a 20-30, blocked to 40, b
    // 40-50. 1: t 40-50. 2: t 50-60, b 60-70, t 70-80.
    const played = play(line('two', 'count: 1', 0));
    expect(shippedAt(played)).toEqual([50, 80]);
    expect(kept(played)).toEqual({ held: 20 + 30, ended: 2 });
    expect(minutesIn(played, 'b', SHORT_CARRIER)).toBe(0);
  });

  it('claims it again there if the planner says so, and may then hold itself and the next', () => {
    // At 30 unit 1 stands at b without the cart that 2 has, and 2 has done a and wants to b.
    const { seen } = play(line('two', 'count: 1, in rework: again', 0));
    expect(seen).toMatchObject({ outcome: 'gridlock', endedAt: 30 });
    expect(whoWaits(seen.standstill, 'unit')).toBe(
      'unit 1 at b waits for carts, unit 2 at a (with carts) waits for room at b: each waits for the next, and the last for the first',
    );
  });

  it.each([
    ['', { held: 2 * 20, ended: 2 }],
    [', in rework: without', { held: 2 * 20, ended: 2 }],
    [', in rework: again', { held: 2 * 20 + 2 * 10, ended: 4 }],
  ])('keeps one of two carts as often as the key says: "%s"', (key, expected) => {
    // 1: a 0-10, b 10-20, t 20-30, b 30-40, t 40-50. 2: a 10-20, b 20-30, t 30-40, b 40-50, t 50-60.
    const played = play(line('two', `count: 2${key}`, 'unlimited'));
    expect(shippedAt(played)).toEqual([50, 60]);
    expect(kept(played)).toEqual(expected);
  });

  it.each(['one', 'start'])('claims one again where it does its first step again: back to %s', (back) => {
    // 1: a 0-10, b 10-20, t 20-30; the cart is with 2 from 20 to 40: a 40-50, b 50-60, t 60-70. 2: a 20-30, b
    // 30-40, t 40-50, and again from 60: a 60-70, b 70-80, t 80-90.
    const played = play(line(back, 'count: 1', 'unlimited'));
    expect(shippedAt(played)).toEqual([70, 90]);
    expect(kept(played)).toEqual({ held: 4 * 20, ended: 4 });
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(10 + 10 + 10);
  });

  it('goes without where rework skips the step that claims it, and where it is sent back once more', () => {
    // a 0-10, b 10-20, t 20-30; back to the start: b 30-40, c 40-50, which only units in rework do and which
    // sends it to b once: b 50-60, c 60-70, t 70-80.
    const played = play(`
scenario: skipped
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { s: {}, a: {}, b: {}, c: {}, t: {} } } }
carriers: { carts: { count: 1, from: one, to: look again } }
route:
  - { step: start, at: s }
  - { step: one, at: a, work: 10 min, rework: skip }
  - { step: two, at: b, work: 10 min }
  - { step: look again, at: c, work: 10 min, rework: only, fails: { chance: 99.9999 %, back to: two, limit: 1 } }
  - { step: test, at: t, work: 10 min, fails: { chance: 99.9999 %, back to: start, limit: 1 } }
`);
    expect(visits(played, 'one')).toBe(1);
    expect(visits(played, 'two')).toBe(3);
    expect(shippedAt(played)).toEqual([80]);
    expect(kept(played)).toEqual({ held: 20, ended: 1 });
  });

  it('claims one again at a later step of the stretch if that was its first', () => {
    // Unit 1 leaves `one` out, claims the cart at b and claims it there again; unit 2 claims it at a.
    const played = play(
      line('two', 'count: 2', 'unlimited').replace(
        'at: a, work: 10 min',
        'at: a, sample: 1 in 2, work: 10 min',
      ),
    );
    // 1: b 0-10, t 10-20, b 20-30, t 30-40. 2: a 0-10, b 10-20, t 20-30, b 30-40, t 40-50.
    expect(shippedAt(played)).toEqual([40, 50]);
    expect(kept(played)).toEqual({ held: 10 + 10 + 20, ended: 3 });
  });

  it('goes on without its team, with the crew of the step alone', () => {
    // Three technicians: the pair of 1 is free at 20 and goes to 2. At b one technician does the work again;
    // with the pair wanted, three would be.
    const text = (key: string): string => `
scenario: team
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { crews: { technicians: 3 }, stations: { a: {}, b: { buffer: unlimited }, t: {} } } }
teams: { pair: { crew: technicians, people: 2, from: one, to: two${key} } }
route:
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, crew: { technicians: 1 }, work: 10 min }
  - { step: test, at: t, work: 10 min, fails: { chance: 99.9999 %, back to: two, limit: 1 } }
`;
    // 1: a 0-10, b 10-20, t 20-30, b 30-40 with one, t 40-50. 2: a 20-30, b 40-50, t 50-60, b 60-70, t 70-80.
    const without = play(text(''));
    expect(shippedAt(without)).toEqual([50, 80]);
    expect(kept(without)).toEqual({ held: 20 + 30, ended: 2 });
    expect(without.seen.crewBusy[0]).toBeCloseTo((2 * 50 + 4 * 10) / (3 * 80), 12);
    // The pair stays with 2 while it waits at b for the place: nobody can go on.
    expect(play(text(', in rework: again')).seen).toMatchObject({ outcome: 'gridlock', endedAt: 30 });
  });
});

describe('a unit that is sent back from within a stretch', () => {
  it('keeps its cart, wherever it is sent to', () => {
    // a 0-10, b 10-20, t 20-30, b 30-40, t 40-50; or a 30-40, b 40-50, t 50-60.
    const within = (back: string): Played =>
      play(line(back, 'count: 1', 0, 1).replace('to: two }', 'to: test }'));
    expect(kept(within('two'))).toEqual({ held: 50, ended: 1 });
    expect(kept(within('one'))).toEqual({ held: 60, ended: 1 });
    expect(kept(within('start'))).toEqual({ held: 60, ended: 1 });
  });
});

/** Rule 6, by hand. */
describe('own parts of a unit that is sent back', () => {
  const doors = (back: string, from: 'paint' | 'test'): string => {
    const fails = (step: string): string =>
      from === step ? `, fails: { chance: 99.9999 %, back to: ${back}, limit: 1 }` : '';
    return `
scenario: doors
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { strip: {}, booth: {}, stand: {}, gate: {}, bench: {} } } }
feeders: { doors: { own: true, route: [{ step: trim, at: bench, work: 60 min }] } }
route:
  - { step: doors off, at: strip, work: 10 min, takes off: doors }
  - { step: paint, at: booth, work: 10 min${fails('paint')} }
  - { step: doors on, at: stand, work: 10 min, parts: { doors: own } }
  - { step: test, at: gate, work: 10 min${fails('test')} }
`;
  };
  it.each([
    // Doors off 0-10, trim 10-70, paint to 20, doors on 70-80, test 80-90.
    // Doors on 90-100 at once, test to 110; or paint 90-100, doors on 100-110, test 110-120.
    ['are not waited for when they are on the unit', 'doors on', 'test', 110, 1, 50],
    ['stay on where the step that takes them off is not done again', 'paint', 'test', 120, 1, 50],
    // Doors off 90-100, trim 100-160, paint to 110, doors on 160-170, test to 180.
    ['come off again where it is', 'doors off', 'test', 180, 2, 50 + 50],
    // Paint 10-20, doors off 20-30, paint 30-40: the doors are at the bench from 10 to 70 all the time.
    ['do not come off twice', 'doors off', 'paint', 90, 1, 30],
    ['are waited for if they are off', 'paint', 'paint', 90, 1, 40],
  ] as const)('%s', (_, back, from, out, trims, waits) => {
    const played = play(doors(back, from));
    expect(shippedAt(played)).toEqual([out]);
    expect(visits(played, 'trim')).toBe(trims);
    expect(minutesIn(played, 'stand', SHORT_PARTS)).toBe(waits);
  });
});

/** Rule 15, by hand: units of the opening hold what they would have. */
describe('a unit that stands on the floor at the start', () => {
  const opening = (standing: string, carts = 'count: 2', quantity = 3): string =>
    line('two', carts, 'unlimited', quantity).replace('quantity:', `opening: [${standing}], quantity:`);

  it('within a stretch holds a cart, and one about to begin its first step does not', () => {
    // 1 stands at b with a cart: b 0-10, t 10-20, b 20-30 without, t 30-40. 2 stands at a: a 0-10 with the
    // other one, b 10-20, t 20-30, b 30-40, t 40-50. 3 has that of 1 from 10.
    const played = play(opening('{ at: two }, { at: one }'));
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(0);
    expect(shippedAt(played).slice(0, 2)).toEqual([40, 50]);
    expect(kept(played).ended).toBe(3);
  });

  it('keeps it from one that stands further along and only begins to claim', () => {
    // 1 stands at c, where a white unit claims; the only cart is with 2, a red one at b: b 0-10, c 10-20. 1 has
    // it from 20: c 20-30.
    const played = play(`
scenario: further along
programme: { arrivals: saturated, quantity: 2, options: { colour: { red: 50 %, white: 50 % } }, opening: [{ at: three, options: { colour: white } }, { at: two, options: { colour: red } }] }
sites: { hall: { stations: { a: {}, b: {}, c: { places: 2 }, t: {} } } }
carriers: { cart: { count: 1, from: one, to: three } }
route:
  - { step: one, at: a, when: { colour: red }, work: 10 min }
  - { step: two, at: b, when: { colour: red }, work: 10 min }
  - { step: three, at: c, work: 10 min }
  - { step: test, at: t }
`);
    expect(shippedAt(played)).toEqual([30, 20]);
    expect(minutesIn(played, 'c', SHORT_CARRIER)).toBe(20);
  });

  it('behind a stretch has had one, and goes without when it is sent back', () => {
    // t 0-10, b 10-20, t 20-30.
    const played = play(opening('{ at: test }', 'count: 1', 1));
    expect(shippedAt(played)).toEqual([30]);
    expect(kept(played)).toEqual({ held: 0, ended: 0 });
    const again = play(opening('{ at: test }', 'count: 1, in rework: again', 1));
    expect(kept(again)).toEqual({ held: 10, ended: 1 });
  });

  it('has its team, also where it waits, whose people are engaged from the start', () => {
    // Four technicians with 1 at b and 2 ahead of it. 1: b 0-10, and its pair goes to 3: a 10-20. 2: b 10-20,
    // t 20-30. 3: b 20-30, t 30-40.
    const played = play(`
scenario: team
programme: { arrivals: saturated, quantity: 3, opening: [{ at: two, units: 2 }, { at: one }] }
sites: { hall: { crews: { technicians: 4 }, stations: { a: {}, b: { buffer: 1 }, t: {} } } }
teams: { pair: { crew: technicians, people: 2, from: one, to: two } }
route:
  - { step: one, at: a, work: 10 min }
  - { step: two, at: b, work: 10 min }
  - { step: test, at: t, work: 10 min }
`);
    expect(shippedAt(played)).toEqual([20, 30, 40]);
    expect(minutesIn(played, 'a', SHORT_CREW)).toBe(10);
    expect(played.seen.crewBusy[0]).toBeCloseTo((2 * 10 + 2 * 20 + 2 * 20) / (4 * 40), 12);
  });
});

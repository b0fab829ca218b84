import { describe, expect, it } from 'vitest';
import { BLOCKED, STARVED, WORKING } from '../../../src/flow/floor/states.js';
import { enteredAt, minutesIn, play, shippedAt, visits } from '../run-yaml.js';

/** Rule 1, by hand: 10 min at the first station, 30 min at the second, units always ready. */
const twoStations = (second: string, quantity = 3): string => `
scenario: two stations
programme: { arrivals: saturated, quantity: ${quantity} }
sites:
  hall: { stations: { cut: {}, weld: ${second} } }
route:
  - { step: cut, at: cut, work: 10 min }
  - { step: weld, at: weld, work: 30 min }
`;

describe('a unit without room ahead', () => {
  it('stays where it is and blocks that place after its work', () => {
    // cut 0-10, 10-20, 40-50; weld 10-40, 40-70, 70-100.
    const played = play(twoStations('{}'));
    expect(shippedAt(played)).toEqual([40, 70, 100]);
    expect(enteredAt(played)).toEqual([0, 10, 40]);
    expect([WORKING, BLOCKED, STARVED].map((state) => minutesIn(played, 'cut', state))).toEqual([30, 40, 30]);
    expect([WORKING, BLOCKED, STARVED].map((state) => minutesIn(played, 'weld', state))).toEqual([90, 0, 10]);
  });

  it('goes into a space of the buffer, if there is one', () => {
    const played = play(twoStations('{ buffer: 1 }'));
    expect(enteredAt(played)).toEqual([0, 10, 20]);
    expect(minutesIn(played, 'cut', BLOCKED)).toBe(10);
    expect(shippedAt(played)).toEqual([40, 70, 100]);
    // One unit in the buffer from 20 to 70.
    expect(played.seen.bufferMean[1] * 100).toBeCloseTo(50, 9);
  });

  it('takes the first of several places that comes free', () => {
    const played = play(twoStations('{ places: 2 }'));
    expect(shippedAt(played)).toEqual([40, 50, 70]);
    expect(minutesIn(played, 'cut', BLOCKED)).toBe(10);
  });
});

describe('steps at one station', () => {
  it('leave the unit in its place if they follow one another', () => {
    const played = play(`
scenario: same station
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { stations: { bench: {} } } }
route:
  - { step: fit, at: bench, work: 10 min }
  - { step: trim, at: bench, work: 5 min }
`);
    expect(shippedAt(played)).toEqual([15, 30]);
    expect(enteredAt(played)).toEqual([0, 15]);
  });
});

describe('the order in a buffer', () => {
  it('is first come first served, with units sent back ahead of all', () => {
    // make 0-1, 1-2, 2-3. clean: 1 (1-11), 2 (11-21), then 1 again (21-31) ahead of 3, 2 again (31-41), 3
    // (41-51, 60-70). look: 1 at 11-20 and 31-40, 2 at 21-30 and 41-50, 3 at 51-60 and 70-79.
    const played = play(`
scenario: rework first
programme: { arrivals: saturated, quantity: 3 }
defects: { dirt: {} }
sites: { hall: { stations: { mill: {}, wash: { buffer: unlimited }, gate: {} } } }
route:
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: clean, at: wash, work: 10 min }
  - { step: look, at: gate, work: 9 min, finds: { dirt: { chance: 100 %, back to: clean } } }
`);
    expect(shippedAt(played)).toEqual([40, 50, 79]);
    expect(visits(played, 'clean')).toBe(6);
  });

  it('is the build number for units that come at one instant, whatever event came first', () => {
    // Every second unit has a detour of 5 min: units 2 (5-15, detour 15-20) and 3 (10-20) join at 20; the end
    // of 3 was planned first.
    const played = play(`
scenario: tie
programme: { start: 2027-03-01, rate: { per day: 288 }, quantity: 3 }
sites: { hall: { stations: { prep: { places: 3 }, side: {}, booth: { buffer: unlimited } } } }
route:
  - { step: prepare, at: prep, work: 10 min }
  - { step: detour, at: side, sample: 1 in 2, work: 5 min }
  - { step: paint, at: booth, work: 100 min }
`);
    expect(shippedAt(played)).toEqual([110, 210, 310]);
  });

  it('lets units sent back wait in spaces of their own', () => {
    // As above with one space for the usual and room of its own for rework: unit 3 stays in the mill until
    // 21.
    const spaces = (wash: string) =>
      play(`
scenario: own spaces
programme: { arrivals: saturated, quantity: 3 }
defects: { dirt: {} }
sites: { hall: { stations: { mill: {}, wash: ${wash}, gate: {} } } }
route:
  - { step: make, at: mill, work: 1 min, creates: { dirt: 100 % } }
  - { step: clean, at: wash, work: 10 min }
  - { step: look, at: gate, work: 9 min, finds: { dirt: { chance: 100 %, back to: clean } } }
`);
    const own = spaces('{ buffer: 1, rework buffer: unlimited }');
    expect(own.seen.outcome).toBe('finished');
    // Unit 1 finds room at 20; unit 3 is in the one usual space from 11 on.
    expect(shippedAt(own)).toEqual([40, 50, 79]);
    expect(minutesIn(own, 'gate', BLOCKED)).toBe(0);
    // Without: unit 3 has the space, unit 1 blocks the gate at 20, unit 2 is done at 21 and needs the gate:
    // nothing moves any more.
    expect(spaces('{ buffer: 1 }').seen.outcome).toBe('gridlock');
  });
});

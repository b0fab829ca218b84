import { describe, expect, it } from 'vitest';
import { BLOCKED, SHORT_CREW } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 2, by hand. */
describe('needs of a step', () => {
  it('are claimed all or none, and a big request is not starved by later small ones', () => {
    // Two people. small: 1 at 0-30, 2 at 10-40, 3 asks at 20 and works 30-60. Unit 1 asks for both at 30,
    // before unit 4 asks for one: at 40 one is free and waits for the other; big 60-70. Then 4 (asked at 30)
    // goes before big of 2: 70-100, 100-110, 110-120, 120-130.
    const played = play(`
scenario: big request
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 4 }
sites: { hall: { crews: { fitters: 2 }, stations: { floor: { places: 4 }, rig: { buffer: unlimited } } } }
route:
  - { step: small, at: floor, crew: { fitters: 1 }, work: 30 min }
  - { step: big, at: rig, crew: { fitters: 2 }, work: 10 min }
`);
    expect(shippedAt(played)).toEqual([70, 110, 120, 130]);
    // 3: 20-30; 4: 30-70 on the floor. 1: 30-60; 2: 70-100 at the rig.
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(50);
    expect(minutesIn(played, 'rig', SHORT_CREW)).toBe(60);
    // Person-minutes: 4 x 30 + 4 x 2 x 10 over 2 x 130.
    expect(played.seen.crewBusy[0]).toBeCloseTo(200 / 260, 12);
  });

  it('that cannot be met let later requests pass that want none of what is lacking', () => {
    // Unit 2 lacks a fitter for "both" from 40 to 80; unit 3 wants a painter at 60 and gets one at once.
    const played = play(`
scenario: passing
programme: { start: 2027-03-01, rate: { per day: 48 }, quantity: 3 }
sites: { hall: { crews: { fitters: 1, painters: 1 }, stations: { booth: {}, bay: {}, rig: {} } } }
route:
  - { step: paint, at: booth, crew: { painters: 1 }, work: 10 min }
  - { step: both, at: bay, crew: { fitters: 1, painters: 1 }, work: 10 min }
  - { step: fit, at: rig, crew: { fitters: 1 }, work: 60 min }
`);
    expect(minutesIn(played, 'booth', SHORT_CREW)).toBe(0);
    expect(minutesIn(played, 'booth', BLOCKED)).toBe(20);
    expect(minutesIn(played, 'bay', SHORT_CREW)).toBe(40 + 60);
    expect(shippedAt(played)).toEqual([80, 150, 220]);
  });

  it('are not claimed in part: one free of two wanted stays free for the ledger', () => {
    // One fitter is on unit 1 from 5 to 105; unit 2 wants two from 10 on; the other fitter is idle until 105.
    const played = play(`
scenario: no part
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 2 }
sites: { hall: { crews: { fitters: 2 }, stations: { rig: {}, floor: { buffer: 1 } } } }
route:
  - { step: pair, at: rig, crew: { fitters: 2 }, work: 5 min }
  - { step: alone, at: floor, crew: { fitters: 1 }, work: 100 min }
`);
    // pair of 1: 0-5; alone of 1: 5-105; pair of 2 asks at 10: 105-110; alone of 2: 110-210.
    expect(shippedAt(played)).toEqual([105, 210]);
    expect(played.seen.crewBusy[0] * 420).toBeCloseTo(5 * 2 + 100 + 5 * 2 + 100, 9);
  });
});

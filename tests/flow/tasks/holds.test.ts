import { describe, expect, it } from 'vitest';
import { SHORT_CREW, UNATTENDED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt, visits } from '../run-yaml.js';

/** Rule 10, by hand. */
const route = (steps: string, { quantity = 1 } = {}): string => `
scenario: hold
programme: { arrivals: saturated, quantity: ${quantity} }
defects: { gap: {}, dirt: {} }
sites: { hall: { crews: { menders: 1 }, stations: { mill: {}, gate: {}, hold area: {}, second gate: {}, far bench: {} } } }
route:
${steps}
`;
const NEARLY = '99.9999999 %';

describe('an item carried on', () => {
  it('is mended at the hold, not where it was found, and by the crew of the hold', () => {
    // make 10, look 5, pack 20, then 30 + 12 at the hold.
    const played = play(
      route(`
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 %, dirt: 100 % } }
  - { step: look, at: gate, work: 5 min, finds: { gap: { chance: 100 %, carry: 30 min }, dirt: { chance: 100 %, carry: 12 min } } }
  - { step: pack, at: far bench, work: 20 min }
  - { step: hold, at: hold area, crew: { menders: 1 }, hold: true }`),
    );
    expect(shippedAt(played)).toEqual([10 + 5 + 20 + 42]);
    expect(minutesIn(played, 'hold area', WORKING)).toBe(42);
    expect(played.seen).toMatchObject({
      openAtShipping: 0,
      repairMinutes: 42,
      reworkMinutes: Float64Array.of(42),
    });
    expect(played.seen.quality).toMatchObject({
      cameToHold: Float64Array.of(1),
      held: Float64Array.of(1),
      mended: Float64Array.of(2),
      holdMean: Float64Array.of(42),
    });
    // The work is charged to the finds of "look".
    expect(Array.from(played.seen.quality.repairMinutes)).toEqual([30, 12]);
    expect(played.seen.quality.inHold[0]).toBeCloseTo(42 / 77, 12);
  });

  it('is not found again by later inspections', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 % } }
  - { step: look, at: gate, work: 5 min, finds: { gap: { chance: 100 %, carry: 30 min } } }
  - { step: look again, at: second gate, work: 5 min, finds: { gap: { chance: 100 %, repair: 1 min } } }
  - { step: hold, at: hold area, hold: true }`),
    );
    expect(shippedAt(played)).toEqual([10 + 5 + 5 + 30]);
    expect(Array.from(played.seen.inspections.firstPasses)).toEqual([0, 1]);
  });

  it('of a test is a failed test, mended at the hold', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 10 min }
  - { step: test, at: gate, work: 5 min, fails: { chance: 100 %, carry: 30 min } }
  - { step: hold, at: hold area, hold: true }`),
    );
    expect(shippedAt(played)).toEqual([45]);
    expect(played.seen.openAtShipping).toBe(0);
  });

  it('that no hold follows is shipped open and counted as noted', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 %, dirt: 100 % } }
  - { step: look, at: gate, work: 5 min, finds: { gap: { chance: 100 %, carry: 30 min }, dirt: { chance: 0 %, carry: 5 min } } }`,
        { quantity: 3 },
      ),
    );
    expect(played.seen.openAtShipping).toBe(6);
    expect(Array.from(played.seen.quality.shippedNoted)).toEqual([3, 0]);
    expect(Array.from(played.seen.quality.shippedUnfound)).toEqual([0, 3]);
  });
});

describe('an item passed on at the limit of a loop', () => {
  it('takes the work that the hold gives for it', () => {
    // make 1, look 1, three times each more, then 45 at the hold.
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { gap: 100 % } }
  - { step: look, at: gate, work: 1 min, finds: { gap: { chance: ${NEARLY}, back to: make, limit: 3 } } }
  - { step: hold, at: hold area, hold: { mend: 45 min } }`),
    );
    expect(shippedAt(played)).toEqual([4 * 2 + 45]);
    expect(played.seen).toMatchObject({ openAtShipping: 0, limitReached: Float64Array.of(1) });
  });

  it('may still be found by a later inspection, and is then off the list', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { gap: 100 % } }
  - { step: look, at: gate, work: 1 min, finds: { gap: { chance: ${NEARLY}, back to: make, limit: 1 } } }
  - { step: look again, at: second gate, work: 1 min, finds: { gap: { chance: ${NEARLY}, repair: 7 min } } }
  - { step: hold, at: hold area, hold: { mend: 45 min } }`),
    );
    expect(shippedAt(played)).toEqual([4 + 1 + 7]);
    expect(played.seen.quality.held[0]).toBe(0);
  });

  it('of a failed test is held too', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min }
  - { step: test, at: gate, work: 1 min, fails: { chance: ${NEARLY}, back to: make, limit: 2 } }
  - { step: hold, at: hold area, hold: { mend: 45 min } }`),
    );
    expect(shippedAt(played)).toEqual([3 * 2 + 45]);
  });
});

describe('a hold', () => {
  it('is passed over by units without noted items, and they overtake those held', () => {
    // Every second unit is looked at and held for an hour; the others are out at once.
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 % } }
  - { step: look, at: gate, sample: 1 in 2, work: 5 min, finds: { gap: { chance: 100 %, carry: 60 min } } }
  - { step: hold, at: hold area, hold: true }
  - { step: last, at: far bench, work: 1 min }`,
        { quantity: 4 },
      ),
    );
    // Unit 2: 20 + 5 + 60 + 1; unit 4: ready at 45, waits at the gate for the one place until 85, mended
    // until 145.
    expect(shippedAt(played)).toEqual([11, 86, 31, 146]);
    expect(visits(played, 'hold')).toBe(2);
    expect(played.seen.quality).toMatchObject({ cameToHold: Float64Array.of(4), held: Float64Array.of(2) });
    // 60, and 100 with the wait for the place.
    expect(played.seen.quality.holdMean[0]).toBe(80);
    expect(played.seen.quality.holdTimes[0]).toMatchObject({ least: 60, greatest: 100 });
  });

  it('with a process is a wait for release for every unit, after the mending', () => {
    const played = play(
      route(
        `
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 % } }
  - { step: look, at: gate, sample: 1 in 2, work: 5 min, finds: { gap: { chance: 100 %, carry: 60 min } } }
  - { step: hold, at: hold area, crew: { menders: 1 }, hold: true, process: 30 min }`,
        { quantity: 2 },
      ),
    );
    // Unit 1 is in the hold 10-40; unit 2 25-, the place is free at 40: mended 40-100, released 130.
    expect(shippedAt(played)).toEqual([40, 130]);
    expect(minutesIn(played, 'hold area', UNATTENDED)).toBe(60);
    expect(played.seen.quality.held[0]).toBe(1);
  });

  it('has its own work after the mending', () => {
    const played = play(
      route(`
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 % } }
  - { step: look, at: gate, work: 5 min, finds: { gap: { chance: 100 %, carry: 60 min } } }
  - { step: hold, at: hold area, hold: true, work: 7 min }`),
    );
    expect(shippedAt(played)).toEqual([10 + 5 + 60 + 7]);
  });

  it('mends only while its crew is there, and asks for the crew first', () => {
    // In the shop from Monday 06:00; make until 06:10, look until 06:15. One mender for two places: unit 1
    // until 12:15, unit 2 waits for the mender until then; it has 105 minutes on Monday and 255 on Tuesday:
    // 06:00 + 255.
    const played = play(`
scenario: hold
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2 }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Sun } }
defects: { gap: {} }
sites: { hall: { zone: UTC, calendar: days, crews: { menders: 1 }, stations: { mill: {}, gate: {}, hold area: { places: 2 } } } }
route:
  - { step: make, at: mill, work: 10 min, creates: { gap: 100 % } }
  - { step: look, at: gate, work: 5 min, finds: { gap: { chance: 100 %, carry: 6 h } } }
  - { step: hold, at: hold area, crew: { menders: 1 }, hold: true }
`);
    const open = 360;
    expect(shippedAt(played)).toEqual([open + 15 + 360, 1440 + open + 255]);
    expect(minutesIn(played, 'hold area', SHORT_CREW)).toBe(350);
    expect(played.seen.reworkMinutes[0]).toBe(720);
  });

  it('may stand in a loop, and may be an inspection itself', () => {
    // make, look (noted), hold 10 + 3, where dirt is found and sends back to make; then once more all of it:
    // 1 + 1 + 13.
    const played = play(
      route(`
  - { step: make, at: mill, work: 1 min, creates: { gap: 100 %, dirt: { usual: 100 % } } }
  - { step: look, at: gate, work: 1 min, finds: { gap: { chance: 100 %, carry: 10 min } } }
  - { step: hold, at: hold area, hold: { mend: 5 min }, work: 3 min, finds: { dirt: { chance: ${NEARLY}, back to: make, limit: 1 } } }
  - { step: last hold, at: far bench, hold: { mend: 5 min } }`),
    );
    // At the limit the dirt is passed on, and mended at the last hold.
    expect(shippedAt(played)).toEqual([15 + 15 + 5]);
    expect(Array.from(played.seen.quality.held)).toEqual([2, 1]);
    expect(played.seen.openAtShipping).toBe(0);
  });
});

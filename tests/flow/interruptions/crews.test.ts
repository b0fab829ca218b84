import { describe, expect, it } from 'vitest';
import { OFF_SHIFT, SHORT_CREW, UNATTENDED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/**
 * Rule 3, shifts of a crew, by hand. 1 March 2027 is a Monday. Early 06:00-14:00, late 14:00-22:00, no
 * breaks.
 */
const H = 60,
  DAY = 1440;
interface Parts {
  crews: string;
  route: string;
  quantity?: number;
  perDay?: number;
  stations?: string;
  start?: string;
  calendars?: string;
  zone?: string;
}
const shop = ({
  crews,
  route,
  quantity = 1,
  perDay = 1,
  stations = 'floor: { places: 9 }',
  start = '2027-03-01',
  calendars = 'two: { hours: ["06:00-14:00", "14:00-22:00"], on: Mon-Fri }',
  zone = 'UTC',
}: Parts): string => `
scenario: hand-over
programme: { start: ${start}, rate: { per day: ${perDay} }, quantity: ${quantity} }
calendars: { ${calendars} }
sites:
  hall: { zone: ${zone}, calendar: two, crews: { ${crews} }, stations: { ${stations} } }
route:
  - ${route}
`;

describe('a crew with another headcount on each shift', () => {
  it('hands work over where the next shift has people, and breaks off what asked last', () => {
    // Units at 06:00, 08:00, 10:00 (16 h over 8 units), each 10 h of one person. Early 3, late 2: at 14:00
    // unit 3 has had 4 h and is broken off. Unit 1 ends at 16:00; unit 3 goes on then, 6 h: 22:00. Unit 2:
    // 08:00-18:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [3, 2] }',
        perDay: 8,
        quantity: 3,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
      }),
    );
    expect(shippedAt(played)).toEqual([16 * H, 18 * H, 22 * H]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(2 * H);
    expect(minutesIn(played, 'floor', WORKING)).toBe(30 * H);
  });

  it('is as good as no change where the number is the same', () => {
    const route = '{ step: fit, at: floor, crew: { fitters: 1 }, work: { exponential: { mean: 5 h } } }';
    const same = play(shop({ crews: 'fitters: { headcount: [2, 2] }', perDay: 6, quantity: 60, route }));
    const plain = play(shop({ crews: 'fitters: 2', perDay: 6, quantity: 60, route }));
    expect(shippedAt(same)).toEqual(shippedAt(plain));
    expect(same.seen.crewBusy[0]).toBeCloseTo(plain.seen.crewBusy[0], 12);
  });

  it('goes on with work begun before newcomers, since that asked first', () => {
    // One early, none late: unit 1 06:00-14:00 of 10 h, unit 2 asks at 14:00 (2 a day, 8 h apart). Next day
    // unit 1 ends at 08:00, unit 2 goes 08:00-14:00 and 06:00-10:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [1, 0] }',
        perDay: 2,
        quantity: 2,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 8 * H, 2 * DAY + 10 * H]);
  });

  it('lets a step that wants more than the shift has wait, and others pass it', () => {
    // pair wants 2: possible early only. Unit 1: cut 06:00-13:00, pair 13:00-15:00 is broken off at 14:00
    // with 1 h to go. Late has one person: unit 2 (released at 14:00) is cut 14:00-21:00; its pair waits.
    // Tuesday: pair of 1 06:00-07:00, pair of 2 07:00-09:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [2, 1] }',
        perDay: 2,
        quantity: 2,
        route:
          '{ step: cut, at: floor, crew: { fitters: 1 }, work: 7 h }\n  - { step: pair, at: rig, crew: { fitters: 2 }, work: 2 h }',
        stations: 'floor: { places: 9 }, rig: { places: 2 }',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 7 * H, DAY + 9 * H]);
  });

  it('leaves the settling between passes to itself', () => {
    // Pass 1 06:00-13:00 by two; settle 13:00-16:00; at 14:00 nobody is there (late 0). Pass 2 asks at 16:00
    // and is done on Tuesday 06:00-13:00, settle to 16:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [2, 0] }',
        route:
          '{ step: coat, at: floor, crew: { fitters: 2 }, passes: { count: 2, work: 7 h, settle: 3 h } }',
        stations: 'floor: {}',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 16 * H]);
    expect(minutesIn(played, 'floor', UNATTENDED)).toBe(6 * H);
    // Person-minutes: 2 x (7 h of work + 1 h of settling to 14:00) and 2 x 7 h, over 2 x 8 h + 2 x 8 h there.
    expect(played.seen.crewBusy[0]).toBeCloseTo((2 * 8 + 2 * 7) / 32, 12);
  });

  it('takes up after a night and a clock change what was left', () => {
    // Oslo, clocks forward on Sunday 28 March 2027. Friday 06:00-14:00 by 1 of early, none late: 20 h =
    // Friday 8, Monday 8, Tuesday 4.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [1, 0] }',
        start: '2027-03-26',
        zone: 'Europe/Oslo',
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 20 h }',
      }),
    );
    expect(shippedAt(played)).toEqual([4 * DAY + 10 * H - H]);
  });

  it('breaks off a lot as one', () => {
    // Lot of two from 08:00 (units 8 h apart would wait; 16 a day: 1 h apart, so 07:00) of 10 h by one; late
    // 0: 7 h to 14:00, 3 h on Tuesday.
    const played = play(
      shop({
        crews: 'fitters: { headcount: [1, 0] }',
        perDay: 16,
        quantity: 2,
        route: '{ step: bake, at: floor, crew: { fitters: 1 }, work: 10 h }',
        stations: 'floor: { places: 2, lot: { least: 2, most: 2 } }',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 9 * H, DAY + 9 * H]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(2 * 8 * H);
  });

  it('starts an incomplete lot as soon as nothing else can come, whatever shifts are to change', () => {
    const played = play(
      shop({
        crews: 'fitters: { headcount: [2, 1] }',
        route: '{ step: bake, at: floor, crew: { fitters: 1 }, work: 1 h }',
        stations: 'floor: { places: 2, lot: { least: 2, most: 2 } }',
      }),
    );
    expect(shippedAt(played)).toEqual([7 * H]);
    expect(played.seen.outcome).toBe('finished');
  });

  it('ends in gridlock when it comes, not at the end of the calendar', () => {
    // Unit 1 fails at "last" and goes back to "first", where unit 2 stands and wants to go to "last".
    const played = play(
      shop({
        crews: 'fitters: { headcount: [2, 1] }',
        perDay: 16,
        quantity: 2,
        stations: 'first: {}, last: {}',
        route:
          '{ step: one, at: first, crew: { fitters: 1 }, work: 1 h }\n  - { step: two, at: last, crew: { fitters: 1 }, work: 1 h, fails: { chance: 99.9999 %, back to: one, limit: 9 } }',
      }),
    );
    expect(played.seen.outcome).toBe('gridlock');
    expect(played.seen.endedAt).toBe(8 * H);
  });
});

describe('hand over: wait', () => {
  it('keeps work for the shift that began it, and lets the next one do other work', () => {
    // Unit 1 (06:00): 8 h of early to 14:00, waits, 2 h of early on Tuesday: 08:00. Unit 2 (14:00): late
    // 14:00-22:00, then Tuesday 14:00-16:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: 1, hand over: wait }',
        perDay: 2,
        quantity: 2,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 8 * H, DAY + 16 * H]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(0);
    expect(minutesIn(played, 'floor', WORKING)).toBe(20 * H);
  });

  it('takes up its own work before new requests are met', () => {
    // Unit 1 begins at 06:00 (early), unit 2 at 14:00 (late, 4 h: 18:00), unit 3 asks at Tuesday 06:00 and
    // waits for unit 1, 06:00-08:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: 1, hand over: wait }',
        perDay: 2,
        quantity: 3,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
      }),
    );
    // Unit 3: Tuesday 08:00-14:00 6 h, Wednesday 06:00-10:00. Unit 2 as above.
    expect(shippedAt(played)).toEqual([DAY + 8 * H, DAY + 16 * H, 2 * DAY + 10 * H]);
  });

  it('does not keep for a shift what that has not begun', () => {
    // The floor is open 06:00-14:00. Unit 2 is free to be fitted at 14:00, when the late shift claims it; the
    // early shift begins it on Tuesday at 06:00.
    const played = play(
      shop({
        crews: 'fitters: { headcount: 1, hand over: wait }',
        perDay: 2,
        quantity: 2,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 2 h }',
        calendars: 'two: { hours: ["06:00-14:00", "14:00-22:00"] }, early: { hours: ["06:00-14:00"] }',
        stations: 'floor: { calendar: early, buffer: unlimited }',
      }),
    );
    expect(shippedAt(played)).toEqual([8 * H, DAY + 8 * H]);
  });

  it('is off shift while it waits', () => {
    const played = play(
      shop({
        crews: 'fitters: { headcount: 1, hand over: wait }',
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
        stations: 'floor: {}',
      }),
    );
    // 06:00-14:00 work; 14:00 to Tuesday 06:00 waits; and 00:00-06:00 before the first unit.
    expect(minutesIn(played, 'floor', OFF_SHIFT)).toBe(6 * H + 16 * H);
  });
});

describe('absence', () => {
  it('of nearly everybody stops the work until somebody comes', () => {
    // Seeds differ in how many shifts pass: the work of 1 h ends an hour after the start of a shift in which
    // the only person is there.
    const ends = Array.from(
      { length: 16 },
      (_, i) =>
        shippedAt(
          play(
            shop({
              crews: 'fitters: { headcount: 1, absence: 70 % }',
              route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 1 h }',
            }),
            'absent',
            i + 1,
          ),
        )[0],
    );
    expect(ends.every((end) => [7 * H, 15 * H].includes(end % DAY))).toBe(true);
    expect(new Set(ends).size).toBeGreaterThan(4);
  });

  it('uses the same luck whatever else changes', () => {
    const crews = 'fitters: { headcount: 3, absence: 30 % }',
      route = (work: string): string => `{ step: fit, at: floor, crew: { fitters: 1 }, work: ${work} }`;
    const usual = play(shop({ crews, perDay: 4, quantity: 30, route: route('3 h') })),
      slower = play(shop({ crews, perDay: 4, quantity: 30, route: route('4 h') }));
    const weeks = 1;
    expect([...slower.seen.crewTime.people[0]!.present].slice(0, weeks)).toEqual(
      [...usual.seen.crewTime.people[0]!.present].slice(0, weeks),
    );
    expect(usual.seen.crewTime.people[0]!.present[0]).toBeGreaterThan(0);
  });
});

describe('people there', () => {
  it('are counted by shift, in usual time', () => {
    // Two shifts of 8 h with 3 and 2 people; the run ends on Monday at 22:00 with unit 3.
    const { seen } = play(
      shop({
        crews: 'fitters: { headcount: [3, 2] }',
        perDay: 8,
        quantity: 3,
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 h }',
      }),
    );
    expect(seen.crewTime.usual[0]).toBe((3 + 2) * 8 * H);
    expect(seen.crewTime.overtime[0]).toBe(0);
    expect(seen.crewEngagedIn[0]).toBeCloseTo(30 * H, 9);
    expect(seen.crewBusy[0]).toBeCloseTo(30 / 40, 12);
  });
});

import { describe, expect, it } from 'vitest';
import { OFF_SHIFT, SHORT_CREW, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 3, overtime, by hand. 1 March 2027 is a Monday; the usual shift is 07:00-15:00, no breaks. */
const H = 60,
  DAY = 1440;
interface Parts {
  overtime?: string;
  more?: string;
  route?: string;
  quantity?: number;
  perDay?: number;
  crews?: string;
  zone?: string;
  start?: string;
  stations?: string;
  programme?: string;
}
const shop = ({
  overtime = '',
  more = '',
  route = '{ step: fit, at: bench, crew: { fitters: 1 }, work: 18 h }',
  quantity = 1,
  perDay = 1,
  crews = 'fitters: 1',
  zone = 'UTC',
  start = '2027-03-01',
  stations = 'bench: { buffer: unlimited }',
  programme = '',
}: Parts): string => `
scenario: overtime
programme: { start: ${start}, rate: { per day: ${perDay} }, quantity: ${quantity}${programme} }
calendars: { days: { hours: ["07:00-15:00"], on: Mon-Fri${overtime === '' ? '' : `, overtime: [${overtime}]`}${more} } }
sites:
  hall: { zone: ${zone}, calendar: days, crews: { ${crews} }, stations: { ${stations} } }
route:
  - ${route}
`;

describe('overtime by date', () => {
  it('is worked on its days, in addition', () => {
    // Two hours on Monday only: 10 h, then Tuesday 07:00-15:00, 18 h.
    const played = play(shop({ overtime: '{ to: 2027-03-01, hours: ["15:00-17:00"] }' }));
    expect(shippedAt(played)).toEqual([DAY + 15 * H]);
    expect([...played.seen.crewTime.usual, ...played.seen.crewTime.overtime]).toEqual([16 * H, 2 * H]);
    // From the second day: 8 h, 10 h.
    expect(shippedAt(play(shop({ overtime: '{ from: 2027-03-02, hours: ["15:00-17:00"] }' })))).toEqual([
      DAY + 17 * H,
    ]);
  });

  it('lengthens its shift: in one shift has ten hours then', () => {
    const route = '{ step: fit, at: bench, crew: { fitters: 1 }, work: 9 h, in one shift: true }',
      problem = 'work of at most 480 min';
    expect(() => play(shop({ route }))).toThrow(problem);
    // Saturday is a shift of its own of 9 h.
    const short = '{ step: fit, at: bench, crew: { fitters: 1 }, work: 7.5 h, in one shift: true }';
    // Unit 1: 07:00-14:30. Unit 2 has 30 min and 2 h of overtime: not enough; Tuesday.
    const two = shop({
      route: short,
      quantity: 2,
      perDay: 2,
      overtime: '{ on: Mon, hours: ["15:00-17:00"] }',
    });
    expect(shippedAt(play(two))).toEqual([14.5 * H, DAY + 14.5 * H]);
    // With 8 h of overtime it begins at 14:30 and goes over 15:00.
    expect(shippedAt(play(two.replace('15:00-17:00', '15:00-23:00')))).toEqual([14.5 * H, 22 * H]);
  });

  it('on Saturdays is a shift of its own, with the headcount of the first', () => {
    // Friday 5 March: 8 h by two people on two units, Saturday 4 h by two; 12 h each.
    const played = play(
      shop({
        start: '2027-03-05',
        overtime: '{ on: Sat, hours: ["07:00-11:00"] }',
        crews: 'fitters: { headcount: [2] }',
        quantity: 2,
        perDay: 100,
        stations: 'bench: { places: 2 }',
        route: '{ step: fit, at: bench, crew: { fitters: 1 }, work: 12 h }',
      }),
    );
    // Unit 2 comes 4.8 min after unit 1, so it has 4.8 min left on Monday.
    expect(shippedAt(played)).toEqual([DAY + 11 * H, 3 * DAY + 7 * H + 4.8]);
    expect(played.seen.crewTime.overtime[0]).toBe(2 * 4 * H);
  });

  it('keeps the people of the shift that it lengthens, and those of the next come after it', () => {
    // Early 3 people, late 1, early lengthened over the noon gap: 06:00-10:00 +2 h, late 12:00-16:00.
    const yaml = `
scenario: two shifts
programme: { start: 2027-03-01, rate: { per day: 80 }, quantity: 2 }
calendars: { two: { hours: ["06:00-10:00", "12:00-16:00"], on: Mon-Fri, overtime: [{ hours: ["10:00-12:00"], to: 2027-03-01 }] } }
sites: { hall: { calendar: two, crews: { fitters: { headcount: [2, 1] } }, stations: { floor: { places: 2 } } } }
route: [{ step: fit, at: floor, crew: { fitters: 1 }, work: 7 h }]
`;
    // Unit 1: 06:00-13:00. Unit 2 (06:06): 354 min to 12:00, is broken off (one person), goes on at 13:00
    // with 66 min.
    const played = play(yaml);
    expect(shippedAt(played)).toEqual([13 * H, 14 * H + 6]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(60);
    expect(played.seen.crewTime.overtime[0]).toBe(2 * 2 * H);
  });

  it('is not worked on holidays and in shutdowns, and releases no units', () => {
    const overtime = '{ on: Sat, hours: ["07:00-11:00"] }';
    const open = play(
      shop({
        start: '2027-03-05',
        overtime,
        route: '{ step: fit, at: bench, crew: { fitters: 1 }, work: 1 h }',
        quantity: 2,
      }),
    );
    // One a day: Friday and Monday, none on Saturday.
    expect(shippedAt(open)).toEqual([8 * H, 3 * DAY + 8 * H]);
    const shut = shop({
      start: '2027-03-05',
      overtime,
      more: ', shutdowns: [{ from: 2027-03-06, to: 2027-03-08, note: new floor }]',
      route: '{ step: fit, at: bench, crew: { fitters: 1 }, work: 10 h }',
    });
    // Friday 8 h, shut to Monday, Tuesday 2 h.
    expect(shippedAt(play(shut))).toEqual([4 * DAY + 9 * H]);
  });

  it('takes its breaks, and knows the clock change', () => {
    // Oslo: Saturday 27 March 07:00-11:00 with a break 09:00-09:30 is 3.5 h; Monday morning is an hour
    // nearer. 8 + 3.5 + 2 h.
    const played = play(
      shop({
        start: '2027-03-26',
        zone: 'Europe/Oslo',
        overtime: '{ on: Sat, hours: ["07:00-11:00"] }',
        more: ', breaks: ["09:00-09:30"]',
        route: '{ step: fit, at: bench, crew: { fitters: 1 }, work: 13 h }',
      }),
    );
    // Friday 7.5 h, Saturday 3.5 h, Monday 2 h from 07:00.
    expect(shippedAt(played)).toEqual([3 * DAY + 9 * H - H]);
  });
});

describe('overtime by rule', () => {
  // One unit a day, 10 h of work for one person in days of 8 h: the line falls behind by 2 h a day. Due 10 h
  // after release (07:00 to 17:00).
  const rule = (behind: number, more = ''): string =>
    `{ hours: ["15:00-17:00"], when: { units behind: ${behind}, lead time: 10 h }${more} }`;
  const tenHours = '{ step: fit, at: bench, crew: { fitters: 1 }, work: 10 h }';

  it('is worked in the weeks that begin with enough units behind, and in no other', () => {
    // Week 1 (5 x 8 h = 40 h) ships 4 of 5: one is behind on Monday 8 March, so days have 10 h there.
    // Without: unit k ends after 10 k working hours: unit 5 at 50 h = Tuesday 9 March 09:00... with overtime:
    // Monday 10 h: unit 5 at 17:00.
    const played = play(shop({ overtime: rule(1), route: tenHours, quantity: 10 }));
    const monday = 7 * DAY;
    expect(shippedAt(played).slice(3)).toEqual([
      4 * DAY + 15 * H,
      ...[0, 1, 2, 3, 4].map((day) => monday + day * DAY + 17 * H),
      monday + 7 * DAY + 17 * H,
    ]);
    expect([...played.seen.overtimeRules.looked]).toEqual([3]);
    expect([...played.seen.overtimeRules.worked]).toEqual([2]);
    // Week 2: five days of 2 h; week 3: Monday, to the end of the run.
    expect([...played.seen.overtimeRules.minutesIn].slice(0, 3)).toEqual([0, 10 * H, 2 * H]);
    expect(played.seen.crewTime.overtime[0]).toBe(12 * H);
    expect(minutesIn(played, 'bench', WORKING)).toBe(100 * H);
  });

  it('is not worked where fewer are behind', () => {
    const played = play(shop({ overtime: rule(2), route: tenHours, quantity: 8 })),
      never = play(shop({ route: tenHours, quantity: 8 }));
    expect(shippedAt(played)).toEqual(shippedAt(never));
    expect([...played.seen.overtimeRules.worked]).toEqual([0]);
    expect(played.seen.crewTime.overtime[0]).toBe(0);
  });

  it('decided daily looks each morning, and times anew what is under way', () => {
    // Unit 1 due Monday 17:00, ends Tuesday 09:00: on Tuesday 07:00 one is behind, so Tuesday has 10 h: unit
    // 2 09:00-17:00 and Wednesday 07:00-09:00. Wednesday 07:00: units 1 and 2 are due, 1 is out: again 10 h:
    // unit 3 09:00-17:00 and so on.
    const played = play(shop({ overtime: rule(1, ', decided: daily'), route: tenHours, quantity: 3 }));
    expect(shippedAt(played)).toEqual([DAY + 9 * H, 2 * DAY + 9 * H, 3 * DAY + 9 * H]);
    // Looked at on Monday to Thursday; worked on Tuesday to Thursday.
    expect([played.seen.overtimeRules.looked[0], played.seen.overtimeRules.worked[0]]).toEqual([4, 3]);
  });

  it('counts units past a step where it says so', () => {
    // Two steps: "early" is quick, "late" never ends in time. Behind by shipping, not by "early".
    const route =
        '{ step: early, at: bench, crew: { fitters: 1 }, work: 1 h }\n  - { step: late, at: yard, process: 400 h }',
      stations = 'bench: { buffer: unlimited }, yard: { places: 9, unattended: true }';
    const by = (at: string) =>
      play(
        shop({
          overtime: `{ hours: ["15:00-17:00"], when: { units behind: 1, lead time: 10 h${at} } }`,
          route,
          stations,
          quantity: 8,
        }),
      ).seen.overtimeRules.worked[0];
    expect(by('')).toBeGreaterThan(1);
    expect(by(', at: early')).toBe(0);
  });

  it('asks the rules of all calendars of a step', () => {
    // The station has the overtime too (same calendar); a crew without it does not come, so nothing is won.
    const yaml = shop({
      overtime: rule(1),
      route: tenHours,
      quantity: 6,
      crews: 'fitters: { headcount: 1, calendar: plain }',
    }).replace('calendars: {', 'calendars: { plain: { hours: ["07:00-15:00"] },');
    const never = play(shop({ route: tenHours, quantity: 6 }));
    expect(shippedAt(play(yaml))).toEqual(shippedAt(never));
  });

  it('can be Saturday work, and a crew with shifts comes to it', () => {
    // Week 1 as above; decided on Monday 8 March for Saturday 13 March, 07:00-11:00.
    const overtime = '{ on: Sat, hours: ["07:00-11:00"], when: { units behind: 1, lead time: 10 h } }';
    const played = play(
      shop({ overtime, route: tenHours, quantity: 9, crews: 'fitters: { headcount: [1] }' }),
    );
    // 80 h by Friday 12 March: 8 units. Unit 9: Saturday 4 h, Monday 15 March 6 h: 13:00.
    expect(shippedAt(played).slice(7)).toEqual([11 * DAY + 15 * H, 14 * DAY + 13 * H]);
    expect(played.seen.crewTime.overtime[0]).toBe(4 * H);
  });

  it('gives trucks their hours too', () => {
    const yaml = `
scenario: trucks
programme: { start: 2027-03-01, rate: { per day: 1 }, quantity: 2 }
calendars: { days: { hours: ["07:00-15:00"], overtime: [{ hours: ["15:00-17:00"], when: { units behind: 1, lead time: 1 h }, decided: daily }] } }
sites: { here: { calendar: days, stations: { bench: {} } }, there: { stations: { gate: {} } } }
lanes: { road: { from: here, to: there, trucks: 1, capacity: 1, load: 0 min, drive: 26 h, unload: 0 min, return: 0 min, hours: days } }
route: [{ step: fit, at: bench, work: 0 min }, { lane: road }, { step: end, at: gate, work: 0 min }]
`;
    // Monday 8 h (nothing due at 07:00); Tuesday one is behind: 10 h; Wednesday 8 of 10 h: 15:00.
    expect(shippedAt(play(yaml))[0]).toBe(2 * DAY + 15 * H);
  });
});

describe('overtime by due dates', () => {
  const tenHours = '{ step: fit, at: bench, crew: { fitters: 1 }, work: 10 h }';
  const due = (more = '', decided = 'daily'): string =>
    `{ hours: ["15:00-17:00"], when: { units behind: 1${more} }, decided: ${decided} }`;
  // Three units stand at the bench; the last is due at the end of Tuesday, the others later.
  const standing = ', opening: [{ at: fit, units: 2, due: 2027-03-20 }, { at: fit, due: 2027-03-02 }]';

  it('that are so long after the release is that by a lead time', () => {
    const byLead = shop({
      overtime: '{ hours: ["15:00-17:00"], when: { units behind: 1, lead time: 10 h } }',
      route: tenHours,
      quantity: 10,
    });
    const byDue = shop({
      overtime: due('', 'weekly'),
      route: tenHours,
      quantity: 10,
      programme: ', due after: 10 h',
    });
    expect(shippedAt(play(byDue))).toEqual(shippedAt(play(byLead)));
  });

  it('is worked for a unit that is due, however many others are out that are not', () => {
    // Unit 1 to Tuesday 09:00. On Wednesday unit 3 is due, and one is out: 10 h, unit 2 to 11:00, unit 3 has
    // 6 h; on Thursday it is due still, and has the last 4 h.
    const played = play(shop({ overtime: due(), route: tenHours, quantity: 3, programme: standing }));
    expect(shippedAt(played)).toEqual([DAY + 9 * H, 2 * DAY + 11 * H, 3 * DAY + 11 * H]);
    expect([played.seen.overtimeRules.looked[0], played.seen.overtimeRules.worked[0]]).toEqual([4, 2]);
  });

  it('looks ahead by due within', () => {
    // Due on Wednesday 00:00, so within a day on Tuesday 07:00: three days of 10 h.
    const played = play(
      shop({ overtime: due(', due within: 1 days'), route: tenHours, quantity: 3, programme: standing }),
    );
    expect(shippedAt(played)).toEqual([DAY + 9 * H, 2 * DAY + 9 * H, 3 * DAY + 9 * H]);
    expect(played.seen.overtimeRules.worked[0]).toBe(3);
  });

  it('counts units past a step where it says so, those that stand behind it at the start, and scrapped ones', () => {
    const stations = 'bench: { buffer: unlimited }, yard: { places: 9, unattended: true }',
      worked = (at: string, early: string, programme: string): number =>
        play(
          shop({
            overtime: due(at),
            route: `{ step: early, at: bench, crew: { fitters: 1 }, work: 1 h${early} }\n  - { step: late, at: yard, process: 400 h }`,
            stations,
            quantity: 8,
            programme: `, due after: 10 h${programme}`,
          }),
        ).seen.overtimeRules.worked[0];
    expect(worked('', '', '')).toBeGreaterThan(1);
    expect(worked(', at: early', '', '')).toBe(0);
    expect(worked(', at: early', '', ', opening: [{ at: late, units: 3 }]')).toBe(0);
    expect(worked(', at: late', ', fails: { chance: 99.9999999 %, scrap: true }', '')).toBe(0);
  });
});

describe('in one shift', () => {
  const crewed = (work: string): string =>
    `{ step: fit, at: bench, crew: { fitters: 1 }, work: ${work}, in one shift: true }`;

  const afterwards = (work: string): string =>
    `\n  - { step: dry, at: rack, process: 1 h }\n  - { step: other, at: rig, crew: { fitters: 1 }, work: ${work} }`;
  const stations = 'bench: {}, rack: {}, rig: {}';

  it('sets its crew free while it waits', () => {
    // Unit 1 on the bench 07:00-12:00; unit 2 has the fitter at 12:00, but 3 h are too few: it waits for
    // Tuesday, off shift. Other of 1: 13:00-15:00 and Tuesday 07:00-09:00. Unit 2 asks at 07:00, works
    // 09:00-14:00, dries to 15:00, other on Wednesday 07:00-11:00.
    const played = play(
      shop({ route: `${crewed('5 h')}${afterwards('4 h')}`, stations, perDay: 2, quantity: 2 }),
    );
    expect(shippedAt(played)).toEqual([DAY + 9 * H, 2 * DAY + 11 * H]);
    expect(minutesIn(played, 'bench', SHORT_CREW)).toBe(2 * H);
    expect(minutesIn(played, 'bench', WORKING)).toBe(10 * H);
  });

  it('waits once more where the crew comes too late', () => {
    // Other takes 7.5 h: to Tuesday 12:30, when 2.5 h are left. Unit 2: Wednesday 07:00-12:00, dry to 13:00,
    // other to 15:00 and Thursday 07:00-12:30.
    const played = play(
      shop({ route: `${crewed('5 h')}${afterwards('7.5 h')}`, stations, perDay: 2, quantity: 2 }),
    );
    expect(shippedAt(played)).toEqual([DAY + 12.5 * H, 3 * DAY + 12.5 * H]);
    expect(minutesIn(played, 'bench', SHORT_CREW)).toBe(5.5 * H);
  });

  it('keeps the changeover that was done', () => {
    // Unit 1 red 07:00-12:00; unit 2 white: changeover 12:00-13:00, waits, 07:00-12:00 on Tuesday without
    // another.
    const played = play(
      shop({
        programme: ', options: { kind: { red: 50 %, white: 50 % } }',
        route: crewed('5 h'),
        stations: 'bench: { changeover: { on: kind, work: 1 h } }',
        perDay: 2,
        quantity: 2,
      }),
      'flow',
      2,
    );
    const [first, second] = [...played.run.optionsOf];
    expect(first).not.toBe(second);
    expect(shippedAt(played)).toEqual([12 * H, DAY + 12 * H]);
    expect(minutesIn(played, 'bench', WORKING)).toBe(10 * H);
  });
});

describe('attended end', () => {
  const bake = (process: string, more = ''): string =>
    `{ step: bake, at: oven, process: ${process}, attended end: true${more} }`;
  const stations = 'oven: { unattended: true }';

  it('of a process that is over at night comes with the first working minute', () => {
    // In at 07:00, over at 02:00, out at 07:00; off shift from 02:00. The first 7 h are starved: the oven is
    // never off shift.
    const played = play(shop({ route: bake('19 h'), stations }));
    expect(shippedAt(played)).toEqual([DAY + 7 * H]);
    expect(minutesIn(played, 'oven', OFF_SHIFT)).toBe(5 * H);
  });

  it('of one that is over in the shift, or exactly with it, comes at once', () => {
    expect(shippedAt(play(shop({ route: bake('3 h'), stations })))).toEqual([10 * H]);
    expect(shippedAt(play(shop({ route: bake('8 h'), stations })))).toEqual([15 * H]);
  });

  it('asks the hours of the crew of the step', () => {
    const yaml = shop({
      route: bake('19 h', ', crew: { bakers: 1 }, work: 0 min'),
      stations,
      crews: 'bakers: { headcount: 1, calendar: late }',
    }).replace('calendars: {', 'calendars: { late: { hours: ["05:00-13:00"] },');
    // Claimed at 07:00, over at 02:00, ended at 05:00.
    expect(shippedAt(play(yaml))).toEqual([DAY + 5 * H]);
  });

  it('comes in overtime that is called while it waits', () => {
    // Overtime 05:00-07:00 before the shift, decided daily at 05:00: on Tuesday one unit is behind, so the
    // oven is opened at 05:00.
    const played = play(
      shop({
        route: bake('19 h'),
        stations,
        overtime: '{ hours: ["05:00-07:00"], when: { units behind: 1, lead time: 1 h }, decided: daily }',
      }),
    );
    expect(shippedAt(played)).toEqual([DAY + 5 * H]);
  });
});

import { describe, expect, it } from 'vitest';
import {
  BLOCKED,
  DOWN,
  OFF_SHIFT,
  SHORT_CREW,
  STARVED,
  UNATTENDED,
  WORKING,
} from '../../../src/flow/floor/states.js';
import { minutesIn, play, ringIn, shippedAt, visits } from '../run-yaml.js';

/** Rule 13, by hand. Constants everywhere; minutes since the start of a day that is a Monday. */
const shop = (
  stations: string,
  route: string,
  more = '',
  programme = 'arrivals: saturated, quantity: 3',
): string => `
scenario: failures
programme: { start: 2027-03-01, ${programme} }
calendars: { days: { hours: ["08:00-16:00"], on: every day }, mornings: { hours: ["08:00-12:00"], on: every day } }
sites: { hall: { crews: { fitters: 1 }, stations: { ${stations} } } }
${more}
route:
${route
  .split('\n')
  .map((line) => `  - { ${line.trim()} }`)
  .join('\n')}
`;

describe('failures by operating time', () => {
  it('break off the work, which is taken up after the repair with what was left', () => {
    // Fails after 25 working minutes: unit 1 works 0-10, 2 10-20, 3 20-25, down 25-32, 3 works on 32-37.
    const played = play(
      shop('lathe: { failures: { every: 25 min, repair: 7 min } }', 'step: turn, at: lathe, work: 10 min'),
    );
    expect(shippedAt(played)).toEqual([10, 20, 37]);
    expect([WORKING, DOWN].map((state) => minutesIn(played, 'lathe', state))).toEqual([30, 7]);
    expect(visits(played, 'turn')).toBe(3);
  });

  it('count only the minutes of the task: waiting wears nothing', () => {
    // A unit every 20 min, from 20: 10 min each. Units 1 and 2 wear 20, unit 3 works 60-65, down to 72,
    // 72-77.
    const played = play(
      shop(
        'lathe: { failures: { every: 25 min, repair: 7 min } }',
        'step: turn, at: lathe, work: 10 min',
        '',
        'arrivals: 20 min, quantity: 3',
      ),
    );
    expect(shippedAt(played)).toEqual([30, 50, 77]);
  });

  it('that fall on the end of a task come with the next one', () => {
    // Worn out at 10 exactly: unit 1 is done; the next begins at 10 and is broken off with all its work left,
    // 15-25; again at 25.
    const played = play(
      shop('lathe: { failures: { every: 10 min, repair: 5 min } }', 'step: turn, at: lathe, work: 10 min'),
    );
    expect(shippedAt(played)).toEqual([10, 25, 40]);
  });

  it('count process and settling as well as work, day and night', () => {
    // Coat 0-10, settle 10-15, coat 15-18, down to 20, coat 20-27, settle 27-32, bake 32-38, down to 40, bake
    // 40-56.
    const played = play(
      shop(
        'booth: { failures: { every: 18 min, repair: 2 min } }',
        'step: coat, at: booth, passes: { count: 2, work: 10 min, settle: 5 min }, process: 22 min',
        '',
        'arrivals: saturated, quantity: 1',
      ),
    );
    expect(shippedAt(played)).toEqual([56]);
    expect([WORKING, UNATTENDED, DOWN].map((state) => minutesIn(played, 'booth', state))).toEqual([
      20, 32, 4,
    ]);
  });

  it('wear in working hours only, and are repaired by the clock unless hours are given', () => {
    // Work 6 h a unit from 08:00 (480) to 16:00. Fails after 7 h: unit 1 480-840, unit 2 840-900, down 900 to
    // 900+120 (17:00). On Tuesday unit 2 goes on from 08:00 for 5 h: 480+1440+300 = 2220.
    const text = (hours: string): string =>
      shop(
        `lathe: { calendar: days, failures: { every: 7 h, repair: 2 h${hours} } }`,
        'step: turn, at: lathe, work: 6 h',
        '',
        'arrivals: saturated, quantity: 2',
      );
    expect(shippedAt(play(text('')))).toEqual([840, 2220]);
    // With repairs in the mornings only, the repair waits for 08:00 on Tuesday, to 10:00, and the work goes
    // on to 15:00: 2340.
    const played = play(text(', hours: mornings'));
    expect(shippedAt(played)).toEqual([840, 2340]);
    // Down 15:00-16:00 and 08:00-10:00 on shift; the night is off shift.
    expect(minutesIn(played, 'lathe', DOWN)).toBe(180);
    expect(minutesIn(played, 'lathe', OFF_SHIFT)).toBe(480 + 960);
  });

  it('are those of each place by itself', () => {
    // Two places: both wear from 0, both fail at 25 (unit 3 and 4), repaired together.
    const played = play(
      shop(
        'lathe: { places: 2, failures: { every: 25 min, repair: 7 min } }',
        'step: turn, at: lathe, work: 10 min',
        '',
        'arrivals: saturated, quantity: 6',
      ),
    );
    expect(shippedAt(played)).toEqual([10, 10, 20, 20, 37, 37]);
  });

  it('of several ways hold the place down until the last repair', () => {
    // Both count operating minutes: A fails after 12 and 24 of them, 4 min each; B after 15, 3 min.
    const played = play(
      shop(
        'lathe: { failures: [{ every: 12 min, repair: 4 min }, { every: 15 min, repair: 3 min }] }',
        'step: turn, at: lathe, work: 29 min',
        '',
        'arrivals: saturated, quantity: 1',
      ),
    );
    expect(shippedAt(played)).toEqual([29 + 4 + 4 + 3]);
    expect(minutesIn(played, 'lathe', DOWN)).toBe(11);
  });

  it('keep the crew at the place', () => {
    // Work 0-5, down 5-15, work 15-20 (the next failure falls on its end), bench 20-23; the fitter is engaged
    // throughout.
    const played = play(
      shop(
        'lathe: { failures: { every: 5 min, repair: 10 min } }, bench: {}',
        'step: turn, at: lathe, crew: { fitters: 1 }, work: 10 min\nstep: fit, at: bench, crew: { fitters: 1 }, work: 3 min',
        '',
        'arrivals: saturated, quantity: 1',
      ),
    );
    expect(shippedAt(played)).toEqual([23]);
    expect(played.seen.crewBusy[0]).toBe(1);
  });

  it('of a station with lots stop the whole lot', () => {
    const played = play(
      shop(
        'oven: { places: 3, lot: { least: 3, most: 3 }, failures: { every: 30 min, repair: 6 min } }',
        'step: bake, at: oven, process: 20 min',
        '',
        'arrivals: saturated, quantity: 6',
      ),
    );
    // Lots 0-20 and 20-46, broken off at 30 for 6 min; all three places are down.
    expect(shippedAt(played)).toEqual([20, 20, 20, 46, 46, 46]);
    expect(minutesIn(played, 'oven', DOWN)).toBe(18);
  });
});

describe('failures by the clock', () => {
  const clock = (every: number, repair: number): string =>
    `failures: { every: ${every} min, by: calendar time, repair: ${repair} min }`;

  it('come whether the place is in use or not, and a place that is down takes no unit', () => {
    // Down 12-20 and 32-40. A unit comes at 15, waits outside to 20, works to 30; the next comes at 30: 2
    // min, down, 40-48.
    const played = play(
      shop(
        `lathe: { ${clock(12, 8)} }`,
        'step: turn, at: lathe, work: 10 min',
        '',
        'arrivals: 15 min, quantity: 2',
      ),
    );
    expect(shippedAt(played)).toEqual([30, 48]);
    expect([WORKING, DOWN, STARVED].map((state) => minutesIn(played, 'lathe', state))).toEqual([20, 16, 12]);
  });

  it('let a unit that is done leave, and are not seen by its place', () => {
    // Unit 1: lathe 0-5, mill 5-25. Unit 2: lathe 5-10, blocked; lathe down 12-40; unit 2 leaves at 25 for
    // the mill, to 45. Unit 3 enters the lathe at 40 only: 40-45, mill 45-65.
    const played = play(
      shop(
        `lathe: { ${clock(12, 28)} }, mill: {}`,
        'step: turn, at: lathe, work: 5 min\nstep: mill, at: mill, work: 20 min',
      ),
    );
    expect(shippedAt(played)).toEqual([25, 45, 65]);
    // Blocked 10-12; down 12-40 and 52-65 (the next failure at 40 + 12).
    expect([WORKING, BLOCKED, DOWN].map((state) => minutesIn(played, 'lathe', state))).toEqual([15, 2, 41]);
  });

  it('grant no needs while the place is down, and let later requests have them', () => {
    // Units come at 4 and 8. Unit 1: lathe 4-9, bench 9-19 with the one fitter; unit 2 asks for him at the
    // lathe from 9 on, which is down 12-40. At 19 unit 1 at the desk asks later and gets him, to 22. Unit 2:
    // 40-45, 45-55, 55-58.
    const played = play(
      shop(
        `lathe: { ${clock(12, 28)} }, bench: {}, desk: {}`,
        'step: turn, at: lathe, crew: { fitters: 1 }, work: 5 min\nstep: fit, at: bench, crew: { fitters: 1 }, work: 10 min\nstep: sign, at: desk, crew: { fitters: 1 }, work: 3 min',
        '',
        'arrivals: 4 min, quantity: 2',
      ),
    );
    expect(shippedAt(played)).toEqual([22, 58]);
    expect([SHORT_CREW, DOWN].map((state) => minutesIn(played, 'lathe', state))).toEqual([3, 28 + 6]);
  });

  it('put off work in one shift to the first shift in which it can end', () => {
    // 5 h of work, from 08:00 to 16:00 (480-960). Unit 1 480-780. Unit 2 waits for Tuesday, 1920. The place
    // is down 1800-2000 by the clock (every 30 h, repair 200 min): work starts at 2000 and ends at 2300.
    const played = play(
      shop(
        'lathe: { calendar: days, failures: { every: 30 h, by: calendar time, repair: 200 min } }',
        'step: turn, at: lathe, in one shift: true, work: 5 h',
        '',
        'arrivals: saturated, quantity: 2',
      ),
    );
    expect(shippedAt(played)).toEqual([780, 2300]);
  });

  it('of lots keep the lot that gathers from starting, and its places from filling', () => {
    // Units every 5 min. Two gather at 5 and 10; down 8-30; the third enters and the lot starts at 30.
    const played = play(
      shop(
        `oven: { places: 3, lot: { least: 3, most: 3 }, ${clock(8, 22)} }`,
        'step: bake, at: oven, process: 6 min',
        '',
        'arrivals: 5 min, quantity: 3',
      ),
    );
    expect(shippedAt(played)).toEqual([36, 36, 36]);
    expect([STARVED, DOWN, UNATTENDED].map((state) => minutesIn(played, 'oven', state))).toEqual([
      24, 66, 18,
    ]);
  });

  it('do not hide a gridlock', () => {
    // As in gridlock.test.ts, at 20; the lathe fails for ever and ever, which helps nobody. It is down 12-13
    // with unit 2 on it.
    const stuck = play(
      shop(
        `lathe: { ${clock(12, 1)} }, mill: {}`,
        'step: turn, at: lathe, work: 10 min\nstep: mill, at: mill, work: 10 min\nstep: turn again, at: lathe, work: 10 min',
        '',
        'arrivals: saturated, quantity: 5',
      ),
    );
    // Unit 2's work at the lathe 10-12, 13-21; then each wants the place of the other.
    expect(stuck.seen).toMatchObject({ outcome: 'gridlock', endedAt: 21 });
    expect(ringIn(stuck)).toEqual([
      'unit 1 in place mill: room lathe of 2',
      'unit 2 in place lathe: room mill of 1',
    ]);
  });
});

describe('a place that is down when its people leave', () => {
  it("asks for the next shift's when it is up, and has none until they are free", () => {
    // One fitter a shift, 06:00-14:00 and 14:00-22:00 (360, 840, 1320). Unit 1: work from 360, of 10 h. By
    // the clock down 800-900. At 840 the first shift's fitter leaves; from 840 nobody is engaged; at 900 the
    // second's is asked for and goes on: 440 done, 160 left: 1060.
    const text = (headcount: string): string => `
scenario: shifts
programme: { start: 2027-03-01, arrivals: saturated, quantity: 1 }
calendars: { two: { hours: ["06:00-14:00", "14:00-22:00"], on: every day } }
sites: { hall: { calendar: two, crews: { fitters: { ${headcount}, calendar: two } }, stations: { lathe: { failures: { every: 800 min, by: calendar time, repair: 100 min } } } } }
route: [{ step: turn, at: lathe, crew: { fitters: 1 }, work: 10 h }]
`;
    const played = play(text('headcount: [1, 1]'));
    expect(shippedAt(played)).toEqual([1060]);
    expect([WORKING, DOWN].map((state) => minutesIn(played, 'lathe', state))).toEqual([600, 100]);
    // With nobody on the second shift it waits, short of crew, for 06:00 on Tuesday: 1800 + 160; the next
    // failure is due at 1700 and lasts to 1800.
    const waits = play(text('headcount: [1, 0]'));
    expect(shippedAt(waits)).toEqual([1960]);
  });
});

describe('outages', () => {
  const outage = (rest: string): string => `outages: [{ ${rest} }]`;

  it('include both days and take all places of the stations down', () => {
    // 6 h a unit at a line always open: 0-360, 360-720, ... From the 2nd to the 3rd of March: minutes 1440 to
    // 4320. Units 4 end at 1440; unit 5 begins there and is broken off at once.
    const played = play(
      shop(
        'lathe: {}',
        'step: turn, at: lathe, work: 6 h',
        outage('stations: lathe, from: 2027-03-02, to: 2027-03-03'),
        'arrivals: saturated, quantity: 6',
      ),
    );
    expect(shippedAt(played)).toEqual([360, 720, 1080, 1440, 4320 + 360, 4320 + 720]);
    expect(minutesIn(played, 'lathe', DOWN)).toBe(2880);
  });

  it('may begin and end at clock times, and break work off in the midst of it', () => {
    const played = play(
      shop(
        'lathe: {}',
        'step: turn, at: lathe, work: 6 h',
        outage('site: hall, from: 2027-03-01 02:00, to: 2027-03-01 03:30'),
        'arrivals: saturated, quantity: 1',
      ),
    );
    expect(shippedAt(played)).toEqual([360 + 90]);
  });

  it('are counted in the zone of the site', () => {
    // The programme keeps UTC; the site is an hour ahead in winter: the 2nd of March begins there at minute
    // 1380.
    const played = play(
      shop(
        'lathe: {}',
        'step: turn, at: lathe, work: 23.5 h',
        outage('stations: lathe, from: 2027-03-02, to: 2027-03-02'),
        'zone: UTC, arrivals: saturated, quantity: 1',
      ).replace('hall: {', 'hall: { zone: Europe/Oslo,'),
    );
    expect(shippedAt(played)).toEqual([1410 + 1440]);
  });

  it('of lanes let no truck depart; one under way drives on', () => {
    // Trucks of one unit, an hour each way. Units at 60, 120, 180: the first leaves at 60. Closed 90-200: the
    // others leave at 200 and, with the one truck back.., at 320.
    const { seen } = play(`
scenario: lane
programme: { start: 2027-03-01, arrivals: 60 min, quantity: 3 }
sites: { a: { stations: { dock: {} } }, b: { stations: { gate: { buffer: unlimited } } } }
lanes: { road: { from: a, to: b, trucks: 1, capacity: 1, drive: 60 min, return: 60 min } }
outages: [{ lanes: road, from: 2027-03-01 01:30, to: 2027-03-01 03:20 }]
route: [{ step: load, at: dock, work: 0 min }, { lane: road }, { step: arrive, at: gate, work: 1 min }]
`);
    expect(Array.from(seen.shippedAt)).toEqual([121, 261, 381]);
  });

  it('nest: a place that fails in an outage is up when both are over', () => {
    // Down by the clock 100-400 and by outage 120-240: up at 400; next failure at 500.
    const played = play(
      shop(
        'lathe: { failures: { every: 100 min, by: calendar time, repair: 300 min } }',
        'step: turn, at: lathe, work: 150 min',
        outage('stations: lathe, from: 2027-03-01 02:00, to: 2027-03-01 04:00'),
        'arrivals: saturated, quantity: 1',
      ),
    );
    expect(shippedAt(played)).toEqual([450]);
  });
});

describe('an outage where steps go on side by side', () => {
  it('breaks each of them off, and each goes on with what was left of it', () => {
    // Begun at 08:00: works of 60 and 90 min on one unit; down 08:30 to 09:30, that is 480 + 30 .. 480 + 90
    // after midnight: 60 + 60 = 120 and 90 + 60 = 150.
    const played = play(`
scenario: side by side
programme: { start: 2027-03-01, quantity: 1, rate: { per day: 1 } }
calendars: { days: { hours: ["08:00-16:00"], on: every day } }
sites: { hall: { calendar: days, crews: { fitters: 2 }, stations: { stand: {} } } }
outages: [{ stations: stand, from: 2027-03-01 08:30, to: 2027-03-01 09:30 }]
route:
  - at: stand
    side by side:
      - { step: short, crew: { fitters: 1 }, work: 60 min }
      - { step: long, crew: { fitters: 1 }, work: 90 min }
  - { step: look, at: stand, work: 5 min }
`);
    expect(shippedAt(played)).toEqual([480 + 155]);
    expect([WORKING, DOWN].map((state) => minutesIn(played, 'stand', state))).toEqual([95, 60]);
  });
});

import { describe, expect, it } from 'vitest';
import { OFF_SHIFT, SHORT_CREW, UNATTENDED, WORKING } from '../../../src/flow/floor/states.js';
import { changed } from '../dated/played.js';
import { minutesIn, type Played, play, shippedAt } from '../run-yaml.js';

/** Rule 7, teams of a crew whose people change, by hand. Shifts 00:00-12:00 and 12:00-24:00, every day. */
const H = 60;
const hours = (played: Played): number[] => shippedAt(played).map((minutes) => minutes / H);

const hall = ({
  crew,
  team = 'crew: fitters, people: 2, from: fit, to: fit',
  route = '{ step: fit, at: floor, work: 30 h }',
  stations = 'floor: { places: 9 }',
  quantity = 3,
  release = 'arrivals: saturated',
  more = '',
}: {
  readonly crew: string;
  readonly team?: string;
  readonly route?: string;
  readonly stations?: string;
  readonly quantity?: number;
  readonly release?: string;
  readonly more?: string;
}): string => `
scenario: teams
programme: { start: 2027-03-01, ${release}, quantity: ${quantity} }
calendars: { two: { hours: ["00:00-12:00", "12:00-24:00"], on: every day } }
sites: { hall: { crews: { fitters: { ${crew}, calendar: two } }, stations: { ${stations} } } }
teams: { pair: { ${team} } }
${more}
route:
  - ${route}
`;

describe('teams of two of a crew with seven by day and four by night', () => {
  it('are three by day and two by night, and who claimed last stands', () => {
    // 1, 2: 0-30. 3: 0-12, stands, 24-36, goes on by night as one of the first two, to 42. 4: 30-60. 5:
    // 30-36, and from 42 on with the people of 3, to 66. 6: claimed at 48 by day, to 78. 7: claimed at 60, as
    // 4 is done, and begins with the people of 5 at 66, to 96. 8: 72-102.
    const played = play(hall({ crew: 'headcount: [7, 4]', quantity: 8 }));
    expect(hours(played)).toEqual([30, 30, 42, 60, 66, 78, 96, 102]);
    // 60 team-hours a day for units of 30: 2 a day in the long run.
    expect(played.seen.kept.ended[0]).toBe(8);
  });
});

describe('a team for whom a shift has too few people', () => {
  it('stays with its unit, which stands short of crew, and engages nobody', () => {
    // 1: 0-30. 2: 0-12 and 24-42.
    const played = play(hall({ crew: 'headcount: [4, 2]', quantity: 2 }));
    expect(hours(played)).toEqual([30, 42]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(12 * H);
    expect(minutesIn(played, 'floor', WORKING)).toBe(60 * H);
    expect((played.seen.kept.held[0] * played.seen.minutes) / H).toBeCloseTo(30 + 42, 9);
    expect(played.seen.crewBusy[0]).toBeCloseTo((2 * 60) / (4 * 12 + 2 * 12 + 4 * 12 + 2 * 6), 12);
  });

  it('has its people back with the first shift that has them, and nothing is a standstill until then', () => {
    // Nobody by night: 0-12, 24-36, 48-54.
    const played = play(hall({ crew: 'headcount: [2, 0]', quantity: 1 }));
    expect(hours(played)).toEqual([54]);
    expect(played.seen.outcome).toBe('finished');
  });

  it('gets those of a team that is done before any request is met', () => {
    // 1: 0-20. 2: 0-12, and with the people of 1 20-28. 3 asked at 0 and claims at 24, 24-44.
    const route = '{ step: fit, at: floor, work: 20 h }';
    expect(hours(play(hall({ crew: 'headcount: [4, 2]', route })))).toEqual([20, 28, 44]);
  });

  it('goes on with its unit, which waits for it where there is work to do', () => {
    // Both soak 0-18. 1: 18-22. 2 is without people from 12 on, stands from 18 on, 22-26.
    const played = play(
      hall({
        crew: 'headcount: [4, 2]',
        team: 'crew: fitters, people: 2, from: soak, to: fit',
        stations: 'tank: { places: 2 }, floor: { places: 2 }',
        route: '{ step: soak, at: tank, process: 18 h }\n  - { step: fit, at: floor, work: 4 h }',
        quantity: 2,
      }),
    );
    expect(hours(played)).toEqual([22, 26]);
    expect(minutesIn(played, 'tank', UNATTENDED)).toBe(2 * 18 * H);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(4 * H);
  });

  it('goes before other work of its crew, which is broken off', () => {
    // Two of three by day are with the unit, 0-30; the third builds the axle, 0-12 and 24-32.
    const played = play(
      hall({
        crew: 'headcount: [3, 2]',
        stations: 'floor: {}, gate: {}, bench: {}',
        more: 'feeders: { axles: { stock: 1, at start: 0, route: [{ step: build, at: bench, crew: { fitters: 1 }, work: 20 h }] } }',
        route:
          '{ step: fit, at: floor, work: 30 h }\n  - { step: close, at: gate, parts: { axles: 1 }, work: 1 h }',
        quantity: 1,
      }),
    );
    expect(hours(played)).toEqual([33]);
    expect(minutesIn(played, 'bench', SHORT_CREW)).toBe(12 * H);
  });

  it('counts with those that its step asks of the crew besides', () => {
    // Three for each: 1 keeps three of the four by night, 0-30; 2 does not keep the other two to no end,
    // 0-12, 24-42.
    const played = play(
      hall({
        crew: 'headcount: [6, 4]',
        route: '{ step: fit, at: floor, crew: { fitters: 1 }, work: 30 h }',
        quantity: 2,
      }),
    );
    expect(hours(played)).toEqual([30, 42]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(12 * H);
  });

  it('leaves steps side by side with its unit undone', () => {
    // 0-12 and 24-42; the electrician's work, 10 h, is over by then.
    const played = play(
      hall({
        crew: 'headcount: [2, 0], calendar: two }, electricians: { headcount: 1',
        team: 'crew: fitters, people: 2, from: weld, to: weld',
        route:
          '{ at: floor, side by side: [{ step: weld, work: 30 h }, { step: wire, crew: { electricians: 1 }, work: 10 h }] }',
        stations: 'floor: {}',
        quantity: 1,
      }),
    );
    expect(hours(played)).toEqual([54]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(24 * H);
  });

  it('has none of those who are absent', () => {
    // Both of two in one shift are there one time in four: 12 h in the first such shift, 1 h in the next.
    const ends = Array.from({ length: 16 }, (_, i) =>
      hours(
        play(
          hall({
            crew: 'headcount: 2, absence: 50 %',
            route: '{ step: fit, at: floor, work: 13 h }',
            quantity: 1,
          }),
          'absent',
          i + 1,
        ),
      ),
    ).flat();
    expect(ends.every((end) => end % 12 === 1 && end >= 13)).toBe(true);
    expect(new Set(ends).size).toBeGreaterThan(6);
  });
});

describe('fewer people from a date on', () => {
  it('leave the team that was claimed last without, until those of another are free', () => {
    // 1: 0-30. 2: 0-24, and with the people of 1 30-36. 3 claims at 36, 36-66.
    const yaml = hall({ crew: 'headcount: 4' }),
      played = changed(yaml, 'headcount: 4', 'headcount: 2', '2027-03-02');
    expect(hours(played)).toEqual([30, 36, 66]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe((6 + 36) * H);
  });

  it('do so where they are another number by shift', () => {
    // From Tuesday on two by day and none by night. 1: 0-30. 2: 0-24, 30-36. 3 claims at 48, 48-60, 72-84,
    // 96-102.
    const yaml = hall({ crew: 'headcount: [4, 4]' }),
      played = changed(yaml, 'headcount: [4, 4]', 'headcount: [2, 0]', '2027-03-02');
    expect(hours(played)).toEqual([30, 36, 102]);
  });
});

describe('hand over: wait', () => {
  it('leaves a team to the shift that claimed it', () => {
    // 1, 2 by day: 0-12, 24-36, 48-54. 3 by night: 12-24, 36-48, 60-66.
    const played = play(hall({ crew: 'headcount: [4, 2], hand over: wait' }));
    expect(hours(played)).toEqual([54, 54, 66]);
    expect(minutesIn(played, 'floor', OFF_SHIFT)).toBe((24 + 24 + 24) * H);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(12 * H);
  });

  it('lets a shift of fewer people than a team has claim none', () => {
    // 3: 54-60, 72-84, 96-108.
    const played = play(hall({ crew: 'headcount: [4, 1], hand over: wait' }));
    expect(hours(played)).toEqual([54, 54, 108]);
    expect(minutesIn(played, 'floor', SHORT_CREW)).toBe(54 * H);
  });

  it('has a unit that comes to work in another shift wait, off shift', () => {
    // Soaks 0-18, fitted 24-28 by day. Handed over it is 18-22.
    const shop = (handOver: string): string =>
      hall({
        crew: `headcount: [2, 2]${handOver}`,
        team: 'crew: fitters, people: 2, from: soak, to: fit',
        stations: 'tank: {}, floor: {}',
        route: '{ step: soak, at: tank, process: 18 h }\n  - { step: fit, at: floor, work: 4 h }',
        quantity: 1,
      });
    const played = play(shop(', hand over: wait'));
    expect(hours(played)).toEqual([28]);
    expect(minutesIn(played, 'floor', OFF_SHIFT)).toBe(6 * H);
    expect(hours(play(shop('')))).toEqual([22]);
  });

  it('counts overtime that belongs to the shift', () => {
    // Early 06:00-14:00 and two hours more: 06:00-15:00. Without them an hour is left for Tuesday.
    const shop = (overtime: string): string =>
      hall({
        crew: 'headcount: 2, hand over: wait',
        route: '{ step: fit, at: floor, work: 9 h }',
        quantity: 1,
      }).replace(
        'hours: ["00:00-12:00", "12:00-24:00"], on: every day',
        `hours: ["06:00-14:00", "18:00-24:00"], on: Mon-Fri${overtime}`,
      );
    expect(hours(play(shop(', overtime: [{ on: Mon-Fri, hours: ["14:00-16:00"] }]')))).toEqual([15]);
    expect(hours(play(shop('')))).toEqual([31]);
  });
});

describe('teams of a crew that is the same on every shift', () => {
  it.each([
    ['a list', 'headcount: [5, 5]'],
    ['a list, and no absence', 'headcount: [5, 5], absence: 0 %'],
  ])('go as with one number, if that is written as %s', (_, crew) => {
    const shop = (people: string): string =>
      hall({
        crew: people,
        team: 'crew: fitters, people: 2, from: fit, to: close',
        stations: 'floor: { places: 3, buffer: 2 }, gate: { places: 2 }',
        route:
          '{ step: fit, at: floor, crew: { fitters: 1 }, work: { exponential: { mean: 5 h } } }\n' +
          '  - { step: close, at: gate, work: { exponential: { mean: 3 h } }, fails: { chance: 30 %, back to: fit, limit: 2 } }',
        quantity: 60,
        release: 'arrivals: { exponential: { mean: 6 h } }',
      });
    const listed = play(shop(crew)),
      plain = play(shop('headcount: 5'));
    expect(shippedAt(listed)).toEqual(shippedAt(plain));
    expect(minutesIn(listed, 'floor', SHORT_CREW)).toBe(minutesIn(plain, 'floor', SHORT_CREW));
    expect(listed.seen.crewBusy[0]).toBeCloseTo(plain.seen.crewBusy[0], 12);
  });
});

describe('a standstill', () => {
  // 1 is with the team at b 1-4 and then wants a, where 3 stands since 3; 2 wants the team at b since 2.
  const ring = (people: string): string =>
    hall({
      crew: `headcount: ${people}`,
      team: 'crew: fitters, people: 2, from: two, to: three',
      stations: 'a: {}, b: { places: 2 }',
      route:
        '{ step: one, at: a, work: 1 h }\n  - { step: two, at: b, work: 3 h }\n  - { step: three, at: a, work: 1 h }',
    });

  it('is one where no shift can ever have people for another team', () => {
    expect(play(ring('[2, 2]')).seen).toMatchObject({ outcome: 'gridlock', endedAt: 4 * H });
    expect(play(ring('[2, 1]')).seen).toMatchObject({ outcome: 'gridlock', endedAt: 4 * H });
  });

  it('is none yet where the next shift has them', () => {
    // 2 is at work 12-15, and then wants a as well.
    expect(play(ring('[2, 4]')).seen).toMatchObject({ outcome: 'gridlock', endedAt: 15 * H });
  });

  it('is none yet where the next shift has teams of its own', () => {
    // 2 is claimed by night, 12-15.
    expect(play(ring('[2, 2], hand over: wait')).seen).toMatchObject({
      outcome: 'gridlock',
      endedAt: 15 * H,
    });
  });
});

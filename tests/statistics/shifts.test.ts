import { describe, expect, it } from 'vitest';
import { SHORT_CREW } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

/** Rule 3, crews that change from shift to shift, against closed forms. */
const PLACES = 60;
const hall = (calendar: string, crew: string, arrivals: number, hours: number): string => `
scenario: shifts
programme: { start: 2027-03-01, arrivals: ${exponential(arrivals)}, length: ${hours} h, warm up: 1008 h }
calendars: { clock: ${calendar} }
sites: { hall: { calendar: clock, crews: { fitters: ${crew} }, stations: { floor: { places: ${PLACES}, buffer: unlimited } } } }
route: [{ step: fit, at: floor, crew: { fitters: 1 }, work: ${exponential(1)} }]
`;

describe('a crew of three shifts round the clock', SLOW, () => {
  const shifts = '{ hours: ["06:00-14:00", "14:00-22:00", "22:00-06:00"], on: every day }';

  it('with three people on each waits as Erlang C says (Erlang 1917): load 2, delayed 4/9', () => {
    const seen = observations(hall(shifts, '{ headcount: [3, 3, 3] }', 0.5, 50_000), { replications: 40 });
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[SHORT_CREW] * PLACES),
      ((4 / 9) * (2 / 3)) / (1 - 2 / 3),
      0.01,
    );
    expectAgreement(
      seen.map(({ crewBusy }) => crewBusy[0]),
      2 / 3,
      0.01,
    );
  });

  it('with five, three and two, of whom 8 % are missing, is busy for load over people there', () => {
    // Arrivals 1.8 an hour of 1 h; people there 10 x 8 x 0.92 = 73.6 person-hours a day for 43.2 h of work.
    // What is not done in a shift waits for more people.
    const seen = observations(hall(shifts, '{ headcount: [5, 3, 2], absence: 8 % }', 1 / 1.8, 20_000));
    expectAgreement(
      seen.map(({ crewBusy }) => crewBusy[0]),
      43.2 / 73.6,
      0.01,
    );
    expectAgreement(
      seen.map(({ crewTime, minutes }) => crewTime.usual[0] / minutes),
      (10 / 3) * 0.92,
      0.01,
    );
  });
});

describe('overtime by date', SLOW, () => {
  it('adds its hours to those of the week: load over the sum of both', () => {
    // 5 days x 8 h by two and 6 h of Saturday by two: 92 person-hours a week; 0.3 an hour of 1 h, day and
    // night, make 50.4.
    const seen = observations(
      hall(
        '{ hours: ["06:00-14:00"], overtime: [{ on: Sat, hours: ["06:00-12:00"] }] }',
        '2',
        1 / 0.3,
        100_800,
      ),
    );
    // 600 weeks: the same in every replication.
    for (const {
      crewTime: { usual, overtime },
      minutes,
    } of seen)
      expect((usual[0] + overtime[0]) / minutes).toBeCloseTo(92 / 168, 12);
    expectAgreement(
      seen.map(({ crewEngagedIn, minutes }) => crewEngagedIn.reduce((a, b) => a + b) / minutes),
      0.3,
      0.01,
    );
    expectAgreement(
      seen.map(({ crewBusy }) => crewBusy[0]),
      50.4 / 92,
      0.01,
    );
  });
});

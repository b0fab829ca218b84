import { describe, expect, it } from 'vitest';
import { SHORT_CREW } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential } from './line.js';
import { handedOver, ofTheirShift, type TwoShifts } from './two-shift-teams.js';

const PLACES = 60;
const shop = (people: string, arrivals: string, hours = 200_000): string => `
scenario: teams by shift
programme: { start: 2027-03-01, arrivals: ${arrivals}, length: ${hours} h, warm up: 1000 h }
calendars: { two: { hours: ["00:00-12:00", "12:00-24:00"], on: every day } }
sites:
  hall: { crews: { fitters: { ${people}, calendar: two } }, stations: { floor: { places: ${PLACES} } } }
teams: { pair: { crew: fitters, people: 2, from: fit, to: fit } }
route:
  - { step: fit, at: floor, work: ${exponential(load.stay)} }
`;
const load: TwoShifts = { day: 2, night: 1, rate: 0.25, stay: 3 },
  slower = { ...load, rate: 0.15 };

describe('teams of a crew with another headcount by night, against the chain of a day', SLOW, () => {
  it('have a chain that is Erlang C where day and night are alike (Erlang 1917)', () => {
    // Two teams at load 1: a third of the units wait, 1/3 of them on average.
    expect(handedOver({ day: 2, night: 2, rate: 1, stay: 1 }).waiting).toBeCloseTo(1 / 3, 5);
    for (const chain of [handedOver, ofTheirShift]) expect(chain(slower).staffed).toBeCloseTo(0.45, 5);
  });

  it('handed over: the one claimed last is without people, and has them again before others claim', () => {
    const exact = handedOver(load),
      seen = observations(shop('headcount: [4, 2]', exponential(1 / load.rate)), { replications: 48 });
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[SHORT_CREW] * PLACES),
      exact.waiting + exact.held - exact.staffed,
      0.01,
    );
    expectAgreement(
      seen.map(({ kept }) => kept.held[0]),
      exact.held,
      0.01,
    );
    expectAgreement(
      seen.map(({ kept }) => kept.unstaffed[0]),
      exact.held - exact.staffed,
      0.01,
    );
    expectAgreement(
      seen.map(({ crewBusy }) => crewBusy[0]),
      (2 * exact.staffed) / 3,
      0.01,
    );
  });

  it('waiting for their shift: each shift has its own', () => {
    const exact = ofTheirShift(slower),
      seen = observations(shop('headcount: [4, 2], hand over: wait', exponential(1 / slower.rate)));
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[SHORT_CREW] * PLACES),
      exact.waiting,
      0.01,
    );
    expectAgreement(
      seen.map(({ kept }) => kept.held[0]),
      exact.held,
      0.01,
    );
    expectAgreement(
      seen.map(({ kept }) => kept.unstaffed[0]),
      exact.held - exact.staffed,
      0.01,
    );
  });

  it('absent in part: a saturated crew ships by the mean number of whole teams (binomial)', () => {
    const teams = (people: number): number => {
      let mean = 0;
      for (let there = 0; there <= people; there++) {
        let ways = 1;
        for (let i = 0; i < there; i++) ways = (ways * (people - i)) / (i + 1);
        mean += Math.floor(there / 2) * ways * 0.8 ** there * 0.2 ** (people - there);
      }
      return mean;
    };
    const seen = observations(shop('headcount: [5, 3], absence: 20 %', 'saturated', 60_000));
    expectAgreement(seen.map(perHour), (teams(5) + teams(3)) / 2 / load.stay, 0.01);
  });
});

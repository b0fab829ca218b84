import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';

/** What is said of a team of two fitters, and one fitter more at its step; worded by hand. */
function said(fitters: string, station = 'two'): readonly string[] {
  const { problems } = readScenario(
    `scenario: floor
programme: { start: 2027-03-01, arrivals: saturated, quantity: 9 }
calendars:
  days: { hours: ["06:00-14:00"] }
  two: { hours: ["06:00-14:00", "14:00-22:00"] }
sites:
  hall:
    crews: { fitters: { ${fitters}, calendar: two } }
    stations: { floor: { calendar: ${station} } }
teams: { pair: { crew: fitters, people: 2, from: fit, to: fit } }
route:
  - { step: fit, at: floor, crew: { fitters: 1 }, work: 1 h }
`,
    'floor.yaml',
    () => '',
  );
  return (problems ?? []).map(({ line, path, wanted, seen }) => `${line} ${path}: ${wanted}; got ${seen}`);
}

describe('a team of a crew with other people on each shift', () => {
  it('needs one shift that has all who are at work at its step', () => {
    expect(said('headcount: [3, 1]')).toEqual([]);
    expect(said('headcount: [0, 3], absence: 10 %')).toEqual([]);
    expect(said('headcount: [2, 1]')).toEqual([
      '10 teams.pair.people: at most 1, the headcount of fitters in site hall less the 1 that step "fit" needs as well; got 2',
    ]);
  });

  it('needs its step open in such a shift', () => {
    expect(said('headcount: [3, 1]', 'days')).toEqual([]);
    expect(said('headcount: [2, 3]', 'days')).toEqual([
      '10 teams.pair.people: hours of step "fit" in a shift of fitters that has the 3 people for it; got none',
    ]);
  });

  it('needs all of this in every shift that can form it, where it waits for its shift', () => {
    expect(said('headcount: [3, 1], hand over: wait', 'days')).toEqual([]);
    expect(said('headcount: [3, 3], hand over: wait')).toEqual([]);
    expect(said('headcount: [3, 3], hand over: wait', 'days')).toEqual([
      '10 teams.pair.crew: hours of step "fit" in every shift that can form pair, since a team stays in its shift; or hand over: next shift; got none in shift 2 of fitters',
    ]);
    expect(said('headcount: [3, 2], hand over: wait')).toEqual([
      '10 teams.pair.people: at least 3 people in each shift that can form the team, since it stays in its shift and step "fit" needs 1 of fitters as well; or hand over: next shift; got a shift of 2',
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { BLOCKED, SHORT_CARRIER, SHORT_CREW } from '../../../src/flow/floor/states.js';
import { whoWaits } from '../../../src/study/answer/gridlock.js';
import { minutesIn, type Played, play, shippedAt } from '../run-yaml.js';

/** Minutes of what stays with units: with them, and on the way back; and how often it was given back. */
const kept = ({ seen }: Played, id = 0): { held: number; coming: number; ended: number } => ({
  held: Math.round(seen.kept.held[id] * seen.minutes * 1e6) / 1e6,
  coming: Math.round(seen.kept.coming[id] * seen.minutes * 1e6) / 1e6,
  ended: seen.kept.ended[id],
});

/** Rule 7, by hand. All units are ready at 0 and stand outside until the first station has room. */
describe('a carrier', () => {
  it('is claimed at its first step, goes with the unit, and can be claimed again when it is back', () => {
    // 1: a 0-10, b 10-20; the dolly is back at 25. 2 stands at a from 10, works 25-35, b 35-45, back 50. 3:
    // stands 35, a 50-60, b 60-70.
    const played = play(`
scenario: one dolly
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { a: {}, b: {}, c: {} } } }
carriers: { dolly: { count: 1, from: one, to: two, return: 5 min } }
route: [{ step: one, at: a, work: 10 min }, { step: two, at: b, work: 10 min }, { step: three, at: c, work: 10 min }]
`);
    expect(shippedAt(played)).toEqual([30, 55, 80]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(15 + 15);
    expect(kept(played)).toEqual({ held: 60, coming: 15, ended: 3 });
    // Free for 5 of 80 minutes, at the end; as a bottleneck it is in use or away for the rest.
    expect(played.seen.stockMean[0]).toBeCloseTo(5 / 80, 12);
    expect(played.seen.stockOut[0]).toBeCloseTo(75 / 80, 12);
    expect(played.seen.utilisation.at(-1)).toBeCloseTo(75 / 80, 12);
    expect(played.seen.activePeriod.at(-1)).toBeCloseTo(25, 12);
  });

  it('stays under a unit that is blocked behind the last of its steps', () => {
    // 1: c 20-50. 2: a 20-30, b 30-40, blocked to 50. 3 stands at a from 30 and gets the dolly at 50, not at
    // 40.
    const played = play(`
scenario: blocked
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { a: {}, b: {}, c: {} } } }
carriers: { dolly: { count: 1, from: one, to: two } }
route: [{ step: one, at: a, work: 10 min }, { step: two, at: b, work: 10 min }, { step: three, at: c, work: 30 min }]
`);
    expect(shippedAt(played)).toEqual([50, 80, 110]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(10 + 20);
    expect(minutesIn(played, 'b', BLOCKED)).toBe(10 + 10);
    expect(kept(played)).toEqual({ held: 20 + 30 + 30, coming: 0, ended: 3 });
  });

  it('is given back when the unit moves from where it was blocked to a space', () => {
    // c 20-65, 65-110, 110-155, 155-200. 2: a 20-30, b 30-40, space. 3: a 40-50, b 50-60, blocked to 65. 4
    // stands at a from 50, gets the dolly at 65.
    const played = play(`
scenario: space
programme: { arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { a: {}, b: {}, c: { buffer: 1 }, d: { buffer: unlimited } } } }
carriers: { dolly: { count: 1, from: one, to: two } }
route: [{ step: one, at: a, work: 10 min }, { step: two, at: b, work: 10 min }, { step: three, at: c, work: 45 min }, { step: four, at: d, work: 1 min }]
`);
    expect(shippedAt(played)).toEqual([66, 111, 156, 201]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(10 + 10 + 15);
    expect(minutesIn(played, 'b', BLOCKED)).toBe(5 + 25);
  });

  it('is claimed together with the crew, all or none, and its want is shown before that of the crew', () => {
    // 1: a 0-10, b 10-20. 2 stands at a from 10 and leaves the fitter alone; at 20 it was first to ask: a
    // 20-30, and 1 waits at c for the fitter, c 30-60. 2: b 30-40, blocked to 60. 3 stands at a from 30,
    // short of both, a 60-70. 2: c 70-100. 3: b 70-80, blocked to 100, c 100-130.
    const played = play(`
scenario: together
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { crews: { fitters: 1 }, stations: { a: {}, b: {}, c: {} } } }
carriers: { dolly: { count: 1, from: one, to: two } }
route: [{ step: one, at: a, crew: { fitters: 1 }, work: 10 min }, { step: two, at: b, work: 10 min }, { step: three, at: c, crew: { fitters: 1 }, work: 30 min }]
`);
    expect(shippedAt(played)).toEqual([60, 100, 130]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(10 + 30);
    expect(minutesIn(played, 'a', SHORT_CREW)).toBe(0);
    expect(minutesIn(played, 'c', SHORT_CREW)).toBe(10 + 10);
  });

  const sentBack = (places: number): string => `
scenario: sent back
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { s: {}, a: { places: ${places} }, t: {}, e: {} } } }
carriers: { dolly: { count: 1, from: one, to: test } }
route:
  - { step: start, at: s, work: 5 min }
  - { step: one, at: a, work: 10 min }
  - { step: test, at: t, sample: 1 in 2, work: 10 min, fails: { chance: 100 %, back to: start, limit: 1 } }
  - { step: end, at: e, work: 5 min }
`;

  it('is kept by a unit that is sent back to before its first step', () => {
    // 1: a 5-15, not tested. 2 stands at a from 10: a 15-25, t 25-35, s 35-40, a 40-50, t 50-60, and only
    // then is the dolly free for 3, which stands at a from 15.
    const played = play(sentBack(2));
    expect(shippedAt(played)).toEqual([20, 65, 75]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(5 + 45);
    expect(kept(played)).toEqual({ held: 10 + 45 + 10, coming: 0, ended: 3 });
  });

  it('is named where the one who has it and the one who wants it wait for each other', () => {
    // 2: a 15-25, t 25-35, s 35-40; 3 stands in the only place at a from 25, and 2 wants it at 40.
    const { seen } = play(sentBack(1));
    expect(seen).toMatchObject({ outcome: 'gridlock', endedAt: 40 });
    expect(whoWaits(seen.standstill, 'unit')).toBe(
      'unit 2 at s (with dolly) waits for room at a, unit 3 at a waits for dolly: each waits for the next, and the last for the first',
    );
  });

  it('comes back from a unit that is scrapped', () => {
    // 1: a 0-10; dolly back 15. 2: a 15-25, t 25-35, scrapped; back 40. 3 stands at a from 25: a 40-50.
    const played = play(`
scenario: scrap
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { a: {}, t: {}, e: {} } } }
carriers: { dolly: { count: 1, from: one, to: test, return: 5 min } }
route: [{ step: one, at: a, work: 10 min }, { step: test, at: t, sample: 1 in 2, work: 10 min, fails: { chance: 100 %, scrap: true } }, { step: end, at: e, work: 5 min }]
`);
    expect(shippedAt(played)).toEqual([15, NaN, 55]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(5 + 15);
  });

  it('travels by lane with the unit and is brought back in its hours only', () => {
    // Monday: a 0-13 h, drive to 13:30, b to 14:00. Back: half an hour to 14:30, the other half from 6:00 on
    // Tuesday: 1830. Then 840 min again.
    const played = play(`
scenario: two sites
programme: { start: 2027-03-01, arrivals: saturated, quantity: 2 }
calendars: { days: { hours: ["06:00-14:30"] } }
sites: { here: { stations: { a: {} } }, there: { stations: { b: {} } } }
lanes: { road: { from: here, to: there, trucks: 1, capacity: 1, drive: 30 min } }
carriers: { dolly: { count: 1, from: one, to: two, return: 1 h, hours: days } }
route: [{ step: one, at: a, work: 13 h }, { lane: road }, { step: two, at: b, work: 30 min }]
`);
    expect(shippedAt(played)).toEqual([840, 2670]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(1830 - 780);
  });

  it('goes through an oven with each unit of a lot', () => {
    // a 0-10, 10-20; the lot 20-50 keeps both dollies; 3 stands at a from 20, a 50-60, and bakes alone 60-90.
    const played = play(`
scenario: oven
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { a: {}, oven: { places: 2, lot: { least: 2, most: 2 } } } } }
carriers: { skids: { count: 2, from: one, to: bake } }
route: [{ step: one, at: a, work: 10 min }, { step: bake, at: oven, process: 30 min }]
`);
    expect(shippedAt(played)).toEqual([50, 50, 90]);
    expect(minutesIn(played, 'a', SHORT_CARRIER)).toBe(30);
  });

  it('of a feeder stays with its sub-assembly until that goes into the stock', () => {
    // Two axles at once at the start; one jig: 0-20, 20-40. Then each fit (10 min) asks for another: at 20
    // and at 40.
    const played = play(`
scenario: jig
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { bench: { places: 2 }, line: {} } } }
carriers: { jig: { count: 1, from: build axle, to: build axle } }
feeders: { axles: { stock: 2, route: [{ step: build axle, at: bench, work: 20 min }] } }
route: [{ step: fit, at: line, parts: { axles: 1 }, work: 10 min }]
`);
    expect(shippedAt(played)).toEqual([30, 50, 70]);
    // Axle 2 waits 0-20; 3 is begun when 1 is fitted at 20 and waits to 40, 4 at 40 waits to 60, 5 from 60 to
    // the end.
    expect(minutesIn(played, 'bench', SHORT_CARRIER)).toBe(20 + 20 + 20 + 10);
  });
});

/** Rule 2, by hand. */
describe('a team', () => {
  it('works in its own hours at every step at which it is with the unit, and only there', () => {
    // 8.5 h on Monday from 6:00, the other 1.5 h on Tuesday: 1440 + 450. Then an hour at b, by the clock.
    const played = play(`
scenario: hours
programme: { start: 2027-03-01, arrivals: saturated, quantity: 1 }
calendars: { days: { hours: ["06:00-14:30"] } }
sites: { hall: { crews: { technicians: { headcount: 2, calendar: days } }, stations: { a: {}, b: {} } } }
teams: { power team: { crew: technicians, people: 2, from: one, to: one } }
route: [{ step: one, at: a, work: 10 h }, { step: two, at: b, work: 1 h }]
`);
    expect(shippedAt(played)).toEqual([1950]);
  });

  it('is people of a crew, beside those that a step asks for', () => {
    // Three technicians. 1: a 0-10 with two, b 10-20 with all three. 2 stands at a from 10, a 20-30, and so
    // on.
    const played = play(`
scenario: beside
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { crews: { technicians: 3 }, stations: { a: {}, b: {} } } }
teams: { power team: { crew: technicians, people: 2, from: one, to: two } }
route: [{ step: one, at: a, work: 10 min }, { step: two, at: b, crew: { technicians: 1 }, work: 10 min }]
`);
    expect(shippedAt(played)).toEqual([20, 40, 60]);
    expect(minutesIn(played, 'a', SHORT_CREW)).toBe(10 + 10);
    expect(kept(played)).toEqual({ held: 60, coming: 0, ended: 3 });
    expect(played.seen.crewBusy[0]).toBeCloseTo((3 * 2 * 20 + 3 * 10) / (3 * 60), 12);
  });

  it('and the people of its first step are claimed together: two free of three wanted are not enough', () => {
    // Five technicians, two places. 1 takes three 0-10 and keeps two at b 10-20. 2 wants three: 10-20, b
    // 20-30.
    const played = play(`
scenario: sum
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { crews: { technicians: 5 }, stations: { a: { places: 2 }, b: {} } } }
teams: { power team: { crew: technicians, people: 2, from: one, to: two } }
route: [{ step: one, at: a, crew: { technicians: 1 }, work: 10 min }, { step: two, at: b, work: 10 min }]
`);
    expect(shippedAt(played)).toEqual([20, 30]);
    expect(minutesIn(played, 'a', SHORT_CREW)).toBe(10);
    expect(played.seen.crewBusy[0]).toBeCloseTo((2 * 3 * 10 + 2 * 2 * 10) / (5 * 30), 12);
  });

  it('mends what it finds without being asked for again', () => {
    // 1: a 0-10, repair to 15 (the test fails always, sample 1 in 1): the team is there although the place
    // holds no crew of its own.
    const played = play(`
scenario: repair
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { crews: { technicians: 2 }, stations: { a: { places: 2 } } } }
teams: { power team: { crew: technicians, people: 2, from: one, to: one } }
route: [{ step: one, at: a, work: 10 min, fails: { chance: 100 %, repair: 5 min } }]
`);
    expect(shippedAt(played)).toEqual([15, 30]);
  });
});

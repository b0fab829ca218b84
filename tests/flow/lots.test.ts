import { describe, expect, it } from 'vitest';
import { play, shippedAt, visits } from './run-yaml.js';

/** Rule 5, by hand: a bake of 60 min, units every so many minutes from 0 on. */
const oven = (every: number, lot: string, quantity: number): string => `
scenario: oven
programme: { start: 2027-03-01, rate: { per day: ${1440 / every} }, quantity: ${quantity} }
sites: { hall: { stations: { oven: { places: 3, buffer: unlimited, lot: ${lot} } } } }
route: [{ step: bake, at: oven, process: 60 min }]
`;

describe('a lot', () => {
  it('starts when it has the most', () => {
    const played = play(oven(10, '{ least: 2, most: 3, longest wait: 30 min }', 6));
    expect(shippedAt(played)).toEqual([80, 80, 80, 140, 140, 140]);
    expect(visits(played, 'bake')).toBe(6);
  });

  it('starts with fewer when its first has waited the longest wait and the least are there', () => {
    expect(shippedAt(play(oven(20, '{ least: 2, most: 3, longest wait: 30 min }', 5)))).toEqual([90, 90, 150, 150, 150]);
  });

  it('waits for the least beyond the longest wait', () => {
    // Unit 1 at 0, unit 2 at 50: due at 30, starts at 50.
    expect(shippedAt(play(oven(50, '{ least: 2, most: 3, longest wait: 30 min }', 2)))).toEqual([110, 110]);
  });

  it('starts with the least where no wait is given, and with what it has when nothing more can come', () => {
    expect(shippedAt(play(oven(20, '{ least: 2, most: 3 }', 5)))).toEqual([80, 80, 140, 140, 200]);
  });

  it('takes units of one step only', () => {
    // Lot of bake 1 with units 1 and 2, 10-70; unit 3 gathers for bake 1 and is not joined by 1 and 2, who come for bake 2 at 75.
    // Nothing more can come: 3 goes alone 75-135, 1 and 2 135-195, 3 again 195-255.
    const played = play(`
scenario: two bakes
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 3 }
sites: { hall: { stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 } }, booth: { places: 2 } } } }
route:
  - { step: bake 1, at: oven, process: 60 min }
  - { step: paint, at: booth, work: 5 min }
  - { step: bake 2, at: oven, process: 60 min }
`);
    expect(shippedAt(played)).toEqual([195, 195, 255]);
  });

  it('that fills up before its wait is over leaves the wait of the next lot as it should be', () => {
    // Units 1 and 2 at 0 and 10, full: 10-20, while the wait of unit 1 would be over at 100. Unit 3 gathers at 20 (due 120), as does
    // unit 4 at 30: full, 30-40. Unit 5 at 40: due at 140; unit 6 comes only at 1440: nobody else is there, the lot goes at 140.
    const played = play(`
scenario: short bakes
programme: { start: 2027-03-01, rate: [{ from: 2027-03-01, per day: 5 }, { from: 2027-03-02, per day: 1 }], quantity: 6 }
calendars: { early: { hours: ["00:00-00:50"], on: every day } }
sites: { hall: { calendar: early, stations: { gate: {}, oven: { places: 2, buffer: unlimited, unattended: true, lot: { least: 1, most: 2, longest wait: 100 min } } } } }
route:
  - { step: hand over, at: gate }
  - { step: bake, at: oven, process: 10 min }
`);
    expect(shippedAt(played)).toEqual([20, 20, 40, 40, 150, 1550]);
  });
});

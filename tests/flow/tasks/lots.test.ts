import { describe, expect, it } from 'vitest';
import { SHORT_CREW, STARVED, UNATTENDED } from '../../../src/flow/floor/states.js';
import { minutesIn, play, shippedAt, visits } from '../run-yaml.js';

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
    expect(shippedAt(play(oven(20, '{ least: 2, most: 3, longest wait: 30 min }', 5)))).toEqual([
      90, 90, 150, 150, 150,
    ]);
  });

  it('waits for the least beyond the longest wait', () => {
    // Unit 1 at 0, unit 2 at 50: due at 30, starts at 50.
    expect(shippedAt(play(oven(50, '{ least: 2, most: 3, longest wait: 30 min }', 2)))).toEqual([110, 110]);
  });

  it('starts with the least where no wait is given, and with what it has when nothing more can come', () => {
    expect(shippedAt(play(oven(20, '{ least: 2, most: 3 }', 5)))).toEqual([80, 80, 140, 140, 200]);
  });

  it('takes units of one step only', () => {
    // Lot of bake 1 with units 1 and 2, 10-70; unit 3 gathers for bake 1 and is not joined by 1 and 2, who
    // come for bake 2 at 75. Nothing more can come: 3 goes alone 75-135, 1 and 2 135-195, 3 again 195-255.
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
    // Units 1 and 2 at 0 and 10, full: 10-20, while the wait of unit 1 would be over at 100. Unit 3 gathers
    // at 20 (due 120), as does unit 4 at 30: full, 30-40. Unit 5 at 40: due at 140; unit 6 comes only at
    // 1440: nobody else is there, the lot goes at 140.
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

  it('is starved of units while it gathers', () => {
    // Three places: 0-20 gathering or empty, 20-80 in the bake.
    const played = play(oven(10, '{ least: 2, most: 3, longest wait: 30 min }', 3));
    expect([minutesIn(played, 'oven', STARVED), minutesIn(played, 'oven', UNATTENDED)]).toEqual([60, 180]);
  });

  it('lets units of its step pass those that wait for another', () => {
    // Bake 1 with 1 and 2, 40-100; 3 (80) gathers at 100. 1 and 2 wait from 105 on for bake 2; 4 comes at 120
    // and joins 3: -180. Bake 2: -240, -300.
    const played = play(`
scenario: two bakes
programme: { start: 2027-03-01, rate: { per day: 36 }, quantity: 4 }
sites: { hall: { stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 } }, booth: { places: 2 } } } }
route:
  - { step: bake 1, at: oven, process: 60 min }
  - { step: paint, at: booth, work: 5 min }
  - { step: bake 2, at: oven, process: 60 min }
`);
    expect(shippedAt(played)).toEqual([240, 240, 300, 300]);
  });

  it('keeps the next lot out while a unit of it has no room ahead', () => {
    // Lot 10-70; 1 in the bay 70-170, 2 stands in the oven till then. Lot of 3 and 4 170-230.
    const played = play(`
scenario: one bay after the oven
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 4 }
sites: { hall: { stations: { oven: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 } }, bay: {} } } }
route: [{ step: bake, at: oven, process: 60 min }, { step: fit, at: bay, work: 100 min }]
`);
    expect(shippedAt(played)).toEqual([170, 270, 370, 470]);
  });

  it('has the needs of one unit, and all its places wait for them', () => {
    // One painter: 1 prepared 0-30, 2 -60; then unit 3, -90, while the lot of 1 and 2 waits: 90-110. Nothing
    // can come to 3: 110-130.
    const played = play(`
scenario: one painter
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 3 }
sites: { hall: { crews: { painters: 1 }, stations: { bench: { buffer: unlimited }, booth: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 } } } } }
route: [{ step: prepare, at: bench, crew: { painters: 1 }, work: 30 min }, { step: coat, at: booth, crew: { painters: 1 }, work: 20 min }]
`);
    expect(shippedAt(played)).toEqual([110, 110, 130]);
    expect(minutesIn(played, 'booth', SHORT_CREW)).toBe(60);
  });

  it('has one work time, with the factor of its first unit', () => {
    // Drawn: W R, W R, W R, R R, R. Lots of white first take 20 min, of red first 40: 10-30, -50, -70, -110;
    // nothing can come to 9: -150.
    const played = play(
      `
scenario: colours in lots
programme: { start: 2027-03-01, rate: { per day: 144 }, quantity: 9, options: { colour: { red: 50 %, white: 50 % } } }
sites: { hall: { stations: { booth: { places: 2, buffer: unlimited, lot: { least: 2, most: 2 } } } } }
route: [{ step: coat, at: booth, work: 20 min, work factor: { colour: { red: 2 } } }]
`,
      'c',
    );
    expect(Array.from(played.seen.optionsOf, (value) => 'RW'[value]).join('')).toBe('WRWRWRRRR');
    expect(shippedAt(played)).toEqual([30, 30, 50, 50, 70, 70, 110, 110, 150]);
  });

  it('is judged unit by unit', () => {
    const played = play(`
scenario: bubbles
programme: { arrivals: saturated, quantity: 200 }
defects: { bubble: {} }
sites: { hall: { stations: { oven: { places: 2, lot: { least: 2, most: 2 } } } } }
route: [{ step: bake, at: oven, process: 60 min, creates: { bubble: 50 % }, finds: { bubble: { chance: 99.9999 %, scrap: true } } }]
`);
    const shipped = Array.from(played.seen.shippedAt, (time) => Number(!Number.isNaN(time)));
    const byLot = Array.from({ length: 100 }, (_, lot) => shipped[2 * lot] + shipped[2 * lot + 1]);
    expect(shippedAt(played).filter((time) => time % 60 > 0)).toEqual([]);
    // None, one or both: 25, 50 and 25 of 100 lots expected; four standard deviations are 17 and 20.
    for (const [count, expected, most] of [
      [0, 25, 17],
      [1, 50, 20],
      [2, 25, 17],
    ] as const)
      expect(Math.abs(byLot.filter((units) => units === count).length - expected)).toBeLessThanOrEqual(most);
  });
});

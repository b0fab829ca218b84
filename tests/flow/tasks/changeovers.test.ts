import { describe, expect, it } from 'vitest';
import { CHANGEOVER } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, play, shippedAt } from '../run-yaml.js';

/**
 * Rule 4, by hand. Units are red or white as drawn; each seed stands for the row of colours that it draws.
 */
const SEEDS: Readonly<Record<string, string>> = { WRWRWRRRR: 'c', RRRWRRRRW: 'b' };
const colours = ({ seen }: Played): string => Array.from(seen.optionsOf, (value) => 'RW'[value]).join('');

interface Booth {
  readonly row: string;
  readonly release: string;
  readonly booth: string;
}
function coat({ row, release, booth }: Booth): Played {
  const played = play(
    `
scenario: colours
programme: { start: 2027-03-01, ${release}, quantity: 9, options: { colour: { red: 50 %, white: 50 % } } }
sites: { hall: { stations: { booth: { ${booth} } } } }
route: [{ step: coat, at: booth, work: 20 min }]
`,
    SEEDS[row],
  );
  expect(colours(played)).toBe(row);
  return played;
}
const every10 = 'rate: { per day: 144 }',
  every5 = 'rate: { per day: 288 }',
  saturated = 'arrivals: saturated';

describe('a changeover', () => {
  const table = coat({
    row: 'WRWRWRRRR',
    release: saturated,
    booth:
      'changeover: { on: colour, work: 30 min, from to: { red: { white: 45 min }, white: { red: 0 min } } }',
  });

  it('takes the time of its pair of values, and 0 min is none', () => {
    // Red to white 45, white to red nothing: 20, 40, then 45 + 20, and so on.
    expect(shippedAt(table)).toEqual([20, 40, 105, 125, 190, 210, 230, 250, 270]);
    expect(minutesIn(table, 'booth', CHANGEOVER)).toBe(90);
  });

  it('is counted by its pair, and none where none is made', () => {
    // By value before * 2 + value after: red to white is 0 * 2 + 1.
    expect([...table.seen.changeovers]).toEqual([0, 2, 0, 0]);
    expect([...table.seen.changeoverMinutes]).toEqual([0, 90, 0, 0]);
    expect([...table.seen.taken]).toEqual([9]);
  });

  it('takes the usual work where the pair has no time of its own', () => {
    const played = coat({
      row: 'WRWRWRRRR',
      release: saturated,
      booth: 'changeover: { on: colour, work: 30 min, from to: { red: { white: 45 min } } }',
    });
    expect(shippedAt(played)).toEqual([20, 70, 135, 185, 250, 300, 320, 340, 360]);
    expect(played.model.draws.map(({ name }) => name)).toEqual([
      'option/colour',
      'booth/changeover',
      'booth/changeover red to white',
      'coat/work',
    ]);
  });

  it('is worked in pieces where a break, the end of a shift or an outage lies in it', () => {
    // An hour a day, with a break; white 0-20, then 40 min to red: 10, 25 and, the next day, 5. Coat to
    // 1465; 40 min to white: 5, 25 and, the third day, 5 up to the outage and 5 after it.
    const { seen } = play(
      `
scenario: pieces
programme: { start: 2027-03-01, ${saturated}, quantity: 9, options: { colour: { red: 50 %, white: 50 % } } }
calendars: { days: { hours: ["00:00-01:00"], on: every day, breaks: ["00:30-00:35"] } }
outages: [{ stations: booth, from: 2027-03-03 00:05, to: 2027-03-03 00:08 }]
sites: { hall: { calendar: days, stations: { booth: { changeover: { on: colour, work: 40 min } } } } }
route: [{ step: coat, at: booth, work: 20 min }]
`,
      SEEDS['WRWRWRRRR'],
    );
    expect(seen.stays[0].slice(0, 3).map(({ pieces }) => pieces)).toEqual([
      [],
      [
        [20, 30],
        [35, 60],
        [1440, 1445],
      ],
      [
        [1465, 1470],
        [1475, 1500],
        [2880, 2885],
        [2888, 2893],
      ],
    ]);
    expect(seen.stays[0][2]).toMatchObject({ changeFrom: 1465, changeTo: 2893 });
  });

  it('stands in the stays of the first replication, and of no other', () => {
    const first = { place: 0, changedFrom: -1, changeFrom: NaN, changeTo: NaN, pieces: [] };
    expect(table.seen.stays[0].slice(0, 3)).toEqual([
      { ...first, value: 1, from: 0, to: 20 },
      { ...first, value: 0, from: 20, to: 40 },
      {
        place: 0,
        value: 1,
        from: 40,
        to: 105,
        changedFrom: 0,
        changeFrom: 40,
        changeTo: 85,
        pieces: [[40, 85]],
      },
    ]);
    expect(table.seen.stays[0]).toHaveLength(9);
    expect(
      play(
        `
scenario: second
programme: { arrivals: saturated, quantity: 3, options: { colour: { red: 50 %, white: 50 % } } }
sites: { hall: { stations: { booth: { changeover: { on: colour, work: 1 min } } } } }
route: [{ step: coat, at: booth, work: 1 min }]
`,
        'c',
        2,
      ).seen.stays,
    ).toEqual([]);
  });

  it('at a station with lots is that of the first unit, for all its places', () => {
    // Lots (W R) (W R) (W R) (R R) R, each set up for its first unit: only the fourth is changed over.
    const played = coat({
      row: 'WRWRWRRRR',
      release: saturated,
      booth: 'places: 2, lot: { least: 2, most: 2 }, changeover: { on: colour, work: 30 min }',
    });
    expect(shippedAt(played)).toEqual([20, 20, 40, 40, 60, 60, 110, 110, 130]);
  });
});

describe('a batch', () => {
  const batch = (rule: string, more = 'buffer: unlimited'): string =>
    `${more}, changeover: { on: colour, work: 30 min, batch: ${rule} }`;

  it('goes on with the value of the place up to the most in a row, then takes the first of another', () => {
    // 1 W 0-20. 2 R, alone, 30 + 20: 70. 4 R 90, before 3 W; two in a row: 3 W 140. 5 W 160; 6 R 210, 7 R
    // 230; only red is left: 8 and 9 in order.
    expect(shippedAt(coat({ row: 'WRWRWRRRR', release: every10, booth: batch('{ most: 2 }') }))).toEqual([
      20, 70, 140, 90, 160, 210, 230, 250, 270,
    ]);
  });

  it('lets the first in order go once it has waited the longest wait, and not before', () => {
    // White 4 came at 30 and is first in order from 60 on. At 120 it is not due with 95 min (125): red 8
    // goes, then 4 at 140, and white 9.
    expect(
      shippedAt(
        coat({ row: 'RRRWRRRRW', release: every10, booth: batch('{ most: 9, longest wait: 95 min }') }),
      ),
    ).toEqual([20, 40, 60, 190, 80, 100, 120, 140, 210]);
    // With 90 min it is due at 120 to the minute. At 170 red 8 (70) is due as well, though white 9 waits; and
    // then 9 alone.
    expect(
      shippedAt(
        coat({ row: 'RRRWRRRRW', release: every10, booth: batch('{ most: 9, longest wait: 90 min }') }),
      ),
    ).toEqual([20, 40, 60, 170, 80, 100, 120, 220, 270]);
  });

  it('is counted by place', () => {
    // Place 1: W1 0-20, W3 -40, two in a row: R6 changed over, -90, R7 -110, R9 -130 (only red is left).
    // Place 2: R2 5-25, R4 -45, then W5 changed over, -95; no white waits: R8 changed over, 95-145.
    expect(
      shippedAt(
        coat({
          row: 'WRWRWRRRR',
          release: every5,
          booth: batch('{ most: 2 }', 'places: 2, buffer: unlimited'),
        }),
      ),
    ).toEqual([20, 25, 40, 45, 95, 90, 110, 145, 130]);
  });

  it('chooses among those in the spaces; who stands outside gets the space that comes free', () => {
    // Spaces of 2. W1 20. {R2 W3}: W3 40. {R2 R4}: R2 90. {R4 W5}: R4 110. {W5 R6}: R6 130, three in a row.
    // {W5 R7}: W5 180. {R7 R8}: R7 230 ..
    expect(
      shippedAt(coat({ row: 'WRWRWRRRR', release: saturated, booth: batch('{ most: 3 }', 'buffer: 2') })),
    ).toEqual([20, 90, 40, 110, 180, 130, 230, 250, 270]);
  });

  it('takes units sent back first among those of one value', () => {
    // All are red, so it is the order of rule 1; each unit fails its first test.
    const played = play(`
scenario: back to the booth
programme: { start: 2027-03-01, rate: { per day: 288 }, quantity: 3, options: { colour: { red: 100 %, white: 0 % } } }
sites: { hall: { stations: { booth: { buffer: unlimited, changeover: { on: colour, work: 30 min, batch: { most: 1 } } }, bay: {} } } }
route:
  - { step: coat, at: booth, work: 20 min }
  - { step: test, at: bay, work: 5 min, fails: { chance: 99.9999 %, back to: coat, limit: 1 } }
`);
    // Coat: 1 0-20, 2 -40; 1 is back at 25, ahead of 3: -60; so is 2 at 45: -80; 3 -100, and again 105-125.
    expect(shippedAt(played)).toEqual([65, 85, 130]);
  });
});

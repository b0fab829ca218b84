import { describe, expect, it } from 'vitest';
import { CHANGEOVER, SHORT_CREW } from '../../../src/flow/floor/states.js';
import { enteredAt, minutesIn, play, shippedAt } from '../run-yaml.js';

/** Rule 4, by hand. */
describe('passes', () => {
  it('repeat work and settle, and hold the crew up to the end of the last work', () => {
    // Unit 1: work 0-10, settle -15, work -25, settle -30; the painter is free at 25: unit 2 25-50, settled
    // at 55.
    const played = play(`
scenario: coats
programme: { start: 2027-03-01, rate: { per day: 1440 }, quantity: 2 }
sites: { hall: { crews: { painters: 1 }, stations: { booth: { places: 2 } } } }
route: [{ step: coat, at: booth, crew: { painters: 1 }, passes: { count: 2, work: 10 min, settle: 5 min } }]
`);
    expect(shippedAt(played)).toEqual([30, 55]);
    expect(minutesIn(played, 'booth', SHORT_CREW)).toBe(24);
  });
});

describe('options', () => {
  const quantity = 60;
  const played = play(`
scenario: colours
programme: { arrivals: saturated, quantity: ${quantity}, options: { colour: { red: 50 %, white: 30 %, lime: 20 % } } }
sites: { hall: { stations: { booth: { changeover: { on: colour, work: 15 min } } } } }
route: [{ step: coat, at: booth, work: 20 min, work factor: { colour: { red: 1.5 } } }]
`);
  const colours = Array.from(played.seen.optionsOf);
  const changes = colours.map((colour, i) => Number(i > 0 && colour !== colours[i - 1]));

  it('cost a changeover only where they change from one unit to the next, and none for the first', () => {
    expect(new Set(changes).size).toBe(2);
    expect(minutesIn(played, 'booth', CHANGEOVER)).toBe(15 * changes.reduce((a, b) => a + b, 0));
  });

  it('lengthen the work by their factor, and that alone', () => {
    let clock = 0;
    const expected = colours.map((colour, i) => (clock += 15 * changes[i] + (colour === 0 ? 30 : 20)));
    expect(new Set(colours)).toEqual(new Set([0, 1, 2]));
    expect(shippedAt(played)).toEqual(expected);
  });

  it('send a unit to the place set up for it, if one of several free ones is', () => {
    // A busy first day leaves two places set up; then one unit a day, when both are free. If both were left
    // with one colour, the first unit of the other costs one changeover more; after that each unit finds its
    // place.
    const played = play(`
scenario: two colours, two places
programme:
  start: 2027-03-01
  rate: [{ from: 2027-03-01, per day: 96 }, { from: 2027-03-02, per day: 1 }]
  quantity: 126
  options: { colour: { red: 50 %, white: 50 % } }
sites: { hall: { stations: { booth: { places: 2, buffer: unlimited, changeover: { on: colour, work: 15 min } } } } }
route: [{ step: coat, at: booth, work: 20 min }]
`);
    const entered = enteredAt(played),
      late = shippedAt(played)
        .map((time, i) => time - entered[i])
        .slice(96);
    const colours = played.seen.optionsOf.slice(96);
    expect(colours.filter((colour, i) => i > 0 && colour !== colours[i - 1]).length).toBeGreaterThan(5);
    expect(late.filter((minutes) => minutes > 20.001).length).toBeLessThanOrEqual(1);
  });
});

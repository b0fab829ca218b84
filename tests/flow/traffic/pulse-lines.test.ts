import { describe, expect, it } from 'vitest';
import { BLOCKED, DOWN, STARVED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, play, ringIn, shippedAt } from '../run-yaml.js';

interface Line {
  readonly work: readonly number[];
  readonly takt: number;
  readonly programme?: string;
  readonly keys?: readonly string[];
  readonly after?: string;
  readonly more?: string;
}
/** A line of stations a, b, c .. of fixed works, minutes. */
function line({
  work,
  takt,
  programme = 'arrivals: saturated, quantity: 3',
  keys = [],
  after = '',
  more = '',
}: Line): Played {
  const names = work.map((_, i) => 'abcdef'[i]);
  return play(`
scenario: pulse
programme: { start: 2027-03-01, ${programme} }
calendars: { days: { hours: ["00:00-01:00"], on: every day } }
sites: { hall: { stations: { ${names.map((name, i) => `${name}: { ${keys[i] ?? ''} }`).join(', ')}, after: {} } } }
pulse lines: { final: { stations: [${names.join(', ')}], takt: ${takt} min } }
${more}
route:
${names.map((name, i) => `  - { step: do ${name}, at: ${name}, work: ${work[i]} min }`).join('\n')}
${after}
`);
}
const lineOf = ({ seen }: Played) => seen.pulseLines[0];

/** The pulse line, by hand. */
describe('a pulse line', () => {
  it('moves once per takt, all units together, those that are done earlier wait', () => {
    // Unit 1 enters at 0, moves at 20 and out at 40; unit 2 20-60, unit 3 40-80.
    const played = line({ work: [5, 12], takt: 20 });
    expect(shippedAt(played)).toEqual([40, 60, 80]);
    expect([WORKING, BLOCKED, STARVED].map((state) => minutesIn(played, 'a', state))).toEqual([15, 45, 20]);
    expect([WORKING, BLOCKED, STARVED].map((state) => minutesIn(played, 'b', state))).toEqual([36, 24, 20]);
    expect(lineOf(played)).toEqual({
      moves: 4,
      minutesBetween: 80,
      late: 0,
      lateMinutes: Float64Array.of(0, 0, 0),
    });
  });

  it('moves late when a unit is not done, and charges the station that was the last', () => {
    // With takt 10 and works 5 and 12: moves at 0, 10, then each 12 while b is taken: 22, 34, 46.
    const played = line({ work: [5, 12], takt: 10 });
    expect(shippedAt(played)).toEqual([22, 34, 46]);
    expect(lineOf(played)).toEqual({
      moves: 4,
      minutesBetween: 46,
      late: 3,
      lateMinutes: Float64Array.of(0, 6, 0),
    });
  });

  it('moves exactly at the takt where the work is as long', () => {
    expect(shippedAt(line({ work: [10, 10, 10], takt: 10 }))).toEqual([30, 40, 50]);
  });

  it('goes on with a hole where nobody waits, and takes the next one with a pulse only', () => {
    // Units come at 25, 50, 75. Takt 10: the empty line takes unit 1 at 25, moves at 35 with a hole behind
    // it, and at 45, out. Unit 2 comes at 50, before the takt since 45 is over: in at 55, 65, out at 75, when
    // unit 3 comes in: 85, 95.
    const played = line({ work: [5, 5], takt: 10, programme: 'arrivals: 25 min, quantity: 3' });
    expect(shippedAt(played)).toEqual([45, 75, 95]);
    // Moves with units on the line: two for each.
    expect(lineOf(played)).toMatchObject({ moves: 6, minutesBetween: 60, late: 0 });
  });

  it('makes a unit that comes between two pulses wait for the next', () => {
    // Units at 12, 24, 36, takt 20. Unit 1 in at 12, moves 32, out 52; unit 2 waits from 24 to 32; unit 3
    // from 36 to 52.
    expect(shippedAt(line({ work: [5, 5], takt: 20, programme: 'arrivals: 12 min, quantity: 3' }))).toEqual([
      52, 72, 92,
    ]);
  });

  it('waits for room ahead of its last station, and charges that', () => {
    // Takt 10, works 5; a station after of 25 min without a buffer: unit 1 there 20-45, unit 2 wants it at
    // 30, gets it at 45, to 70; unit 3 70-95.
    const played = line({ work: [5, 5], takt: 10, after: '  - { step: after, at: after, work: 25 min }' });
    expect(shippedAt(played)).toEqual([45, 70, 95]);
    // Moves at 10, 20, 45 (15 late), 70 (15 late).
    expect(lineOf(played)).toEqual({
      moves: 4,
      minutesBetween: 70,
      late: 2,
      lateMinutes: Float64Array.of(0, 0, 30),
    });
  });

  it('counts the takt in the working time of its stations', () => {
    // An hour a day, 00:00 to 01:00. Takt 40 min: moves at 0, 40, then 20 min later in the next day's hour:
    // 1440 + 20.
    const played = line({
      work: [5, 5],
      takt: 40,
      keys: ['calendar: days', 'calendar: days'],
      programme: 'arrivals: saturated, quantity: 1',
    });
    expect(shippedAt(played)).toEqual([1440 + 20]);
    expect(lineOf(played)).toMatchObject({ moves: 2, minutesBetween: 80, late: 0 });
  });

  it('waits for a station that is down, also where its unit is done', () => {
    // b is down by the clock 12-40. Unit 1: a 0-5, moves at 10, b 10-12, 40-43; moves at 43 and out.
    const played = line({
      work: [5, 5],
      takt: 10,
      programme: 'arrivals: saturated, quantity: 1',
      keys: ['', 'failures: { every: 12 min, by: calendar time, repair: 28 min }'],
    });
    expect(shippedAt(played)).toEqual([43]);
    expect(minutesIn(played, 'b', DOWN)).toBe(28);
    const done = line({
      work: [5, 1],
      takt: 10,
      programme: 'arrivals: saturated, quantity: 1',
      keys: ['', 'failures: { every: 12 min, by: calendar time, repair: 28 min }'],
    });
    expect(shippedAt(done)).toEqual([40]);
    expect(lineOf(done).lateMinutes).toEqual(Float64Array.of(0, 20, 0));
  });

  it('does several steps at one station, repairs in place, and does a step over', () => {
    const { seen, ...played } = play(`
scenario: pulse
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { stations: { a: { buffer: 2 }, b: {} } } }
pulse lines: { final: { stations: [a, b], takt: 10 min } }
defects: { gap: {} }
route:
  - { step: one, at: a, work: 4 min, creates: { gap: 100 % } }
  - { step: two, at: a, work: 4 min, finds: { gap: { chance: 100 %, repair: 6 min } } }
  - { step: three, at: b, work: 4 min, fails: { chance: 0.9999999, back to: three, limit: 1 } }
`);
    // a: 4 + 4 + 6 = 14 before it moves; b: twice 4. Moves at 0, 14, 28, 38.
    expect(shippedAt({ seen, ...played })).toEqual([28, 38]);
    expect(seen.pulseLines[0]).toMatchObject({ moves: 3, late: 2, lateMinutes: Float64Array.of(8, 0, 0) });
  });

  it('of one station lets a unit out and the next in, with each pulse', () => {
    expect(shippedAt(line({ work: [4], takt: 10 }))).toEqual([10, 20, 30]);
  });

  it("moves a scrapped unit's hole on", () => {
    // Unit 1 is scrapped at 5 with nothing else on the line; the takt counts from 0, so unit 2 comes in at
    // 10.
    const played = play(`
scenario: scrap
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { stations: { a: {}, b: {} } } }
pulse lines: { final: { stations: [a, b], takt: 10 min } }
route:
  - { step: one, at: a, work: 5 min, fails: { chance: 0.9999999, scrap: true } }
  - { step: two, at: b, work: 5 min }
`);
    expect(played.seen).toMatchObject({ outcome: 'finished', scrapped: 2, endedAt: 15 });
  });

  it('that cannot move is a gridlock, told by who holds it up', () => {
    // Axles embrace each other at 20, one at the mill, one in the yard. Unit 1 had the one in stock; unit 2
    // waits for one at b from 20 on, and the line is told to wait for it.
    const stuck = play(`
scenario: stuck
programme: { arrivals: saturated, quantity: 5 }
sites: { hall: { stations: { a: {}, b: {}, c: {}, yard: {}, mill: {} } } }
pulse lines: { final: { stations: [a, b, c], takt: 10 min } }
feeders:
  axles: { stock: 3, at start: 1, route: [{ step: weld, at: yard, work: 10 min }, { step: drill, at: mill, work: 10 min }, { step: weld again, at: yard, work: 10 min }] }
route:
  - { step: one, at: a, work: 5 min }
  - { step: two, at: b, parts: { axles: 1 }, work: 5 min }
  - { step: three, at: c, work: 5 min }
`);
    expect(stuck.seen).toMatchObject({ outcome: 'gridlock', endedAt: 20 });
    expect(ringIn(stuck)).toEqual([
      'axles 1 in place mill: room yard of 2',
      'axles 2 in place yard: room mill of 1',
    ]);
  });
});

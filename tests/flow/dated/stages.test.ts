import { describe, expect, it } from 'vitest';
import { DOWN, OFF_SHIFT, STARVED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, type Played, shippedAt } from '../run-yaml.js';
import { changed } from './played.js';

const DAY = 1440,
  days = (...each: number[]): number[] => each.map((day) => day * DAY);

/** Day and night without chance, from 2027-03-01; midnight of day d is 1440 d. */
const line = (quantity: number, rest: string): string => `
scenario: a station
programme: { start: 2027-03-01, arrivals: saturated, quantity: ${quantity} }
${rest}`;

describe('what comes on its date', () => {
  it('a place takes a unit from midnight of its day on; before, it is off shift', () => {
    const played = changed(
      line(6, 'sites: { s: { stations: { a: { places: 1 } } } }\nroute: [{ step: do, at: a, work: 1 day }]'),
      'places: 1',
      'places: 2',
      '2027-03-03',
    );
    // One a day up to the end of day 2, when what ends at midnight goes first; then two a day.
    expect(shippedAt(played)).toEqual(days(1, 2, 3, 3, 4, 4));
    expect(minutesIn(played, 'a', OFF_SHIFT)).toBe(2 * DAY);
    expect(minutesIn(played, 'a', WORKING)).toBe(6 * DAY);
  });

  it('a place that comes between two ends takes the unit outside at once', () => {
    const played = changed(
      line(3, 'sites: { s: { stations: { a: { places: 1 } } } }\nroute: [{ step: do, at: a, work: 36 h }]'),
      'places: 1',
      'places: 2',
      '2027-03-02',
    );
    expect(shippedAt(played)).toEqual(days(1.5, 2.5, 3));
  });

  it('work a tenth shorter from a date leaves the work under way as it is', () => {
    const played = changed(
      line(3, 'sites: { s: { stations: { a: {} } } }\nroute: [{ step: do, at: a, work: 20 h }]'),
      'work: 20 h',
      'work: 18 h',
      '2027-03-02',
    );
    expect(shippedAt(played)).toEqual([20 * 60, 40 * 60, 58 * 60]);
  });

  it('a person more lets a second place work, in the middle of the work of the first', () => {
    const played = changed(
      line(
        3,
        `sites: { s: { crews: { hands: 1 }, stations: { a: { places: 2 } } } }
route: [{ step: do, at: a, crew: { hands: 1 }, work: 18 h }]`,
      ),
      'hands: 1 }, stations',
      'hands: 2 }, stations',
      '2027-03-02',
    );
    // The second begins at 18 h, the third on day 1, ahead of its end at 36 h.
    expect(shippedAt(played)).toEqual([18 * 60, 36 * 60, 42 * 60]);
    // 24 h of one and 18 h of two people.
    expect(played.seen.crewTime.usual[0]).toBe(60 * (24 + 36));
    expect(played.seen.crewBusy[0]).toBeCloseTo(54 / 60, 12);
  });

  it('a person fewer stops the work that was asked for last, which goes on when there is somebody', () => {
    const played = changed(
      line(
        2,
        `sites: { s: { crews: { hands: 2 }, stations: { a: { places: 2 } } } }
route: [{ step: do, at: a, crew: { hands: 1 }, work: 36 h }]`,
      ),
      'hands: 2 }, stations',
      'hands: 1 }, stations',
      '2027-03-02',
    );
    expect(shippedAt(played)).toEqual([36 * 60, 48 * 60]);
  });

  it('a space lets the unit go that had no room, on its day', () => {
    const played = changed(
      line(
        3,
        `sites: { s: { stations: { a: {}, b: { buffer: 0 } } } }
route: [{ step: first, at: a, work: 6 h }, { step: second, at: b, work: 40 h }]`,
      ),
      'buffer: 0',
      'buffer: 1',
      '2027-03-02',
    );
    // Unit 2 is done at 12 h and stands at a; on day 1 it goes, and unit 3 is done at 30 h.
    expect(shippedAt(played)).toEqual([46 * 60, 86 * 60, 126 * 60]);
    expect(played.seen.enteredAt[2]).toBe(24 * 60);
  });

  it('other hours count from their date, for work under way as well', () => {
    const played = changed(
      `calendars: { usual: { hours: ["06:00-14:00"], on: Mon-Sun } }
${line(2, 'sites: { s: { calendar: usual, stations: { a: {} } } }\nroute: [{ step: do, at: a, work: 20 h }]')}`,
      '"06:00-14:00"',
      '"06:00-20:00"',
      '2027-03-03',
    );
    // 8 h, 8 h and 4 of the 14 hours of day 2; then 10 more of it and 10 of day 3.
    expect(shippedAt(played)).toEqual([(48 + 10) * 60, (72 + 16) * 60]);
  });

  it('a crew by shift keeps in a night over the date the people with whom it began', () => {
    const played = changed(
      `calendars: { nights: { hours: ["22:00-06:00"], on: Mon-Sun } }
${line(
  6,
  `sites: { s: { calendar: nights, crews: { hands: { headcount: 1, absence: 0 %, hand over: wait } },
  stations: { a: { places: 2 } } } }
route: [{ step: do, at: a, crew: { hands: 1 }, work: 4 h }]`,
)}`,
      'headcount: 1',
      'headcount: 2',
      '2027-03-02',
    );
    // The end of a night, up to 6 h, and the night of 22 h to 30 h with one; that from 46 h on with two people.
    expect(shippedAt(played)).toEqual([4, 24, 28, 48, 50, 52].map((hour) => hour * 60));
  });

  it('people are missing by the chance of their shift', () => {
    const played = changed(
      `calendars: { usual: { hours: ["06:00-14:00"], on: Mon-Sun } }
${line(
  2,
  `sites: { s: { calendar: usual, crews: { hands: { headcount: 1, absence: 99.99999 % } }, stations: { a: {} } } }
route: [{ step: do, at: a, crew: { hands: 1 }, work: 8 h }]`,
)}`,
      '99.99999 %',
      '0.00001 %',
      '2027-03-03',
    );
    expect(shippedAt(played)).toEqual([48 + 14, 72 + 14].map((hour) => hour * 60));
  });

  it('a truck more drives from its day on, and counts for its time', () => {
    const played = changed(
      line(
        4,
        `sites: { s: { stations: { a: {} } }, t: { stations: { b: { buffer: unlimited } } } }
lanes: { road: { from: s, to: t, trucks: 1, capacity: 1, drive: 20 h, return: 20 h, leaves: when full } }
route: [{ step: do, at: a, work: 1 min }, { lane: road }, { step: end, at: b, work: 1 min }]`,
      ),
      'trucks: 1',
      'trucks: 2',
      '2027-03-02',
    );
    // The first leaves at 1 min and again at 40 h 1; the second at 24 h and at 64 h.
    expect(shippedAt(played)).toEqual([20 * 60 + 2, 44 * 60 + 1, 60 * 60 + 2, 84 * 60 + 1]);
    const { truckBusy, truckFree } = played.seen.lanes;
    expect(truckBusy[0] + truckFree[0]).toBeCloseTo(1, 12);
  });

  it('a carrier more is claimed from its day on', () => {
    const played = changed(
      line(
        3,
        `sites: { s: { stations: { a: { places: 3 } } } }
carriers: { dollies: { count: 1, from: do, to: do, return: 30 min } }
route: [{ step: do, at: a, work: 20 h }]`,
      ),
      'count: 1',
      'count: 2',
      '2027-03-02',
    );
    // Unit 2 has the first at 20:30, unit 3 the new one on day 1.
    expect(shippedAt(played)).toEqual([20 * 60, 40.5 * 60, 44 * 60]);
    // Of 44 h of one and 20 h of the other all but 3 h, from the return of the first on.
    expect(played.seen.utilisation[1]).toBeCloseTo(1 - 3 / 64, 12);
  });

  it('departures go by the timetable of their day', () => {
    const played = changed(
      line(
        3,
        `sites: { s: { stations: { a: {} } }, t: { stations: { b: { buffer: unlimited } } } }
lanes: { road: { from: s, to: t, trucks: 3, capacity: 1, drive: 1 h, leaves: { at: ["08:00"] } } }
route: [{ step: do, at: a, work: 11 h }, { lane: road }, { step: end, at: b, work: 1 h }]`,
      ),
      '["08:00"]',
      '["06:00", "12:00"]',
      '2027-03-02',
    );
    // Two leave at 06:00 of day 1, the third, done at 09:00, at noon.
    expect(shippedAt(played)).toEqual([32, 33, 38].map((hour) => hour * 60));
  });

  it('a rule of departure changes under a unit that waits by the old one', () => {
    const played = changed(
      line(
        1,
        `sites: { s: { stations: { a: {} } }, t: { stations: { b: {} } } }
lanes: { road: { from: s, to: t, trucks: 1, capacity: 2, drive: 1 h, leaves: { when full or after: 50 h } } }
route: [{ step: do, at: a, work: 1 h }, { lane: road }, { step: end, at: b, work: 1 h }]`,
      ),
      'after: 50 h',
      'after: 30 h',
      '2027-03-02',
    );
    expect(shippedAt(played)).toEqual([33 * 60]);
  });

  it('deliveries by plan go by the plan of their day, and a higher level orders at once', () => {
    const plan = changed(
      line(
        3,
        `sites: { s: { stations: { a: {} } } }
supplies: { bolts: { site: s, deliveries: { lot: 1, every: 2 days } } }
route: [{ step: do, at: a, parts: { bolts: 1 }, work: 1 h }]`,
      ),
      'every: 2 days',
      'every: 1 days',
      '2027-03-02',
    );
    expect(shippedAt(plan)).toEqual([60, 25 * 60, 49 * 60]);
    const ordered = changed(
      line(
        4,
        `sites: { s: { stations: { a: {} } } }
supplies: { bolts: { site: s, at start: 1, reorder: { level: 0, lot: 1, lead time: 30 h } } }
route: [{ step: do, at: a, parts: { bolts: 1 }, work: 1 h }]`,
      ),
      'level: 0',
      'level: 1',
      '2027-03-02',
    );
    // Ordered at 0 h and 1 h for units 2 and 3, and one more on day 1 for unit 4, which else would be at 31 h.
    expect(shippedAt(ordered)).toEqual([1, 31, 32, 55].map((hour) => hour * 60));
  });

  it('a feeder with a higher stock, lots, passes and a takt go by what holds on the day', () => {
    const fed = changed(
      line(
        2,
        `sites: { s: { stations: { a: {}, bench: { places: 2 } } } }
feeders: { axles: { stock: 1, route: [{ step: build, at: bench, work: 20 h }] } }
route: [{ step: do, at: a, parts: { axles: 1 }, work: 1 h }]`,
      ),
      'stock: 1',
      'stock: 2',
      '2027-03-02',
    );
    expect(shippedAt(fed)).toEqual([21 * 60, 41 * 60]);
    const baked = changed(
      line(
        5,
        `sites: { s: { stations: { oven: { places: 3, lot: { least: 2, most: 2 } } } } }
route: [{ step: bake, at: oven, process: 20 h }]`,
      ),
      'least: 2, most: 2',
      'least: 3, most: 3',
      '2027-03-02',
    );
    expect(shippedAt(baked)).toEqual([20, 20, 40, 40, 60].map((hour) => hour * 60));
    const passed = changed(
      line(
        2,
        `sites: { s: { stations: { a: {} } } }
route: [{ step: coat, at: a, passes: { count: 3, work: 10 h, settle: 0 min } }]`,
      ),
      'count: 3',
      'count: 2',
      '2027-03-02',
    );
    // Unit 1 is in its third pass on day 1.
    expect(shippedAt(passed)).toEqual([30, 50].map((hour) => hour * 60));
    const pulsed = changed(
      line(
        4,
        `sites: { s: { stations: { a: {} } } }
pulse lines: { line: { stations: [a], takt: 20 h } }
route: [{ step: do, at: a, work: 1 h }]`,
      ),
      'takt: 20 h',
      'takt: 10 h',
      '2027-03-02',
    );
    // The takt that is running at midnight, up to 40 h, runs out.
    expect(shippedAt(pulsed)).toEqual([20, 40, 50, 60].map((hour) => hour * 60));
  });

  it('a chance is asked with what holds when it is asked', () => {
    const found = changed(
      line(
        4,
        `defects: { dent: {} }
sites: { s: { stations: { a: {}, b: { buffer: unlimited } } } }
route:
  - { step: do, at: a, work: 10 h, creates: { dent: 1 % } }
  - { step: look, at: b, work: 1 h, finds: { dent: { chance: 100 %, repair: 2 h } } }`,
      ),
      'dent: 1 %',
      'dent: 99.99999 %',
      '2027-03-02',
    );
    // Units 1 and 2 are done at 10 h and 20 h, units 3 and 4 at 30 h and 40 h.
    expect(shippedAt(found)).toEqual([11, 21, 33, 43].map((hour) => hour * 60));
  });

  it('the equipment of a place that comes has not run before, and is down in an outage', () => {
    const played = changed(
      line(
        6,
        `sites: { s: { stations: { a: { places: 1, failures: [{ every: 30 h, repair: 10 h }] } } } }
route: [{ step: do, at: a, work: 20 h }]`,
      ),
      'places: 1',
      'places: 2',
      '2027-03-02',
    );
    // The first is down at 30 h and at 70 h, the second, which runs from 24 h on, at 54 h.
    expect(shippedAt(played)).toEqual([20, 50, 44, 74, 70, 100].map((hour) => hour * 60));
    expect(played.seen.failures.count[0]).toBe(3);
    const closed = changed(
      line(
        2,
        `sites: { s: { stations: { a: { places: 1 } } } }
outages: [{ stations: a, from: 2027-03-01 12:00, to: 2027-03-02 12:00 }]
route: [{ step: do, at: a, work: 20 h }]`,
      ),
      'places: 1',
      'places: 2',
      '2027-03-02',
    );
    expect(shippedAt(closed)).toEqual([44, 56].map((hour) => hour * 60));
    expect(minutesIn(closed, 'a', DOWN)).toBe(36 * 60);
    expect(minutesIn(closed, 'a', STARVED)).toBe(12 * 60);
  });
});

/** Two units that stand in each other's way from 2 h on, until midnight of day 2. */
const stuck = (stations: string, quantity = 2): Played =>
  changed(
    line(
      quantity,
      `sites: { s: { stations: { a: {}, b: {} } } }
route: [${['a', 'b', 'a', 'b'].map((at, i) => `{ step: do ${i}, at: ${at}, work: 1 h }`).join(', ')}]`,
    ),
    'a: {}, b: {}',
    stations,
    '2027-03-03',
  );

describe('nothing moves before a change', () => {
  it('a standstill that a change ends is no gridlock', () => {
    const { seen } = stuck('a: { places: 2 }, b: {}');
    expect(seen.outcome).toBe('finished');
    expect([...seen.shippedAt]).toEqual([50 * 60, 51 * 60]);
  });

  it('one that no change ends is one from the last change on', () => {
    const { seen } = stuck('a: {}, b: { buffer: 1 }', 3);
    expect(seen.outcome).toBe('gridlock');
    expect(seen.endedAt).toBeGreaterThanOrEqual(2 * DAY);
    expect(seen.standstill.ring.map(({ number }) => number)).not.toEqual([]);
  });

  it('loads and lots go with what they have, and the run ends when all is out', () => {
    const played = changed(
      line(
        3,
        `sites: { s: { stations: { a: {} } }, t: { stations: { b: { buffer: unlimited } } } }
lanes: { road: { from: s, to: t, trucks: 1, capacity: 2, drive: 1 h, leaves: when full } }
route: [{ step: do, at: a, work: 1 h }, { lane: road }, { step: end, at: b, work: 1 h }]`,
      ),
      'drive: 1 h',
      'drive: 2 h',
      '2027-03-09',
    );
    expect(played.seen.outcome).toBe('finished');
    expect(shippedAt(played)).toEqual([4, 5, 7].map((hour) => hour * 60));
  });
});

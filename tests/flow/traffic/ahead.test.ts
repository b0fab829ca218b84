import { describe, expect, it } from 'vitest';
import { BLOCKED, SHORT_CARRIER, SHORT_PARTS, STARVED, WORKING } from '../../../src/flow/floor/states.js';
import { minutesIn, play, ringIn, shippedAt } from '../run-yaml.js';

/** Rule 2, a step that waits for its parts in the buffer, by hand. */
describe('a unit that waits for its parts ahead of the station', () => {
  // Each second unit takes a loom, which there are at 45 and 90; the others are only finished.
  const bay = (buffer: number, wait: string): string => `
scenario: bay
programme: { arrivals: saturated, quantity: 4 }
sites: { hall: { stations: { yard: {}, loom bench: {}, bay: { buffer: ${buffer} } } } }
feeders: { looms: { stock: 1, route: [{ step: bind, at: loom bench, work: 45 min }] } }
route:
  - { step: come, at: yard, work: 10 min }
  - { step: fit loom, at: bay, sample: 1 in 2, parts: { looms: 1 }, wait for parts: ${wait}, work: 10 min }
  - { step: finish, at: bay, work: 5 min }
`;

  it('lets others pass, and the free place is short of parts', () => {
    // Unit 1 10-15; unit 2 waits from 20; unit 3 passes 30-35; unit 2 45-60; unit 4 waits from 40 and 90-105.
    const played = play(bay(2, 'in buffer'));
    expect(shippedAt(played)).toEqual([15, 60, 35, 105]);
    expect(minutesIn(played, 'bay', SHORT_PARTS)).toBe(10 + 10 + 30);
    expect(minutesIn(played, 'bay', STARVED)).toBe(10 + 5);
    expect(minutesIn(played, 'bay', WORKING)).toBe(4 * 5 + 2 * 10);
  });

  it('has the place while it waits there, as by default', () => {
    // Unit 3 comes to the bay at 60, unit 4 at 65.
    const played = play(bay(2, 'in place'));
    expect(shippedAt(played)).toEqual([15, 60, 65, 105]);
    expect(minutesIn(played, 'bay', SHORT_PARTS)).toBe(25 + 25);
  });

  it('keeps the place that it comes from where there is no space', () => {
    // Unit 2 is in the yard 10-45, unit 3 45-60 (it goes on when unit 2 is out), unit 4 60-90.
    const played = play(bay(0, 'in buffer'));
    expect(shippedAt(played)).toEqual([15, 60, 65, 105]);
    expect(minutesIn(played, 'yard', BLOCKED)).toBe(25 + 5 + 20);
    expect(minutesIn(played, 'bay', SHORT_PARTS)).toBe(25 + 20);
  });

  it('is passed also by one that found no space', () => {
    // One space: unit 2 has it from 20, unit 4 stands in the yard from 40. Unit 3 passed 30-35.
    expect(shippedAt(play(bay(1, 'in buffer')))).toEqual([15, 60, 35, 105]);
  });

  it('goes ahead of one that comes at the instant at which its part is there', () => {
    // A loom at 30 and 60: unit 2 30-45; unit 3 comes at 30 too and is finished 45-50.
    const played = play(bay(2, 'in buffer').replace('work: 45 min', 'work: 30 min'));
    expect(shippedAt(played)).toEqual([15, 45, 50, 75]);
  });

  it('waits for a carrier, a place of its own short of it for each one', () => {
    // One cart, 20 min to come back: unit 1 10-20, unit 2 from 40, unit 3 (there at 30) from 70.
    const played = play(`
scenario: carts
programme: { arrivals: saturated, quantity: 3 }
sites: { hall: { stations: { yard: {}, bay: { places: 2, buffer: 3 } } } }
carriers: { carts: { count: 1, from: fit, to: fit, return: 20 min } }
route:
  - { step: come, at: yard, work: 10 min }
  - { step: fit, at: bay, wait for parts: in buffer, work: 10 min }
`);
    expect(shippedAt(played)).toEqual([20, 50, 80]);
    expect(minutesIn(played, 'bay', SHORT_CARRIER)).toBe(20 + 40);
  });

  it('waits for its own parts', () => {
    // Doors come off at 10 and are back at 40. Meanwhile nobody stands at the line.
    const played = play(`
scenario: doors
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { bay: {}, door bench: {}, line: { buffer: 1 } } } }
feeders: { doors: { own: true, route: [{ step: trim, at: door bench, work: 30 min }] } }
route:
  - { step: doors off, at: bay, work: 10 min, takes off: doors }
  - { step: doors on, at: line, wait for parts: in buffer, parts: { doors: own }, work: 10 min }
`);
    expect(shippedAt(played)).toEqual([50]);
    expect(played.seen.bufferMean.length).toBeGreaterThan(0);
    expect(minutesIn(played, 'line', SHORT_PARTS)).toBe(30);
  });

  it('claims its crew only in the place', () => {
    // The fitter does the other job 20-50 though unit 2 waits for a loom from 20 on; it has both from 50.
    const played = play(`
scenario: crew
programme: { arrivals: saturated, quantity: 2 }
sites: { hall: { crews: { fitters: 1 }, stations: { yard: {}, loom bench: {}, bay: { buffer: 2 }, job bench: { buffer: 1 } } } }
feeders:
  looms: { stock: 1, route: [{ step: bind, at: loom bench, work: 45 min }] }
  jobs: { stock: 1, at start: 1, route: [{ step: job, at: job bench, crew: { fitters: 1 }, work: 30 min }] }
route:
  - { step: come, at: yard, work: 10 min }
  - { step: fetch, at: yard, parts: { jobs: 1 }, work: 10 min }
  - { step: fit loom, at: bay, parts: { looms: 1 }, wait for parts: in buffer, crew: { fitters: 1 }, work: 10 min }
`);
    // Unit 1 asks at 20; the job begun at 10 goes on to 40; loom at 45: 45-55. The next job is begun at 40.
    expect(shippedAt(played)[0]).toBe(80);
  });

  it('is told when it can never go on', () => {
    const played = play(`
scenario: no more bolts
programme: { start: 2027-03-01, arrivals: 10 min, quantity: 5 }
sites: { hall: { stations: { bay: { buffer: 9 } } } }
supplies: { bolts: { site: hall, at start: 3, deliveries: { lot: 1, every: 7 days, from: 2027-03-01, to: 2027-03-01 } } }
route: [{ step: fit, at: bay, wait for parts: in buffer, parts: { bolts: 3 }, work: 5 min }]
`);
    expect(played.seen).toMatchObject({ outcome: 'gridlock', minutes: 20, shipped: 1 });
    expect(ringIn(played)).toEqual(['unit 2 in space bay: supply bolts of nobody']);
  });
});

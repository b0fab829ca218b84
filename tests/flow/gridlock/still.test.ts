import { describe, expect, it } from 'vitest';
import { play, ringIn } from '../run-yaml.js';

/** Rule 16, by hand. */
describe('gridlock', () => {
  it('is found when two units each want the place of the other, and says so', () => {
    // Unit 1: lathe 0-10, mill 10-20; unit 2: lathe 10-20. At 20 each wants what the other has.
    const stuck = play(`
scenario: embrace
programme: { arrivals: saturated, quantity: 5 }
sites: { hall: { stations: { lathe: {}, mill: {} } } }
route:
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`);
    expect(stuck.seen).toMatchObject({ outcome: 'gridlock', endedAt: 20, shipped: 0, entered: 2 });
    expect(ringIn(stuck)).toEqual([
      'unit 1 in place mill: room lathe of 2',
      'unit 2 in place lathe: room mill of 1',
    ]);
    expect(stuck.seen.standstill.behind).toBe(1);
  });

  it('is not claimed where a buffer lets them pass', () => {
    const { seen } = play(`
scenario: no embrace
programme: { arrivals: saturated, quantity: 5 }
sites: { hall: { stations: { lathe: { buffer: unlimited, rework buffer: unlimited }, mill: { buffer: unlimited } } } }
route:
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`);
    expect(seen).toMatchObject({ outcome: 'finished', shipped: 5, standstill: { ring: [], behind: 0 } });
  });

  it('names parts that cannot come, because their bench waits for a unit that waits for them', () => {
    // The bench builds axles and is also the unit's next place; unit 1 stands on it and waits for the axle
    // that wants it.
    const stuck = play(`
scenario: parts
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { gate: {}, bench: {} } } }
feeders: { axles: { stock: 1, route: [{ step: fetch, at: gate, work: 5 min }, { step: build, at: bench, work: 30 min }] } }
route:
  - { step: fit, at: bench, parts: { axles: 1 }, work: 10 min }
`);
    expect(stuck.seen).toMatchObject({ outcome: 'gridlock', endedAt: 5 });
    expect(ringIn(stuck)).toEqual([
      'axles 1 in place gate: room bench of 1',
      'unit 1 in place bench: parts axles of 1',
    ]);
  });

  it('is not claimed of one who waits for a shift behind the end of the run', () => {
    // The unit comes at 13:00 and wants two people. There is one until midnight, when the run ends; the next
    // morning there are two.
    const { seen } = play(`
scenario: next morning
programme: { start: 2027-03-01, arrivals: 13 h, quantity: 1, until: 2027-03-02 }
calendars: { two: { hours: ["00:00-12:00", "12:00-24:00"] } }
sites: { hall: { crews: { hands: { headcount: [2, 1], calendar: two } }, stations: { bench: {} } } }
route: [{ step: lift, at: bench, crew: { hands: 2 }, work: 1 h }]
`);
    expect(seen).toMatchObject({ outcome: 'ended', endedAt: 1440, standstill: { ring: [] } });
  });
});

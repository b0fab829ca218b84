import { describe, expect, it } from 'vitest';
import { play } from './run-yaml.js';

/** Rule 16, by hand. */
describe('gridlock', () => {
  it('is found when two units each want the place of the other, and says so', () => {
    // Unit 1: lathe 0-10, mill 10-20; unit 2: lathe 10-20. At 20 each wants what the other has.
    const { seen } = play(`
scenario: embrace
programme: { arrivals: saturated, quantity: 5 }
sites: { hall: { stations: { lathe: {}, mill: {} } } }
route:
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`);
    expect(seen).toMatchObject({ outcome: 'gridlock', endedAt: 20, shipped: 0, entered: 2 });
    expect(seen.stuck).toEqual([
      { number: 1, route: 'unit', where: 'mill', waitsFor: 'lathe', kind: 'room' },
      { number: 2, route: 'unit', where: 'lathe', waitsFor: 'mill', kind: 'room' },
      { number: 3, route: 'unit', where: 'outside', waitsFor: 'lathe', kind: 'room' },
    ]);
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
    expect(seen).toMatchObject({ outcome: 'finished', shipped: 5, stuck: [] });
  });

  it('names parts that cannot come, because their bench waits for a unit that waits for them', () => {
    // The bench builds axles and is also the unit's next place; unit 1 stands on it and waits for the axle
    // that wants it.
    const { seen } = play(`
scenario: parts
programme: { arrivals: saturated, quantity: 1 }
sites: { hall: { stations: { gate: {}, bench: {} } } }
feeders: { axles: { stock: 1, route: [{ step: fetch, at: gate, work: 5 min }, { step: build, at: bench, work: 30 min }] } }
route:
  - { step: fit, at: bench, parts: { axles: 1 }, work: 10 min }
`);
    expect(seen).toMatchObject({ outcome: 'gridlock', endedAt: 5 });
    expect(seen.stuck).toEqual([
      { number: 1, route: 'axles', where: 'gate', waitsFor: 'bench', kind: 'room' },
      { number: 1, route: 'unit', where: 'bench', waitsFor: 'the needs of step fit', kind: 'parts' },
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import type { Stuck } from '../../../src/flow/gridlock.js';
import { readScenario } from '../../../src/scenario/read.js';
import { whoWaits } from '../../../src/study/answer/gridlock.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

const unit = (
  number: number,
  where: string,
  waitsFor: string,
  kind: Stuck['kind'] = 'room',
  route = 'unit',
): Stuck => ({ number, route, where, waitsFor, kind });

describe('who waits for whom', () => {
  it('is the ring, without those who only wait behind it', () => {
    expect(
      whoWaits(
        [
          unit(1, 'bay', 'booth'),
          unit(2, 'booth', 'oven'),
          unit(3, 'oven', 'booth'),
          unit(4, 'ahead of bay', 'bay'),
        ],
        'unit',
      ),
    ).toBe(
      'unit 2 at booth waits for room at oven, unit 3 at oven waits for room at booth: each waits for the next, and the last for the first',
    );
  });

  it('goes on from a unit short of its own parts to where those stand', () => {
    expect(
      whoWaits(
        [
          unit(5, 'door station', 'the needs of step fit doors', 'parts'),
          unit(5, 'ferry', 'bank', 'room', 'doors'),
          unit(6, 'bank', 'door station'),
        ],
        'unit',
      ),
    ).toBe(
      'unit 5 at door station waits for parts (the needs of step fit doors), doors 5 at ferry waits for room at bank, unit 6 at bank waits for room at door station: each waits for the next, and the last for the first',
    );
  });

  it('is the first few where there is no ring', () => {
    const all = [1, 2, 3, 4, 5, 6].map((number) =>
      unit(number, number === 1 ? 'line' : 'ahead of line', 'line', number === 1 ? 'crew' : 'room'),
    );
    expect(whoWaits(all, 'unit')).toBe(
      'unit 1 at line waits for crew (line), unit 2 ahead of line waits for room at line, unit 3 ahead of line waits for room at line, unit 4 ahead of line waits for room at line, and 2 more wait',
    );
  });
});

describe('the finding of a gridlock', () => {
  it('calls units, and their own parts, as the planner does', async () => {
    // RT-1 has the bench and waits for its doors, which want the bench after the stand.
    const { scenario } = readScenario(
      `
scenario: stuck
programme: { arrivals: 1 h, quantity: 1, opening: [{ at: fit, build: RT-1 }] }
sites: { hall: { stations: { bay: {}, bench: {}, stand: {} } } }
feeders: { doors: { own: true, route: [{ step: trim doors, at: stand, work: 10 min }, { step: seal doors, at: bench, work: 1 min }] } }
route:
  - { step: prepare, at: bay, work: 1 min, takes off: doors }
  - { step: fit, at: bench, work: 5 min, parts: { doors: own } }
`,
      'stuck.yaml',
      () => '',
    );
    const { findings } = await simulateStudy({
      scenario: scenario!,
      file: 'stuck.yaml',
      replications: 1,
      seed: '1',
      workers: 1,
    });
    expect(findings.map(({ text }) => text)).toEqual([
      'gridlock, on 2001-01-01 in replication 1: unit RT-1 at bench waits for parts (the needs of step fit), doors RT-1 at stand waits for room at bench: each waits for the next, and the last for the first',
    ]);
  });
});

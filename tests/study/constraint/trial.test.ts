import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

/** Packs come at two a day, four are asked; s and t have time for more. */
const PARTS = `
scenario: parts are short
programme: { start: 2027-04-05, quantity: 200, rate: { per day: 4 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a: { calendar: days, stations: { s: { buffer: 4 }, t: { buffer: 4 } } }
supplies: { packs: { site: a, at start: 5, deliveries: { lot: 10, every: 7 days, from: 2027-04-12 } } }
route:
  - { step: one, at: s, work: { mean: 70 min, cv: 0.3 } }
  - { step: two, at: t, work: { mean: 60 min, cv: 0.3 }, parts: { packs: 1 } }
`;

describe('trials of what stops a build', () => {
  it('try once what arithmetic and the queues both name, so that the level is shared among so many', async () => {
    const { scenario } = readScenario(PARTS, 'parts.yaml', () => '');
    if (scenario === undefined) throw new Error('expected a scenario, got problems');
    const { constraint } = await simulateStudy({
      scenario,
      file: 'parts.yaml',
      replications: 3,
      seed: '1',
      workers: 1,
    });
    expect(constraint).toMatchObject({
      outcome: 'proven',
      culprit: { thing: { kind: 'supply', name: 'packs' } },
    });
    // Of the packs a larger lot, a delivery and more at the start, a place at s and at t, an hour: six trials,
    // 1 - 0.05 / 6 (Bonferroni). Of the packs the best is told.
    expect(constraint?.tried.map(({ gain: { level } }) => level)).toEqual(
      Array.from({ length: 4 }, () => expect.closeTo(1 - 0.05 / 6, 12) as number),
    );
  });
});

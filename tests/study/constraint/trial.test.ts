import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { constraint } from '../../../src/study/constraint/constraint.js';
import { gainsOf } from '../../../src/study/constraint/trial.js';
import { inWeeksJudged, watch } from '../../../src/study/constraint/watch.js';
import { judgeRate } from '../../../src/study/held/rate-held.js';
import { changedTo } from '../../../src/study/reliefs/changes.js';
import { reliefsOf } from '../../../src/study/reliefs/small.js';
import { Replicator, whole } from '../../../src/study/run/replicator.js';
import { planned } from '../../../src/study/sample/planned.js';
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

  it('end after five replications where they cannot name it: run to the end, none of these would have', async () => {
    const { scenario } = readScenario(PARTS, 'parts.yaml', () => '');
    if (scenario === undefined) throw new Error('expected a scenario, got problems');
    const base = changedTo(scenario),
      plan = planned(scenario, base.model),
      replicator = new Replicator({ seed: '1', workers: 1 }),
      seen = await replicator.row({ key: 'base', model: base.model, read: whole }, 1, 12),
      asked = inWeeksJudged(plan, judgeRate(plan, seen, 0.95), { base, replications: 12, level: 0.95 });
    const watched = await watch(asked, replicator);
    // Nothing else is run of the base before a trial needs it.
    expect(watched.observations).toHaveLength(5);
    const { tried, culprit, replications } = await constraint(watched, replicator),
      ended = tried.filter(({ gain }) => gain.n === 5);
    expect([culprit?.thing.name, culprit?.gain.n, replications]).toEqual(['packs', 12, 12]);
    expect(ended.length).toBeGreaterThanOrEqual(2);

    const changes = reliefsOf(scenario)
        .filter(({ text }) => ended.some(({ what }) => what === text))
        .map((relief) => changedTo(relief.change(scenario))),
      inFull = await gainsOf(
        changes,
        { ...asked, base: watched, until: watched.until },
        (all) => all.map(() => true),
        replicator,
      );
    await replicator.close();
    expect(inFull.map(({ n }) => n)).toEqual(ended.map(() => 12));
    for (const { mean } of inFull) expect(mean).toBeLessThan(culprit!.gain.mean / 2);
  });
});

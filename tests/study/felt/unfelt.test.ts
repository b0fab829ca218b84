import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/flow/model/model.js';
import type { Observation } from '../../../src/measure/observe.js';
import { Beside } from '../../../src/study/felt/beside.js';
import { differencesOf } from '../../../src/study/felt/differences.js';
import { unfelt } from '../../../src/study/felt/unfelt.js';
import { Replicator } from '../../../src/study/run/replicator.js';
import { modelOf, play } from '../../flow/run-yaml.js';

/** Invented. Four units, one each hour; the press takes 30 min of two, the bench 70 min of one. */
const YAML = `
scenario: some room
programme: { quantity: 4, arrivals: 60 min }
sites:
  hall:
    crews: { smiths: 2, fitters: 1, clerks: { headcount: 3, absence: 10 %, calendar: days } }
    equipment: { hoist: 1 }
    stations:
      press: { places: 1, buffer: 1 }
      bench: { places: 1, buffer: 0 }
      desk: { places: 9, buffer: 1, failures: { every: 400 h, repair: 1 h } }
calendars: { days: { hours: ["00:00-12:00", "12:00-24:00"], on: every day } }
route:
  - { step: press, at: press, work: 30 min, crew: { smiths: 2 }, equipment: { hoist: 1 } }
  - { step: build, at: bench, work: 70 min, crew: { fitters: 1 } }
  - { step: write, at: desk, work: 1 min, crew: { clerks: 1 } }
`;
const base = modelOf(YAML),
  { seen } = play(YAML);
const changed = (from: string, to: string): Model => {
  expect(YAML).toContain(from);
  return modelOf(YAML.replace(from, to));
};
/** Whether the replication would have gone just so; null: it is not known. */
const leaves = (from: string, to: string): boolean | null =>
  unfelt(base, changed(from, to))?.leaves(seen) ?? null;

describe('what a replication never felt', () => {
  it('is one more of what nobody ever lacked', () => {
    expect(leaves('press: { places: 1', 'press: { places: 2')).toBe(true);
    expect(leaves('press: { places: 1, buffer: 1', 'press: { places: 1, buffer: 2')).toBe(true);
    expect(leaves('smiths: 2', 'smiths: 3')).toBe(true);
    expect(leaves('hoist: 1 }', 'hoist: 2 }')).toBe(true);
  });

  it('is not one more of what units waited for', () => {
    // All but the first unit find the bench taken, and stay in the press.
    expect(leaves('bench: { places: 1', 'bench: { places: 2')).toBe(false);
    expect(leaves('bench: { places: 1, buffer: 0', 'bench: { places: 1, buffer: 1')).toBe(false);
  });

  it('is never told of fewer, of another time that was drawn, or where each has a chance of its own', () => {
    expect(leaves('smiths: 2,', 'smiths: 4,')).toBe(true);
    expect(unfelt(changed('smiths: 2,', 'smiths: 4,'), base)).toBeNull();
    expect(leaves('work: 30 min', 'work: 29 min')).toBe(false);
    expect(leaves('clerks: { headcount: 3', 'clerks: { headcount: 4')).toBeNull();
    expect(leaves('desk: { places: 9', 'desk: { places: 10')).toBeNull();
    // Another thing altogether.
    expect(leaves('step: write', 'step: sign')).toBeNull();
  });

  it('is the same model, and a replication that stands still proves nothing', () => {
    expect(differencesOf(base, modelOf(YAML))).toEqual([]);
    expect(unfelt(base, modelOf(YAML))?.leaves(seen)).toBe(true);
    expect(unfelt(base, modelOf(YAML))?.leaves({ ...seen, outcome: 'gridlock' })).toBe(false);
  });

  it('is paid for: a person who had nothing to do', () => {
    const proof = unfelt(base, changed('smiths: 2', 'smiths: 4')),
      paid = (each: Observation): number => each.crewTime.usual[0];
    expect(paid(proof!.changed(seen))).toBe(2 * paid(seen));
  });
});

it('a change is run only in replications that felt it', async () => {
  const ran: string[] = [];
  const read = (key: string) => (each: Observation) => {
    ran.push(`${key} ${each.replication}`);
    return each.shipped;
  };
  const variant = (key: string, model: Model) => ({ key, model, read: read(key) }),
    members = [
      variant('smith', changed('smiths: 2', 'smiths: 3')),
      variant('bench', changed('bench: { places: 1', 'bench: { places: 2')),
    ],
    beside = new Beside<number>(variant('base', base), members),
    planned: number[] = [],
    replicator = new Replicator({
      seed: 's',
      workers: 1,
      onReplication: (done, of) => planned.push(done, of),
    });
  await beside.run(replicator, 2);
  // What is known is read of the base's own run.
  expect(ran).toEqual(['base 1', 'smith 1', 'base 2', 'smith 2']);
  expect(members.map((member) => beside.knownIn(member, 2))).toEqual([2, 0]);
  ran.length = 0;
  const rows = await replicator.rows(
    members.map((member) => beside.with(member)),
    1,
    3,
  );
  await replicator.close();
  // The third is behind those of the base.
  expect(ran).toEqual(['smith 3', 'bench 1', 'bench 2', 'bench 3']);
  expect(rows).toEqual([
    [4, 4, 4],
    [4, 4, 4],
  ]);
  expect(planned.slice(-2)).toEqual([6, 6]);
});

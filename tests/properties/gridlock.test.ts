import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINISHED, GRIDLOCK, playOn, simulate } from '../../src/flow/engine.js';
import type { Unit } from '../../src/flow/floor/unit.js';
import { Alive } from '../../src/flow/gridlock/alive.js';
import { type Plan, prepare } from '../../src/flow/plan.js';
import { Run } from '../../src/flow/run.js';
import { modelOf } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;

/** Which unit it is and where: what changes if it moves or goes on to anything. */
const state = ({ number, step, place, truck, companionBits, at }: Unit): string =>
  [at, number, step.route.name, step.id, place?.id, place?.phase, truck?.id, companionBits].join(' ');

/**
 * The replication to its end, whoever stands still in it, with a look after every so many instants: who was
 * said to be stuck, since when. Whoever was must be stuck where it was ever after.
 */
function watched(plan: Plan, replication: number, every: number) {
  const run = new Run(plan, 'stands', replication),
    since = new Map<string, number>();
  const check = (): void => {
    const dead = new Set(new Alive(run).dead.map(state));
    for (const [who, time] of since)
      expect(dead, `${who} was said at ${time} never to move again, now ${run.now}`).toContain(who);
    for (const who of dead) if (!since.has(who)) since.set(who, run.now);
  };
  let instants = 0;
  playOn(run, (_, next) => {
    if (instants++ % every === 0) check();
    return next;
  });
  check();
  return { run, since };
}

describe('units that are said to be stuck in any small scenario', () => {
  it(
    'never move again, and the standstill is dated on the moment at which the last of its ring came to stand',
    () => {
      const seen = { finished: 0, whole: 0, earlier: 0 };
      fc.assert(
        fc.property(randomScenario, fc.integer({ min: 1, max: 1_000_000 }), (drawn, replication) => {
          const plan = prepare(modelOf(toYaml(drawn))),
            told = simulate(plan, 'stands', replication);
          const { run, since } = watched(plan, replication, told.outcome === FINISHED ? 11 : 1);
          expect(told.outcome).toBe(run.outcome);
          if (run.outcome === FINISHED) {
            expect(since.size).toBe(0);
            seen.finished++;
            return;
          }
          expect(run.outcome).toBe(GRIDLOCK);
          const members = told.standstill.ring.map(({ number, route }) => `${number} ${route}`),
            ring = new Alive(told).dead.filter(({ number, step }) =>
              members.includes(`${number} ${step.route.name}`),
            );
          expect(ring).toHaveLength(members.length);
          expect(members.length).toBeGreaterThan(0);
          // No later than when nothing at all moves any more, and to the instant.
          expect(told.now).toBeLessThanOrEqual(run.now);
          expect(told.now).toBe(Math.max(...ring.map((unit) => since.get(state(unit)) ?? NaN)));
          seen[told.now < run.now ? 'earlier' : 'whole']++;
        }),
        { seed: Number(process.env.SEED ?? 20270301), numRuns: Number(process.env.RUNS ?? 150) },
      );
      // The drawing is worth something only if some stand still as a whole, and some while others move.
      expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(2);
    },
    SLOW * 10,
  );
});

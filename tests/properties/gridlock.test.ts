import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINISHED, GRIDLOCK, playOn, simulate } from '../../src/flow/engine.js';
import type { Unit } from '../../src/flow/floor/unit.js';
import { Alive } from '../../src/flow/gridlock/alive.js';
import { prepare } from '../../src/flow/plan.js';
import { Run } from '../../src/flow/run.js';
import { modelOf } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;
const RUNS = Number(process.env.STANDSTILL_RUNS ?? 150);

/** Where a unit is, and which one: what changes if it moves or goes on to anything. */
const state = ({ number, step, place, truck, companionBits, at }: Unit): string =>
  [at, number, step.id, place?.id, place?.phase, truck?.id, companionBits].join(' ');

/** The replication to its end, with a look after each instant: since when each unit was said to be stuck. */
function watched(yaml: string, replication: number) {
  const plan = prepare(modelOf(yaml)),
    run = new Run(plan, 'stands', replication),
    since = new Map<string, number>();
  const check = (): void => {
    const dead = new Set(new Alive(run).dead.map(state));
    for (const [who, time] of since)
      expect(dead, `${who} was said at ${time} never to move again, now ${run.now}`).toContain(who);
    for (const who of dead) if (!since.has(who)) since.set(who, run.now);
  };
  playOn(run, (_, next) => {
    check();
    return next;
  });
  check();
  return { plan, run, since };
}

describe('units that are said to be stuck in any small scenario', () => {
  it(
    'never move again, and the standstill is dated on the moment at which the last of its ring came to stand',
    () => {
      const seen = { finished: 0, whole: 0, earlier: 0, open: 0 };
      fc.assert(
        fc.property(randomScenario, fc.integer({ min: 1, max: 1_000_000 }), (drawn, replication) => {
          const yaml = toYaml(drawn),
            { plan, run, since } = watched(yaml, replication),
            told = simulate(plan, 'stands', replication);
          if (run.outcome === FINISHED) {
            expect(told.outcome).toBe(FINISHED);
            expect(since.size).toBe(0);
            seen.finished++;
            return;
          }
          expect(run.outcome).toBe(GRIDLOCK);
          expect(told.outcome).toBe(GRIDLOCK);
          expect(told.now).toBeLessThanOrEqual(run.now);
          expect(told.standstill.ring.length).toBeGreaterThan(0);
          if (since.size === 0) {
            seen.open++;
            return;
          }
          const members = told.standstill.ring.map(({ number, route }) => `${number} ${route}`),
            ring = new Alive(told).dead.filter((unit) =>
              members.includes(`${unit.number} ${unit.step.route.name}`),
            );
          expect(told.now).toBe(Math.max(...ring.map((unit) => since.get(state(unit)) ?? NaN)));
          if (told.now < run.now) seen.earlier++;
          else seen.whole++;
        }),
        { seed: 20270301, numRuns: RUNS },
      );
      console.log(seen);
    },
    SLOW * 10,
  );
});

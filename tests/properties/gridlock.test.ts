import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINISHED, GRIDLOCK, playOn, simulate } from '../../src/flow/engine.js';
import type { Unit } from '../../src/flow/floor/unit.js';
import { Alive } from '../../src/flow/gridlock/alive.js';
import { type Plan, prepare } from '../../src/flow/plan.js';
import { Run } from '../../src/flow/run.js';
import { modelOf } from '../flow/run-yaml.js';
import { crowdedScenario, toCrowdedYaml } from './crowded-scenario.js';
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

/** How it ended: all out, cut off, or still; and whether it was told before nothing at all moved any more. */
type Told = 'finished' | 'ended' | 'whole' | 'earlier';

function judge(yaml: string, replication: number): Told {
  const plan = prepare(modelOf(yaml)),
    told = simulate(plan, 'stands', replication);
  const { run, since } = watched(plan, replication, told.outcome === FINISHED ? 41 : 1),
    units = new Alive(run).dead.filter(({ step }) => step.route.isMain);
  expect(told.outcome).toBe(units.length > 0 ? GRIDLOCK : run.outcome);
  if (told.outcome !== GRIDLOCK) return told.outcome === FINISHED ? 'finished' : 'ended';
  const members = told.standstill.ring.map(({ number, route }) => `${number} ${route}`),
    ring = new Alive(told).dead.filter(({ number, step }) =>
      members.includes(`${number} ${step.route.name}`),
    );
  expect(members.length).toBeGreaterThan(0);
  expect(ring).toHaveLength(members.length);
  // No later than when nothing at all moves any more, and to the instant.
  expect(told.now).toBeLessThanOrEqual(run.now);
  expect(told.now).toBe(Math.max(...ring.map((unit) => since.get(state(unit)) ?? NaN)));
  return told.now < run.now ? 'earlier' : 'whole';
}

/** How builds drawn at random end. */
function endings<Drawn>(
  scenarios: fc.Arbitrary<Drawn>,
  yamlOf: (drawn: Drawn) => string,
  numRuns: number,
): Record<Told, number> {
  const seen: Record<Told, number> = { finished: 0, ended: 0, whole: 0, earlier: 0 };
  fc.assert(
    fc.property(scenarios, fc.integer({ min: 1, max: 1_000_000 }), (drawn, replication) => {
      seen[judge(yamlOf(drawn), replication)]++;
    }),
    { seed: 20270301, numRuns },
  );
  return seen;
}

// The drawings are worth something only if builds end in more than one way.
describe('units that are said to be stuck never move again, and a standstill is dated on the instant', () => {
  it(
    'in any small scenario',
    () => {
      const { finished, whole, earlier } = endings(randomScenario, (drawn) => toYaml(drawn), 120);
      expect(finished).toBeGreaterThan(60);
      expect(Math.min(whole, earlier)).toBeGreaterThan(0);
    },
    SLOW,
  );

  it(
    'on crowded floors',
    () => {
      const { finished, ended, earlier } = endings(crowdedScenario, toCrowdedYaml, 60);
      expect(earlier).toBeGreaterThan(20);
      expect(Math.min(finished, ended)).toBeGreaterThan(0);
    },
    SLOW,
  );
});

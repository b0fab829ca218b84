import fc from 'fast-check';
import { expect, it } from 'vitest';
import { FINISHED, GRIDLOCK, playOn, simulate } from '../../src/flow/engine.js';
import type { Unit } from '../../src/flow/floor/unit.js';
import { Alive } from '../../src/flow/gridlock/alive.js';
import { type Plan, prepare } from '../../src/flow/plan.js';
import { Run } from '../../src/flow/run.js';
import { modelOf } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const state = ({ number, step, place, truck, companionBits, at }: Unit): string =>
  [at, number, step.route.name, step.id, place?.id, place?.phase, truck?.id, companionBits].join(' ');
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
const seen: Record<string, number> = {};
it('many', () => {
  fc.assert(
    fc.property(
      randomScenario.filter(
        (d) =>
          (d.waits.includes('buffer') && !d.pulse && (d.stock > 0 || d.own || d.supply !== '')) ||
          (d.pins !== '' && (d.stock > 0 || d.own)),
      ),
      fc.integer({ min: 1, max: 1_000_000 }),
      (drawn, replication) => {
        const plan = prepare(modelOf(toYaml(drawn))),
          told = simulate(plan, 'stands', replication);
        const { run, since } = watched(plan, replication, told.outcome === FINISHED ? 11 : 1),
          units = new Alive(run).dead.filter(({ step }) => step.route.isMain);
        expect(told.outcome).toBe(units.length > 0 ? GRIDLOCK : run.outcome);
        const kind = `${told.outcome} ${drawn.waits} ${drawn.pins}`;
        seen[kind] = (seen[kind] ?? 0) + 1;
        if (told.outcome !== GRIDLOCK) return;
        expect(told.standstill.ring.length).toBeGreaterThan(0);
        if (told.standstill.ring.some((r) => r.lacks.length === 0))
          throw new Error('no lack ' + JSON.stringify(told.standstill));
        const members = told.standstill.ring.map(({ number, route }) => `${number} ${route}`),
          ring = new Alive(told).dead.filter(({ number, step }) =>
            members.includes(`${number} ${step.route.name}`),
          );
        expect(ring).toHaveLength(members.length);
        expect(told.now).toBe(Math.max(...ring.map((unit) => since.get(state(unit)) ?? NaN)));
      },
    ),
    { seed: Number(process.env.SEED ?? 1), numRuns: Number(process.env.RUNS ?? 400) },
  );
  console.log(seen);
}, 1e6);

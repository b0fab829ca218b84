import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { finishObservation } from '../../../src/flow/accounts/observed-time.js';
import { audit } from '../../../src/flow/audit.js';
import { playOn } from '../../../src/flow/engine.js';
import { BEGINS_PLAIN, COMES_PLAINLY, ENDS_PLAIN, ONE_CREW } from '../../../src/flow/floor/step-flags.js';
import type { Model } from '../../../src/flow/model/model.js';
import { prepare } from '../../../src/flow/plan.js';
import { Run } from '../../../src/flow/run.js';
import { observe } from '../../../src/measure/observe.js';
import { randomScenario, toYaml } from '../../properties/random-scenario.js';
import { modelOf } from '../run-yaml.js';

/** Without these flags units go the long way at every step. */
const SHORT = BEGINS_PLAIN | ENDS_PLAIN | COMES_PLAINLY | ONE_CREW;

/** The observation of a run in which steps have none of some flags, every number as it is; visits of steps that had. */
function played(model: Model, replication: number, without: number) {
  const run = new Run(prepare(model), 'ways', replication),
    flagged = run.shop.steps.filter(({ flags }) => (flags & SHORT) !== 0);
  for (const step of run.shop.steps) step.flags &= ~without;
  playOn(run);
  run.model = run.whole;
  finishObservation(run);
  audit(run);
  return {
    shipped: run.tally.shipped,
    visits: flagged.reduce((sum, { visits }) => sum + visits, 0),
    seen: JSON.stringify(observe(run, replication)),
  };
}

const station = fc.record({
  places: fc.integer({ min: 1, max: 3 }),
  buffer: fc.constantFrom(0, 0, 1, 2, 'unlimited'),
  // Whole minutes make ties common.
  work: fc.constantFrom(
    '10 min',
    '15 min',
    '5 min',
    '{ exponential: { mean: 10 min } }',
    '{ low: 5 min, high: 15 min }',
    '{ discrete: { 5 min: 50 %, 20 min: 50 % } }',
  ),
  same: fc.boolean(),
  calendar: fc.constantFrom('', '', ', calendar: days'),
  changeover: fc.constantFrom('', '', '', ', changeover: { on: kind, work: 5 min }'),
});
const line = fc.record({
  stations: fc.array(station, { minLength: 2, maxLength: 6 }),
  arrivals: fc.constantFrom('saturated', '12 min', '{ exponential: { mean: 12 min } }'),
  back: fc.boolean(),
});
type Line = typeof line extends fc.Arbitrary<infer T> ? T : never;

function yaml({ stations, arrivals, back }: Line): string {
  const steps = stations.flatMap(({ work, same }, i) => [
    `  - { step: step ${i}, at: station ${i}, work: ${work}${back && i === stations.length - 1 ? ', fails: { chance: 20 %, back to: step 0, limit: 2 }' : ''} }`,
    ...(same ? [`  - { step: more ${i}, at: station ${i}, work: ${work} }`] : []),
  ]);
  return `
scenario: line
programme: { start: 2027-03-01, arrivals: ${arrivals}, length: 6000 min, warm up: 500 min, options: { kind: { a: 50 %, b: 50 % } } }
calendars: { days: { hours: ["06:00-14:00", "14:00-22:00"], on: every day, breaks: ["10:00-10:20"] } }
sites:
  hall:
    stations:
${stations.map(({ places, buffer, calendar, changeover }, i) => `      station ${i}: { places: ${places}, buffer: ${i === 0 && arrivals === 'saturated' ? 0 : buffer}${calendar}${changeover}${back ? ', rework buffer: unlimited' : ''} }`).join('\n')}
route:
${steps.join('\n')}
`;
}

describe('the short way', () => {
  it('gives the same bits as the long way for plain steps, with buffers, places, blocking, ties and shifts', () => {
    fc.assert(
      fc.property(line, fc.integer({ min: 1, max: 1000 }), (drawn, replication) => {
        const model = modelOf(yaml(drawn)),
          short = played(model, replication, 0);
        expect(short.shipped).toBeGreaterThan(0);
        expect(short.seen).toBe(played(model, replication, SHORT).seen);
      }),
      { seed: 20270301, numRuns: 60 },
    );
  }, 120_000);

  it('gives the same bits as the long way for steps that claim, make flaws, inspect and send back', () => {
    let visits = 0;
    fc.assert(
      fc.property(randomScenario, fc.integer({ min: 1, max: 1000 }), (drawn, replication) => {
        const model = modelOf(toYaml(drawn)),
          short = played(model, replication, 0);
        visits += short.visits;
        for (const without of [SHORT, ONE_CREW, COMES_PLAINLY])
          expect(short.seen).toBe(played(model, replication, without).seen);
      }),
      { seed: 20270302, numRuns: 40 },
    );
    expect(visits).toBeGreaterThan(1000);
  }, 180_000);
});

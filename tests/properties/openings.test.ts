import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { floorLog } from '../../src/flow/floor-log.js';
import { prepare } from '../../src/flow/plan.js';
import { eventsOfRun } from '../../src/records/log/of-run.js';
import { compile } from '../../src/scenario/compile.js';
import { openingFindings } from '../../src/scenario/programme/opening/opening.js';
import { runSpan } from '../../src/scenario/programme/span.js';
import { buildsAhead } from '../../src/study/forecast/builds-ahead.js';
import { restOf } from '../../src/study/forecast/rest.js';
import { floorAt } from '../../src/study/validate/start/floor-at.js';
import { scenarioOf, sourceOf } from '../study/validate/shop.js';
import { randomScenario, toYaml } from './random-scenario.js';

describe('the floor of any small scenario, at any moment of its log', () => {
  it('is an opening that the reader of scenarios takes, and from which the rest is built', async () => {
    const seen = { units: 0, sentBack: 0, found: 0, hidden: 0, done: 0, left: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomScenario,
        fc.integer({ min: 1, max: 1000 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        async (drawn, r, share) => {
          const scenario = scenarioOf(toYaml(drawn)),
            model = compile(scenario),
            { happenings } = floorLog(prepare(model), 'cut', r),
            { origin } = runSpan(scenario),
            events = [...eventsOfRun(happenings, model, origin)],
            first = events[0]?.at ?? origin,
            last = events.at(-1)?.at ?? origin,
            at = { minutes: Math.ceil(first + share * (last - first)) + 1, isLocal: false },
            source = sourceOf(events),
            floor = await floorAt(source, { scenario, model }, at);
          const rest = restOf(floor, model);
          // A shift of fewer people leaves teams that a start with as many would not have: told, not hidden.
          const wrong = [...openingFindings(rest)].filter(({ wanted }) => !/ can stay with;/.test(wanted));
          expect(wrong, toYaml(drawn)).toEqual([]);
          const { units } = await buildsAhead({ scenario, log: source, at, seed: 'rest', replications: 1 });
          // Nobody is lost: what is not out yet is ahead.
          const out = new Set(
            events
              .filter(({ kind, at: when }) => kind === 'ship' && when < at.minutes)
              .map(({ object }) => object),
          );
          for (const { unit } of floor.opening.placed) expect(out.has(unit)).toBe(false);
          expect(units.length).toBeGreaterThanOrEqual(floor.opening.placed.length);
          for (const { items, sentBy, done } of floor.opening.placed) {
            seen.units++;
            if (sentBy >= 0) seen.sentBack++;
            if (done > 0) seen.done++;
            for (const { find } of items)
              if (find < 0) seen.hidden++;
              else seen.found++;
          }
          seen.left += floor.opening.notes.filter((note) => note.includes('without room anywhere')).length;
        },
      ),
      { seed: 20270301, numRuns: 40, endOnFailure: true },
    );
    // Worth something only if all of it comes.
    expect(seen).toMatchObject({ left: 0 });
    for (const kind of ['units', 'sentBack', 'found', 'hidden', 'done'] as const)
      expect(seen[kind], kind).toBeGreaterThan(3);
  }, 120_000);
});

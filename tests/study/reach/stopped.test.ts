import { expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { observe } from '../../../src/measure/observe.js';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { judgeRate } from '../../../src/study/held/rate-held.js';
import { questionOf } from '../../../src/study/reach/stopped.js';
import type { Verified } from '../../../src/study/reach/verify.js';
import { changedTo } from '../../../src/study/reliefs/changes.js';
import { planned } from '../../../src/study/sample/planned.js';

it('a build that stands still when more is asked counts with what it had shipped, in what stops it next', () => {
  const { scenario } = readScenario(
    `
scenario: one bench
programme: { start: 2028-01-03, zone: UTC, quantity: 200, rate: { per day: 8 } }
sites: { hall: { zone: UTC, stations: { bench: { buffer: 3 } } } }
route: [{ step: fit, at: bench, work: 2 h }]
`,
    'made.yaml',
    () => '',
  );
  const changed = changedTo(scenario!),
    plan = planned(scenario!, changed.model),
    seen = [1, 2].map((r) => observe(simulate(prepare(changed.model), '1', r), r)),
    judged = judgeRate(plan, seen, 0.95),
    asked = {
      goal: { kind: 'rate', perDay: 8 },
      replications: 2,
      level: 0.95,
      atRate: (each: Scenario): Scenario => each,
    } as const,
    question = questionOf(changed, { plan, judged } as Verified, asked, true),
    shipped = question.shippedPerDay(question.base);
  expect(question.perDay).toBe(8.8);
  expect(shipped(seen[0])).toBeCloseTo(8, 9);
  expect(shipped({ ...seen[0], outcome: 'gridlock' })).toBe(shipped(seen[0]));
});

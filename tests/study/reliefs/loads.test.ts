import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import { observe } from '../../../src/measure/observe.js';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { loadsOf } from '../../../src/study/reliefs/values/loads.js';
import { stepShares } from '../../../src/study/reliefs/values/step-shares.js';

// Invented, round the clock. The bench takes 20 + 40 min of a unit, 24 a day; the dryer 30, 48 a day; two
// fitters are at 40 min of the bench and 20 of the dryer's step; bolts for 12 units a day come by a rhythm.
const YAML = `
scenario: loads
programme: { start: 2027-04-05, arrivals: saturated, length: 2000 h, warm up: 500 h }
sites: { a: { crews: { fitters: 2 }, stations: { bench: { buffer: 2 }, dryer: { buffer: 2 } } } }
carriers: { trays: { count: 4, from: fit, to: dry } }
supplies: { bolts: { site: a, deliveries: { lot: 96, every: 2 days } } }
route:
  - { step: lay out, at: bench, work: 20 min }
  - { step: fit, at: bench, work: 40 min, crew: { fitters: 1 }, parts: { bolts: 4 } }
  - { step: dry, at: dryer, work: 20 min, process: 10 min, crew: { fitters: 1 } }
`;
const { scenario } = readScenario(YAML, 'loads.yaml', () => ''),
  model = compile(scenario!);

describe('how near to its limit something is', () => {
  const seen = [observe(simulate(prepare(model), 's', 1), 1)],
    loads = loadsOf(scenario!, model, seen);
  it('is its least capacity over its own, by arithmetic', () => {
    // 48 bolts a day are 12 units: the constraint.
    expect(loads('supply', 'bolts')).toBe(1);
    expect(loads('station', 'dryer')).toBeCloseTo(12 / 48, 9);
    // Two fitters have 2880 min a day, a unit takes 60.
    expect(loads('crew', 'fitters', 'a')).toBeCloseTo(12 / 48, 1);
  });

  it('or its use in the runs, where that is more', () => {
    // By arithmetic half of it; but it is held while bolts are waited for, and trays with the units in it.
    expect(loads('station', 'bench')).toBeGreaterThanOrEqual(12 / 24 - 1e-9);
    expect(loads('carrier', 'trays')).toBeLessThanOrEqual(1);
    expect(loads('carrier', 'trays')).toBeGreaterThan((12 * (70 / 1440)) / 4 - 0.01);
    expect(loads('crew', 'fitters', 'elsewhere')).toBe(0);
    expect(loads('lane', 'none')).toBe(0);
  });
});

describe('the share of a step', () => {
  it('is its minutes out of all that a unit takes of the station, the crew, the carriers', () => {
    const shares = stepShares(model),
      of = (step: string): string[] =>
        (shares.get(step) ?? []).map(({ kind, name, share }) => `${kind} ${name} ${share.toFixed(4)}`);
    expect(of('lay out')).toEqual(['station bench 0.3333']);
    expect(of('fit')).toEqual(['station bench 0.6667', 'crew fitters 0.6667', 'carrier trays 0.5714']);
    expect(of('dry')).toEqual(['station dryer 1.0000', 'crew fitters 0.3333', 'carrier trays 0.4286']);
  });
});

import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { stayDemands } from '../../../src/study/capacity/carriers.js';
import { dailyMinutes } from '../../../src/study/capacity/days.js';
import { demand } from '../../../src/study/capacity/demand.js';
import { play } from '../../flow/run-yaml.js';

/**
 * Each step takes 10 min. The look at `three` sends one in ten back to `two` with the cart, the test behind
 * the stretch one in five (1.25 passes a unit) to a step.
 */
const line = (back: string, key = '', one = ''): string => `
scenario: stays
programme: { start: 2027-03-01, rate: { per day: 60 }, quantity: 3000, options: { colour: { red: 50 %, white: 50 % } } }
sites: { hall: { stations: { s: { places: 9 }, a: { places: 9 }, b: { places: 9 }, c: { places: 9 }, t: { places: 9 } } } }
carriers: { carts: { count: 30, from: one, to: three${key} } }
route:
  - { step: start, at: s, work: 10 min }
  - { step: one, at: a, work: 10 min${one} }
  - { step: two, at: b, work: 10 min }
  - { step: three, at: c, work: 10 min, fails: { chance: 10 %, back to: two, limit: unlimited } }
  - { step: test, at: t, work: 10 min, fails: { chance: 20 %, back to: ${back}, limit: unlimited } }
`;
const AGAIN = ', in rework: again';
/** One pass of `two` and `three` with all that the look sends back. */
const BOTH = 20 / 0.9;

describe('how often a carrier is claimed, and for how long, for each unit released', () => {
  it.each([
    ['goes on without', line('two'), 1, 10 + BOTH],
    ['claims again where it comes', line('two', AGAIN), 1.25, 10 + 1.25 * BOTH],
    ['does the first step again', line('one'), 1.25, 1.25 * (10 + BOTH)],
    ['comes from ahead of the stretch', line('start'), 1.25, 1.25 * (10 + BOTH)],
    ['leaves the first step out in rework', line('start', '', ', rework: skip'), 1, 10 + BOTH],
    // White units claim at `two`, and there once more.
    [
      'has another first step by its colour',
      line('two', '', ', when: { colour: red }'),
      0.5 + 0.5 * 1.25,
      0.5 * (10 + BOTH) + 0.5 * 1.25 * BOTH,
    ],
  ])('counts what a unit does that %s, as the engine does', (_, yaml, claims, minutes) => {
    const { scenario } = readScenario(yaml, 'test.yaml', () => ''),
      { model, seen } = play(yaml),
      [carts] = stayDemands(model, demand(model), dailyMinutes(model, scenario!), null);
    expect(carts.holds).toBeCloseTo(claims, 8);
    expect(carts.minutes).toBeCloseTo(minutes, 6);
    // 3000 units with room for all: about 1 % by chance.
    expect(Math.abs(seen.kept.ended[0] / 3000 / claims - 1)).toBeLessThan(0.03);
    expect(Math.abs((seen.kept.held[0] * seen.minutes) / 3000 / minutes - 1)).toBeLessThan(0.03);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STATE_COUNT } from '../../src/flow/floor/states.js';
import { modelOf, play, playModel } from '../flow/run-yaml.js';
import { randomScenario, toYaml } from './random-scenario.js';

const SLOW = 120_000;
const replication = fc.integer({ min: 1, max: 1_000_000 });

describe('chance', () => {
  it(
    'is the same for the same seed and replication, to the byte, and another for others',
    () => {
      fc.assert(
        fc.property(randomScenario, replication, (drawn, r) => {
          const model = modelOf(toYaml(drawn));
          const bytes = (seed: string, number: number): string =>
            JSON.stringify({ ...playModel(model, seed, number).seen, replication: 0 });
          const once = bytes('seed', r);
          expect(bytes('seed', r)).toBe(once);
          // Every scenario has a drawn work time at its first step.
          expect(bytes('other seed', r)).not.toBe(once);
          expect(bytes('seed', r + 1)).not.toBe(once);
        }),
        { seed: 20270302, numRuns: 60 },
      );
    },
    SLOW,
  );

  it(
    'of everything else stays as it was when a step is added that no unit comes to',
    () => {
      fc.assert(
        fc.property(randomScenario, replication, (any, r) => {
          // At a step with people and a carrier both are asked for in one queue, which decides between equals:
          // the stretch goes over all steps, so that they are asked for so before.
          const drawn = { ...any, short: false };
          const before = play(toYaml(drawn), 'common', r).seen;
          const after = play(
            toYaml(
              drawn,
              '  - { step: rare, at: spare bay, sample: 1 in 1000, crew: { hands: 1 }, work: { exponential: { mean: 1 h } }, creates: { flaw 0: 50 % }, finds: { flaw 0: { chance: 50 %, repair: 5 min } } }',
            ),
            'common',
            r,
          ).seen;
          expect(Array.from(after.enteredAt)).toEqual(Array.from(before.enteredAt));
          expect(Array.from(after.shippedAt)).toEqual(Array.from(before.shippedAt));
          expect(after.optionsOf).toEqual(before.optionsOf);
          expect(after.endedAt).toBe(before.endedAt);
          expect(after.standstill).toEqual(before.standstill);
        }),
        { seed: 20270303, numRuns: 60 },
      );
    },
    SLOW,
  );

  it('upstream stays as it was when a later station is made slower', () => {
    const line = (last: string): string => `
scenario: line
programme: { arrivals: { exponential: { mean: 12 min } }, quantity: 200, options: { colour: { red: 40 %, white: 60 % } } }
sites: { hall: { stations: { a: { buffer: unlimited }, b: { buffer: unlimited }, c: { buffer: unlimited } } } }
route:
  - { step: first, at: a, work: { exponential: { mean: 8 min } } }
  - { step: second, at: b, work: { exponential: { mean: 8 min } } }
  - { step: third, at: c, work: ${last} }
`;
    const fast = play(line('1 min')).seen,
      slow = play(line('{ exponential: { mean: 10 min } }')).seen;
    expect(Array.from(slow.enteredAt)).toEqual(Array.from(fast.enteredAt));
    expect(slow.optionsOf).toEqual(fast.optionsOf);
    // Work at the first two stations is the same to the rounding of shares of two different lengths.
    for (const station of [0, 1])
      expect(slow.stationShares[station * STATE_COUNT] * slow.minutes).toBeCloseTo(
        fast.stationShares[station * STATE_COUNT] * fast.minutes,
        6,
      );
    expect(slow.endedAt).toBeGreaterThan(fast.endedAt);
  });
});

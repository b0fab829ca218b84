import { describe, expect, it } from 'vitest';
import { learningFactor } from '../../../src/flow/tasks/options.js';
import { readScenario } from '../../../src/scenario/read.js';
import { capacity } from '../../../src/study/capacity/capacity.js';
import { modelOf, play, shippedAt } from '../run-yaml.js';

/** Rule 14. One bench, first unit 100 min. */
const line = (learning: string, quantity = 10): string => `
scenario: learning
programme: { arrivals: saturated, quantity: ${quantity} }
sites: { hall: { stations: { bench: {} } } }
route: [{ step: build, at: bench, work: 100 min, learning: ${learning} }]
`;
/** What each unit took, minutes. */
const taken = (yaml: string): number[] =>
  shippedAt(play(yaml)).map((at, i, all) => at - (i === 0 ? 0 : all[i - 1]));

describe("Crawford's unit curve", () => {
  it('takes 0.477 of the first time for unit 10 at 80 %, and 6.315 for the first ten (usual textbook table of the 80 percent unit curve; digits from memory)', () => {
    const times = taken(line('{ rate: 80 % }'));
    expect(times[9] / 100).toBeCloseTo(0.477, 3);
    expect(times.reduce((a, b) => a + b, 0) / 100).toBeCloseTo(6.315, 3);
  });

  it('multiplies the time by the rate with each doubling: 100, 80, 64, 51.2 min for units 1, 2, 4, 8', () => {
    const times = taken(line('{ rate: 80 % }'));
    [
      [1, 100],
      [2, 80],
      [4, 64],
      [8, 51.2],
    ].forEach(([unit, minutes]) => {
      expect(times[unit - 1]).toBeCloseTo(minutes, 4);
    });
  });

  it('stops at its floor', () => {
    expect(taken(line('{ rate: 80 %, floor: 70 % }')).slice(3)).toEqual(Array(7).fill(70));
  });

  it('goes on from the units already built: after 7 the next is the eighth', () => {
    expect(taken(line('{ rate: 80 %, built before: 7 }', 1))[0]).toBeCloseTo(51.2, 4);
  });
});

describe("Wright's cumulative mean", () => {
  it('has a mean of 0.64 over the first four at 80 % (Wright 1936, formula)', () => {
    const times = taken(line('{ rate: 80 %, curve: cumulative mean }', 4));
    expect(times.reduce((a, b) => a + b, 0) / 4).toBeCloseTo(64, 4);
    expect(times[0]).toBe(100);
  });

  it('has the exponent -0.322 that Wright gives for 80 %', () => {
    expect(modelOf(line('{ rate: 80 %, curve: cumulative mean }')).steps.learnExponent[0]).toBeCloseTo(
      -0.322,
      3,
    );
  });
});

describe('learning', () => {
  it('is by step: a step done again in rework is one more time', () => {
    const third = 100 * 3 ** Math.log2(0.8);
    const at = shippedAt(
      play(`
scenario: learning in rework
programme: { arrivals: saturated, quantity: 2 }
defects: { flaw: {} }
sites: { hall: { stations: { store: {}, bench: { rework buffer: 1 }, stand: {} } } }
route:
  - { step: bring, at: store, work: 0.001 min, creates: { flaw: 100 % } }
  - { step: build, at: bench, work: 100 min, learning: { rate: 80 % } }
  - { step: test, at: stand, work: 1 min, finds: { flaw: { chance: 100 %, back to: build } } }
`),
    );
    // Unit 2 stands at the bench while unit 1 is tested, so unit 1 is done over after it: 100, then unit 2's
    // 80, then unit 1's third time.
    expect(at[0]).toBeCloseTo(0.001 + 100 + 80 + third + 1, 3);
  });

  it('does not fall where the rate is 100 %', () => {
    expect(taken(line('{ rate: 100 % }', 3))).toEqual([100, 100, 100]);
  });

  it('counts in the capacity with its mean over the programme: 6.315 times 100 min for ten', () => {
    const yaml = line('{ rate: 80 % }').replace(
      'arrivals: saturated, quantity: 10',
      'start: 2027-03-01, quantity: 10, rate: { per day: 4 }',
    );
    const { scenario } = readScenario(yaml, 'x.yaml', () => '');
    expect(capacity(modelOf(yaml), scenario!).rows[0].minutesPerUnit).toBeCloseTo(63.15, 2);
  });

  it('is refused with a rate of 0 %, and says what would be right', () => {
    const { problems } = readScenario(line('{ rate: 0 % }'), 'x.yaml', () => '');
    expect(problems?.map(({ line: at, path, wanted }) => ({ at, path, wanted }))).toEqual([
      { at: 5, path: 'route[0].learning.rate', wanted: 'a rate above 0 %, such as 85 %' },
    ]);
  });

  it('falls with n and never below the floor, for both curves', () => {
    for (const cumulative of [0, 1]) {
      const steps = {
        ...modelOf(line('{ rate: 90 %, floor: 50 % }')).steps,
        learnCumulative: Uint8Array.of(cumulative),
      };
      const factors = Array.from({ length: 500 }, (_, i) => learningFactor(steps, 0, i + 1));
      expect(factors[0]).toBe(1);
      factors.slice(1).forEach((factor, i) => {
        expect(factor).toBeLessThanOrEqual(factors[i]);
      });
      expect(Math.min(...factors)).toBe(0.5);
    }
  });
});

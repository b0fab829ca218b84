import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/flow/engine.js';
import { prepare } from '../../../src/flow/plan.js';
import type { Observation } from '../../../src/measure/observe.js';
import { observe } from '../../../src/measure/observe.js';
import { modelOf } from '../run-yaml.js';

/**
 * A serial line, always fed, with means of exponential work in minutes and two spaces between its stations.
 */
const line = (means: readonly number[], { hours = 3000, kind = 'exponential' } = {}): string => `
scenario: line
programme: { arrivals: saturated, length: ${hours} h, warm up: 100 h }
sites:
  hall:
    stations:
${means.map((_, i) => `      s${i}: { buffer: ${i === 0 ? 0 : 2} }`).join('\n')}
route:
${means.map((mean, i) => `  - { step: w${i}, at: s${i}, work: ${kind === 'fixed' ? `${mean} min` : `{ exponential: { mean: ${mean} min } }`} }`).join('\n')}
`;

function follow(yaml: string, closely = 1): Observation {
  return observe(simulate(prepare(modelOf(yaml), closely), 'watch', 1), 1);
}

/**
 * Index of the station that ships the most when its work is 10 % shorter, by finite differences with common
 * random numbers.
 */
function mostEffect(means: readonly number[]): number {
  const shipped = means.map(
    (_, faster) => follow(line(means.map((mean, i) => (i === faster ? 0.9 * mean : mean))), 0).shipped,
  );
  return shipped.indexOf(Math.max(...shipped));
}

const largest = (values: Float64Array): number => values.indexOf(Math.max(...values));

describe('the momentary bottleneck of a run', { timeout: 60_000 }, () => {
  it('is the slow station alone where no time varies: it never waits, the others do', () => {
    const { momentary } = follow(line([30, 60, 30], { hours: 1000, kind: 'fixed' }));
    // s0 is blocked and s2 starved in each cycle, so the period of s1, without an end, is the longest
    // throughout.
    expect(Array.from(momentary!.sole)).toEqual([0, 1, 0]);
    expect(Array.from(momentary!.shifting)).toEqual([0, 0, 0]);
  });

  it.each([[[20, 30, 20, 20]], [[20, 20, 20, 30]], [[24, 20, 30, 22, 20]]])(
    'of %j has the largest sole share where a shorter time ships the most',
    (means) => {
      const { momentary } = follow(line(means));
      expect(largest(momentary!.sole)).toBe(means.indexOf(30));
      expect(mostEffect(means)).toBe(means.indexOf(30));
    },
  );

  it('is shared by two equal slow stations, far ahead of the third', () => {
    const { sole } = follow(line([30, 15, 30])).momentary!;
    expect(sole[0] / sole[2]).toBeGreaterThan(0.5);
    expect(sole[0] / sole[2]).toBeLessThan(2);
    expect(sole[1]).toBeLessThan(0.2 * Math.min(sole[0], sole[2]));
  });

  it('has one sole bottleneck at a time and two where it shifts, and changes nothing else', () => {
    const yaml = line([20, 25, 22], { hours: 2000 }),
      { momentary, startUp, ...seen } = follow(yaml),
      { momentary: none, startUp: untold, ...same } = follow(yaml, 0);
    const sole = momentary!.sole.reduce((a, b) => a + b, 0),
      shifting = momentary!.shifting.reduce((a, b) => a + b, 0);
    expect(sole + shifting / 2).toBeLessThanOrEqual(1 + 1e-9);
    expect(sole + shifting / 2).toBeGreaterThan(0.95);
    expect([none, untold]).toEqual([null, null]);
    expect(startUp).toHaveLength(300);
    expect(same).toEqual(seen);
  });
});

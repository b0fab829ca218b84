import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/measure/observe.js';
import { expectAgreement, observations, SLOW } from './agree.js';

/** A booth with a drawn row of colours; nothing else takes time by chance. */
const booth = (colours: string, changeover: string, release = 'arrivals: saturated'): string => `
scenario: booth
programme: { start: 2027-03-01, ${release}, quantity: 20000, options: { colour: { ${colours} } } }
sites: { hall: { stations: { booth: { buffer: 60, changeover: { on: colour, ${changeover} } } } } }
route: [{ step: coat, at: booth, work: 20 min }]
`;
const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);
const aUnit = ({ changeovers, taken }: Observation): number => sum(changeovers) / taken[0];

describe('changeovers at a booth', SLOW, () => {
  it('are 2pq a unit in order of arrival: runs of Bernoulli trials, Feller, An Introduction to Probability Theory 1 (from memory)', () => {
    expectAgreement(observations(booth('red: 70 %, white: 30 %', 'work: 10 min')).map(aUnit), 0.42, 0.005);
  });

  it('take the sum of p_i p_j t_ij a unit, with times from value to value', () => {
    // 0.5 x 0.3 x 45 + 0.3 x 0.5 x 15 + 0.5 x 0.2 x 30 + 0.2 x 0.5 x 10 + 0.3 x 0.2 x 0 + 0.2 x 0.3 x 20 =
    // 6.75 + 2.25 + 3 + 1 + 0 + 1.2
    const times =
      'work: 30 min, from to: { red: { white: 45 min }, white: { red: { exponential: { mean: 15 min } }, lime: 0 min }, lime: { red: 10 min, white: 20 min } }';
    expectAgreement(
      observations(booth('red: 50 %, white: 30 %, lime: 20 %', times)).map(
        ({ changeoverMinutes, taken }) => sum(changeoverMinutes) / taken[0],
      ),
      14.2,
      0.005,
    );
  });

  it('are one in k with batches of at most k while both of two values wait, to the unit', () => {
    // Ten come while one is coated, so both queues only grow, and after warm-up neither is ever empty.
    const seen = observations(
      booth('red: 50 %, white: 50 %', 'work: 3 min, batch: { most: 4 }', 'arrivals: 2 min')
        .replace('buffer: 60', 'buffer: unlimited')
        .replace('quantity: 20000', 'length: 300 h, warm up: 30 h'),
    );
    expect(seen.every(({ taken }) => taken[0] > 850)).toBe(true);
    for (const { changeovers, taken } of seen)
      expect(Math.abs(sum(changeovers) - taken[0] / 4)).toBeLessThanOrEqual(1);
  });

  it('are two for each unit of the rarer value where none may follow one of its kind: 2q', () => {
    expectAgreement(
      observations(booth('red: 70 %, white: 30 %', 'work: 10 min, batch: { most: 1 }')).map(aUnit),
      0.6,
      0.005,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

/**
 * Units late against closed forms. In an M/M/1 queue served first come, first served the time in the system
 * is exponential with rate mu - lambda, so a unit is later than t with exp(-(mu - lambda) t) (Kleinrock 1975,
 * Queueing Systems, vol. 1, sec. 5.8; quoted from memory).
 */
describe('units later than their due time', SLOW, () => {
  const yaml = (end: string): string => `
scenario: due
programme: { arrivals: ${exponential(2)}, ${end}, due after: 3 h }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: fit, at: bench, work: ${exponential(1)} }]
`;
  // mu = 1, lambda = 0.5 an hour.
  const share = Math.exp(-0.5 * 3);

  it('are exp(-1.5) of those at load 0.5 in a steady state, late by 2 h in the mean, as the rest is exponential again', () => {
    const seen = observations(yaml('length: 100000 h, warm up: 200 h'), { replications: 40 });
    expectAgreement(
      seen.map(({ late, due }) => late / due),
      share,
      0.01,
    );
    expectAgreement(
      seen.map(({ late, lateMinutes }) => lateMinutes / late / 60),
      2,
      0.01,
    );
  });

  it('are so by the dates of single units too, but for the start from an empty floor', () => {
    const seen = observations(yaml('quantity: 40000'), { replications: 40 });
    const late = seen.map(({ dueAt, shippedAt }) =>
      shippedAt.reduce((sum, time, i) => sum + (time > dueAt[i] ? 1 : 0), 0),
    );
    expect(late).toEqual(seen.map((each) => each.late));
    expectAgreement(
      late.map((units) => units / 40_000),
      share,
      0.01,
    );
  });
});

describe('orders built again', SLOW, () => {
  it('are built 1 / (1 - p) times in the mean: of 4000 orders with p = 1/5, 5000 units (geometric distribution)', () => {
    const seen = observations(
      `
scenario: again
programme: { arrivals: saturated, quantity: 4000, replace scrapped: true }
sites: { hall: { stations: { bench: {}, pool: {} } } }
route:
  - { step: fit, at: bench, work: ${exponential(1)} }
  - { step: test, at: pool, work: ${exponential(0.5)}, fails: { chance: 20 %, scrap: true } }
`,
      { replications: 30 },
    );
    expect(seen.every(({ shipped, outcome }) => shipped === 4000 && outcome === 'finished')).toBe(true);
    expectAgreement(
      seen.map(({ entered }) => entered),
      5000,
      0.005,
    );
  });
});

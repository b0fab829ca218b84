import { describe, expect, it } from 'vitest';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { unitHours } from './transient.js';

/** An M/M/1 with a mean work of one hour. */
const queue = (load: number, length: number, warmUp: string) =>
  scenarioBuilt(`
scenario: queue
programme: { arrivals: { exponential: { mean: ${1 / load} h } }, length: ${length} h, warm up: ${warmUp} }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: serve, at: bench, work: { exponential: { mean: 1 h } } }]
`);
/** By what the mean over the length after a warm-up is below rho / (1 - rho) (Erlang), exactly. */
const biasOf = (load: number, length: number, most: number): ((warmUp: number) => number) => {
  const inside = unitHours(load, 1, most);
  return (warmUp) => (inside(warmUp + length) - inside(warmUp)) / length - load / (1 - load);
};
const seeds = (count: number): string[] => Array.from({ length: count }, (_, i) => `warm ${i}`);

describe('the warm-up of an M/M/1 whose transient is known', SLOW, () => {
  it('is known by the chain of its jumps: the deficit of an empty start is rho / (1 - rho)^3 unit-hours', () => {
    // Integral of the mean's distance to its limit, for mu = 1 (Abate & Whitt 1987, Adv. Appl. Prob. 19; from
    // memory): 0.5 / 0.125 = 4.
    expect(-400 * biasOf(0.5, 400, 410)(0)).toBeCloseTo(4, 2);
  });

  it('if left to MSER-5, leaves less than a tenth of the half-width on average, and is always found', async () => {
    // Without one 0.225 units. Of 20 replications the half-width is 2.093 sqrt(2 rho (1 + rho) / (1 - rho)^4 /
    // 4000 / 20) = 1.37 (asymptotic variance of the mean: Whitt 1989, Management Science 35; from memory).
    const length = 4000,
      scenario = queue(0.9, length, 'mser-5'),
      left: number[] = [];
    for (const seed of seeds(6)) {
      const warmUp = (await built.findWarmUp({ scenario, seed, workers: 1 })) / 60;
      // Nothing of the start is left after 3,500 h.
      left.push(biasOf(0.9, length, length + 3600)(Math.min(warmUp, 3500)));
    }
    expect(-left.reduce((a, b) => a + b, 0) / left.length).toBeLessThan(0.137);
  });

  it('is called long enough only where it is, and often where it is so by far', async () => {
    const verdicts = async (length: number, warmUp: number, replications: number) => {
      const scenario = queue(0.5, length, `${warmUp} h`),
        bias = biasOf(0.5, length, length + warmUp + 1)(warmUp),
        found: string[] = [];
      for (const seed of seeds(6)) {
        const {
          warmUp: seen,
          wip: { total },
        } = await built.simulateStudy({ scenario, file: 'queue.yaml', replications, seed, workers: 1 });
        const matters = (total.high! - total.low!) / 20;
        if (seen!.verdict === 'long enough') expect(Math.abs(bias), seed).toBeLessThanOrEqual(matters);
        if (seen!.verdict === 'too short') expect(Math.abs(bias), seed).toBeGreaterThan(matters);
        found.push(seen!.verdict);
      }
      return found.filter((verdict) => verdict === 'long enough').length;
    };
    expect(await verdicts(4000, 100, 20)).toBeGreaterThanOrEqual(2);
    // Nothing cut of 300 h and 100 replications: 0.013 left, where 0.0055 matter.
    expect(await verdicts(300, 0, 100)).toBe(0);
  });

  it('is called too short where a long queue builds up after it', async () => {
    // At load 0.97 the queue takes some 1 / (1 - sqrt(0.97))^2 = 4,400 h to build up (Cohen 1982; from
    // memory). A replication of 3,000 h tells little of it: with ten of them nobody can be sure, with 60 it shows.
    const { warmUp, findings } = await built.simulateStudy({
      ...{ scenario: queue(0.97, 3000, '0 h'), file: 'queue.yaml', replications: 60 },
      ...{ seed: '1', workers: 1 },
    });
    expect(warmUp!.verdict).toBe('too short');
    expect(findings.map(({ kind }) => kind)).toEqual(['warm-up']);
  });
});

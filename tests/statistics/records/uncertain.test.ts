import { describe, expect, it } from 'vitest';
import { Sampler } from '../../../src/random/sampler.js';
import { meanInterval } from '../../../src/study/statistics/interval.js';
import { drawnValue } from '../../../src/study/uncertain/draw.js';
import { randomEffects } from '../../../src/study/uncertain/random-effects.js';
import { built, scenarioBuilt } from '../built.js';

const HOURS = 200,
  LEVEL = 0.95;

/** One station that always has a unit; a scenario of which the time is put in as it is drawn. */
const scenario = scenarioBuilt(`
scenario: one station
programme: { arrivals: saturated, length: ${HOURS} h, warm up: 10 h }
sites: { hall: { stations: { bench: { places: 1, buffer: 0 } } } }
route: [{ step: work, at: bench, work: { exponential: { mean: 1 h } } }]
`);
const model = built.compile(scenario);

/** Units an hour of two replications for each of so many draws of a mean that was found from n times. */
function pairs(mean: number, n: number, draws: number, seed: string, isDrawn: boolean): number[][] {
  const written = { kind: 'exponential', mean } as const;
  return Array.from({ length: draws }, (_, d) => {
    const input = { path: 'route[0].work', at: ['route', 0, 'work'], words: '', n } as const,
      found = isDrawn
        ? (drawnValue({ ...input, of: { kind: 'time', distribution: written } }, seed, d + 1, 0) as {
            exponential: { mean: string };
          })
        : { exponential: { mean: `${mean} min` } },
      distribution = { kind: 'exponential', mean: parseFloat(found.exponential.mean) } as const;
    const plan = built.prepare({ ...model, draws: model.draws.map((draw) => ({ ...draw, distribution })) });
    return [2 * d + 1, 2 * d + 2].map((replication) => {
      const seen = built.observe(built.simulate(plan, seed, replication), replication);
      return (60 * seen.shipped) / seen.minutes;
    });
  });
}

describe('a saturated station whose mean was found from n exponential times', () => {
  it('ships at rates that spread as an inverse gamma does, and by chance as a Poisson count', () => {
    // Rate r = 1 / mean as written; drawn r n / Gamma(n): mean r n / (n - 1), variance
    // r^2 n^2 / ((n - 1)^2 (n - 2)); a count in H hours has the variance rate H, so a rate has rate / H.
    const n = 20,
      draws = 4000,
      hours = HOURS,
      found = randomEffects(pairs(60, n, draws, 'spread', true), LEVEL);
    const mean = n / (n - 1),
      input = (mean * mean) / (n - 2),
      chance = mean / hours;
    expect(Math.abs(found.mean - mean)).toBeLessThan(4 * Math.sqrt((input + chance / 2) / draws));
    expect(Math.abs(found.ofGroups / input - 1)).toBeLessThan(0.2);
    expect(Math.abs(found.ofValues / chance - 1)).toBeLessThan(0.15);
  });

  it.each([
    [50, 10],
    [20, 10],
  ])('has the true rate in the interval, of %i times with %i draws', (n, draws) => {
    const studies = 1000,
      truth = 1;
    let held = 0,
      heldPlain = 0;
    for (let s = 1; s <= studies; s++) {
      const sampler = new Sampler(
        [{ name: 'times', distribution: { kind: 'exponential', mean: 60 } }],
        'truth',
        s,
      );
      const times = Array.from({ length: n }, () => sampler.next(0)),
        mean = times.reduce((a, b) => a + b, 0) / n;
      const { mean: rate, half } = randomEffects(pairs(mean, n, draws, `study ${s}`, true), LEVEL);
      if (Math.abs(rate - truth) <= half!) held++;
      const plain = meanInterval(pairs(mean, n, draws, `study ${s}`, false).flat(), LEVEL);
      if (plain.low! <= truth && truth <= plain.high!) heldPlain++;
    }
    expect(held / studies).toBeGreaterThanOrEqual(0.93);
    expect(held / studies).toBeLessThanOrEqual(0.97);
    expect(heldPlain / studies).toBeLessThan(0.8);
  });
});

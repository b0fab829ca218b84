import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import { reliefsStudy } from '../../../src/study/reliefs/reliefs.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';

/**
 * Invented. The second of three stations is the slow one, 60 min of each unit; screws for 50 units a day come,
 * where it does 24. A basis at the top marks all but what has its own.
 */
const YAML = `
scenario: guessed
basis: guess
programme: { start: 2027-04-05, quantity: 300, rate: { per day: 30 }, options: { roof: 20 % } }
sites:
  a:
    crews: { painters: 7, clerks: { headcount: 9, basis: estimate } }
    stations: { s: { buffer: 4 }, t: { buffer: 4 }, u: { buffer: 3 } }
supplies: { screws: { site: a, at start: 900, deliveries: { lot: 1400, every: 7 days } } }
costs: { currency: EUR, buffer place: { day: 10 } }
route:
  - { step: one, at: s, work: 20 min, crew: { clerks: 1 } }
  - { step: two, at: t, work: { mean: 60 min, cv: 0.3 }, crew: { painters: 2 }, parts: { screws: 4 } }
  - { step: three, at: u, work: { mean: 30 min, basis: measured, cv: 0.1 } }
  - { step: see, at: u, work: 0 min }
`;
async function study(values: number | undefined, yaml = YAML, replications = 2): Promise<ReliefsResults> {
  const { scenario, problems } = readScenario(yaml, 'guessed.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return reliefsStudy({
    scenario,
    data: scenarioData(yaml, 'guessed.yaml', () => ''),
    values,
    file: 'guessed.yaml',
    replications,
    seed: 's',
    workers: 1,
  });
}
const paths = (all: readonly { readonly path: string }[]): string[] => all.map(({ path }) => path);

describe('the guesses and estimates that are varied', () => {
  it('are all of them where they are few; what is asked of the shop and what stays as it is are not', async () => {
    const { assumptions, values, skipped } = await study(undefined);
    expect(values).toEqual({ most: 50, left: [] });
    expect(paths(assumptions)).not.toContain('route[2].work');
    expect(paths(assumptions).slice(0, 1)).toEqual(['route[1].work']);
    expect(skipped.map(({ what, why }) => `${what}: ${why}`)).toEqual([
      'the quantity: it says what is asked of the shop',
      'the rate a day: it says what is asked of the shop',
      // Not whole days; nobody.
      'the time between deliveries of screws, low end: the value cannot be varied this way',
      'the time between deliveries of screws, high end: the value cannot be varied this way',
      'the number of clerks at one, low end: the value cannot be varied this way',
      'the work of see, low end: nothing changes',
      'the work of see, high end: nothing changes',
    ]);
  });

  it('where they are many begin with what has a basis of its own, then what bears most on what is slow', async () => {
    // Enough of them to say that it surely moves it.
    const { assumptions, values, answer } = await study(4, YAML, 10);
    expect(paths(assumptions).sort()).toEqual(
      [
        // The mix of all, the estimate, the slow station's work with its people.
        'programme.options.roof',
        'route[1].work',
        'sites.a.stations.t.buffer',
        'sites.a.crews.clerks.headcount',
      ].sort(),
    );
    expect(values.most).toBe(4);
    // Prices and work that takes no time come last.
    expect(values.left.slice(-2)).toEqual([
      {
        path: 'costs.buffer place.day',
        words: 'the price of a space for a day',
        basis: 'guess',
        value: '10',
      },
      { path: 'route[3].work', words: 'the work of see', basis: 'guess', value: '0 min' },
    ]);
    expect(paths(values.left)).toContain('sites.a.stations.s.buffer');
    expect(answer.sentence).toMatch(/Measure next: the work of two \(guess/);
  });

  it('are none with --values 0', async () => {
    const { assumptions, values, runs } = await study(0);
    expect(assumptions).toEqual([]);
    expect(values.left.length).toBeGreaterThan(10);
    expect(runs.withoutScreen).toBeLessThan(60);
  });

  it('leave out what does not matter: all that move it by more than the zone are among twice as many', async () => {
    // The third station nearly as slow as the second, both with much chance.
    const yaml = YAML.replace('cv: 0.3', 'cv: 0.7').replace(
      '{ mean: 30 min, basis: measured, cv: 0.1 }',
      '{ mean: 57 min, cv: 0.7 }',
    );
    const { assumptions, zone } = await study(undefined, yaml),
      all = assumptions.filter(({ largest }) => largest > zone);
    expect(all.length).toBeGreaterThan(2);
    expect(assumptions.length).toBeGreaterThan(2 * all.length);
    const few = await study(2 * all.length, yaml);
    expect(paths(few.assumptions)).toEqual(expect.arrayContaining(paths(all)));
  });

  it('say in the answer that there are more, where none of them matters', async () => {
    const { answer } = await study(2, YAML.replace('per day: 30', 'per day: 1'));
    expect(answer.sentence).toMatch(
      /None of the 2 guesses and estimates that were varied moves it .*; \d+ were not\.$/,
    );
  });
});

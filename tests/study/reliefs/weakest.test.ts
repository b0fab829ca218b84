import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import type { WeakestResult } from '../../../src/study/reliefs/values/weakest.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

/**
 * Invented, without chance. Days of 480 min: `s` has time for 24 a day, `t` for 8, `u` for 16; more are asked.
 * So t's work alone decides, by plain division.
 */
const yaml = (t: string, more = ''): string => `
scenario: three in a row
programme: { start: 2027-04-05, quantity: 500, rate: { per day: 20 } }
calendars: { days: { hours: ["07:00-15:00"] } }
sites:
  a: { calendar: days, stations: { s: { buffer: 2 }, t: { buffer: 2 }, u: { buffer: 2 } } }
route:
  - { step: one, at: s, work: { value: 20 min, basis: guess } }
  - { step: two, at: t, work: ${t} }
  - { step: three, at: u, work: { value: 30 min, basis: estimate } }
${more}`;

async function weakest(text: string, replications = 2): Promise<WeakestResult | null> {
  const { scenario, problems } = readScenario(text, 'three.yaml', () => '');
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  const data = scenarioData(text, 'three.yaml', () => '');
  return (await simulateStudy({ scenario, data, file: 'three.yaml', replications, seed: '1', workers: 1 }))
    .weakest;
}

describe('the guess that an answer hangs on most', () => {
  it('is the one about the slow station, by as much as division says', async () => {
    const found = await weakest(yaml('{ value: 60 min, basis: guess }'));
    expect(found).toMatchObject({ stated: 3, replications: 2, isFound: true });
    const [first, ...others] = found!.tried;
    expect([first.words, first.now]).toEqual(['the work of two', '60 min']);
    // A guess is varied by a fifth: 480 / 48 = 10 and 480 / 72 = 6.67 instead of 8 a day.
    expect(first.ends.map(({ value, gain }) => [value, gain.mean.toFixed(1)])).toEqual([
      ['48 min', '2.0'],
      ['72 min', '-1.3'],
    ]);
    for (const { ends } of others) for (const { gain } of ends) expect(gain.mean).toBeCloseTo(0, 1);
  });

  it('is none where those that are guessed have time to spare', async () => {
    const found = await weakest(yaml('{ value: 60 min, basis: measured }'));
    expect(found).toMatchObject({ stated: 2, isFound: false });
    expect(found?.tried.map(({ words }) => words).sort()).toEqual(['the work of one', 'the work of three']);
  });

  it('is not looked for where nothing is guessed, nor where the scenario is not known as data', async () => {
    const plain = yaml('60 min').replaceAll(/\{ value: (\d+ min), basis: \w+ \}/g, '$1');
    expect(await weakest(plain)).toBeNull();
    const { scenario } = readScenario(yaml('{ value: 60 min, basis: guess }'), 'three.yaml', () => '');
    const asked = { scenario: scenario!, file: 'three.yaml', replications: 2, seed: '1', workers: 1 };
    expect((await simulateStudy(asked)).weakest).toBeNull();
  });

  it('is found among many, though others are about stations that are as busy', async () => {
    // Eleven guesses, four of which are tried: `before` is always at work or blocked, but waits for t.
    const many = Array.from({ length: 8 }, (_, i) => `  - { step: more ${i}, at: m${i}, work: 25 min }`);
    const stations = Array.from({ length: 8 }, (_, i) => `m${i}: { buffer: 2 }`).join(', ');
    const text = yaml('60 min', many.join('\n'))
      .replace('u: { buffer: 2 }', `u: { buffer: 2 }, ${stations}`)
      .replace('scenario: three in a row', 'scenario: eleven in a row\nbasis: guess')
      .replaceAll(', basis: guess', '');
    const found = await weakest(text);
    expect(found?.stated).toBeGreaterThan(10);
    expect(found).toMatchObject({ isFound: true });
    expect(found?.tried).toHaveLength(4);
    expect(found?.tried[0]?.words).toBe('the work of two');
  });
});

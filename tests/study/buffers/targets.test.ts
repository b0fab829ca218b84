import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import type { Scenario } from '../../../src/scenario/types/scenario.js';
import { type BufferOptions, buffersStudy } from '../../../src/study/buffers/buffers.js';
import { threeStations } from './buffers-line.js';

/**
 * One person for two places of the first station and one of the second, who does both: with room between
 * them without limit two units in three are begun for each that is finished, and only 1 of 4 h is left for it;
 * with little room the first station is blocked, and a unit takes 3 h.
 */
const shared: Scenario = readScenario(
  `
scenario: a shared person
programme: { arrivals: saturated, length: 400 h, warm up: 50 h }
sites: { hall: { crews: { p: 1 }, stations: { first: { places: 2 }, second: { buffer: 1 } } } }
route:
  - { step: a, at: first, crew: { p: 1 }, work: { mean: 1 h, cv: 0.5 } }
  - { step: b, at: second, crew: { p: 1 }, work: { mean: 2 h, cv: 0.5 } }
`,
  'shared.yaml',
  () => '',
).scenario!;
const study = (options: Partial<BufferOptions>) =>
  buffersStudy({
    scenario: threeStations('{ exponential: { mean: 1 h } }'),
    file: 'x/line.yaml',
    goal: { kind: 'share', share: 0.9, of: 'present' },
    replications: 8,
    seed: 'a',
    workers: 1,
    looksAround: false,
    ...options,
  });

describe('a target that is a share', { timeout: 30_000 }, () => {
  it('of the present layout is reached by it with nothing to spare, in pairs', async () => {
    const same = await study({
      scenario: threeStations('2 h'),
      goal: { kind: 'share', share: 1, of: 'present' },
    });
    expect(same.chosen.places).toEqual([0, 0]);
    expect(same.answer.verdict).toBe('reached');
    expect(same.aboveAsked!.difference).toMatchObject({ mean: 0, n: 8 });
    expect(same.answer.sentence).toMatch(
      /^0 places reach 100 % of what the layout as it is ships \(0\.5 units an hour\): they give 0\.5 units an hour \(.*\), 0 \(always\) against what is asked/,
    );
  });

  it('is judged against that share of the same replications, by a narrower interval than an absolute one', async () => {
    // Exactly 0.564 without a place and 0.670 with two: 84.1 % (tests/statistics/exact-line.ts).
    const found = await study({ goal: { kind: 'share', share: 0.8, of: 'present' } });
    expect(found.chosen.total).toBe(0);
    expect(found.goal).toMatchObject({ kind: 'target', relative: { share: 0.8, of: 'present' } });
    if (found.goal.kind !== 'target') return;
    expect(found.goal.rate).toBeCloseTo(0.8 * found.present.rate.mean, 12);
    const { mean, low, high } = found.aboveAsked!.difference,
      alone = found.chosen.rate;
    expect(mean).toBeCloseTo(alone.mean - found.goal.rate, 12);
    expect(high! - low!).toBeLessThan(alone.high! - alone.low!);
    expect(found.answer.verdict).toBe('reached');
    expect(found.search).toEqual({ within: null, fewer: 0 });
    expect(found.answer.notes[0]).toBe('There can be no fewer.');
  });

  it('of no limit is known from a run without any', async () => {
    const found = await study({ goal: { kind: 'share', share: 0.9, of: 'unlimited' }, workers: 2 });
    expect(found.answer.verdict).not.toBe('out of reach');
    expect(found.unlimited.rate.mean).toBeGreaterThan(found.present.rate.mean);
    expect(found.unlimited.exceeded).toBeNull();
    expect(found.search.fewer).toBeGreaterThan(0);
    expect(found.answer.notes).toEqual([
      `All ${found.search.fewer!} layouts with fewer than ${found.chosen.total} places were tried.`,
    ]);
    expect(await study({ goal: { kind: 'share', share: 0.9, of: 'unlimited' } })).toEqual(found);
  });
});

describe('a target where more room costs throughput', { timeout: 30_000 }, () => {
  it('is reached with little room where no limit does not reach it, and the answer says that this is so', async () => {
    const found = await study({ scenario: shared, goal: { kind: 'target', rate: 0.3 } });
    expect(found.answer.verdict).toBe('reached');
    expect(found.unlimited.rate.mean).toBeLessThan(0.27);
    expect(found.unlimited.exceeded!.more.difference.low).toBeGreaterThan(0);
    expect(found.answer.notes.at(-1)).toMatch(
      /^No limit is not the most here: \d+ places? ships? 0\.3\d+ units an hour, \+0\.0\d+ \(.*\) against no limit\.$/,
    );
  });

  it('is out of reach where arithmetic does not allow it, which no limit is no proof of', async () => {
    // One person, three hours a unit.
    const found = await study({ scenario: shared, goal: { kind: 'target', rate: 0.35 } });
    expect(found.bound).toMatchObject({ name: 'p', kind: 'crew' });
    expect(found.bound!.rate).toBeCloseTo(1 / 3, 9);
    expect(found.answer.verdict).toBe('out of reach');
  });
});

import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/scenario/compile.js';
import { readScenario } from '../../../src/scenario/read.js';
import { isAlike, readTrial, type Trial } from '../../../src/study/buffers/search/trial.js';
import { Trials } from '../../../src/study/buffers/search/trials.js';
import { type Layout, spotsOf, withLayout } from '../../../src/study/buffers/spots.js';
import { Replicator } from '../../../src/study/run/replicator.js';

/**
 * Drops come now and then; little of the room is used. The rework goes to the buffer of the first station.
 */
const line = (length: string, road = 'capacity: 1, bank: 2') =>
  readScenario(
    `
scenario: seldom full
programme: { arrivals: { exponential: { mean: 90 min } }, ${length} }
sites:
  here: { stations: { first: { buffer: 40 }, second: { buffer: 1 }, third: { buffer: 3 } } }
  there: { stations: { last: { buffer: 2 } } }
lanes: { road: { from: here, to: there, trucks: 2, ${road}, drive: 20 min, arrival bank: 2 } }
route:
  - { step: a, at: first, work: { exponential: { mean: 60 min } } }
  - { step: b, at: second, work: { exponential: { mean: 55 min } } }
  - { step: c, at: third, work: { exponential: { mean: 30 min } }, fails: { chance: 10 %, back to: a } }
  - { lane: road }
  - { step: d, at: last, work: { exponential: { mean: 40 min } } }
`,
    'x.yaml',
    () => '',
  ).scenario!;

describe('trials of layouts', { timeout: 60_000 }, () => {
  it.each([
    ['length: 60 h, warm up: 20 h', undefined],
    ['quantity: 40', undefined],
    // The third unit is in the bank for no time: the truck loads as it comes.
    ['quantity: 40', 'capacity: 3, bank: 9, leaves: when full'],
    ['quantity: 40', 'capacity: 3, bank: 9, leaves: { when full or after: 8 h }'],
  ])(
    'run no replication that would go as one that was run, and have the value that it would give (%s, %s)',
    async (length, road) => {
      const scenario = line(length, road),
        spots = spotsOf(scenario),
        model = compile(scenario),
        seed = 'alike',
        replications = 12;
      const read = readTrial(
        {
          unit: 'units an hour',
          over: '',
          daysInOne: null,
          of: ({ shipped, endedAt, leadMean, minutes }) => shipped + leadMean + endedAt + minutes,
        },
        spots,
      );
      const replicator = new Replicator({ seed, workers: 1 }),
        trials = new Trials(replicator, { scenario, model, spots, read }, replications);
      const present = spots.map((spot) => spot.present),
        layouts: Layout[] = [present];
      for (const by of [1, -1, 3])
        for (const [s] of spots.entries())
          layouts.push(present.map((places, i) => Math.max(1, i === s ? places + by : places)));
      for (const few of [2, 3])
        for (const [s] of spots.entries()) layouts.push(present.map((places, i) => (i === s ? few : places)));
      for (const layout of layouts) await trials.run([layout]);
      const all = layouts.length * replications;
      expect(trials.spared).toBeGreaterThan(all / 5);
      expect(trials.spared).toBeLessThan(all);
      for (const layout of layouts) {
        const direct = new Replicator({ seed, workers: 1 }),
          alone = compile(withLayout(scenario, spots, layout));
        const row = await direct.row({ key: 'alone', model: alone, read: read(alone) }, 1, replications);
        expect(trials.values(layout), layout.join()).toEqual(row.map(({ rate }) => rate));
      }
    },
  );

  it('know that a spot which shut somebody out is another with one place more, and one that did not is not', () => {
    const none = new Float64Array(2),
      trial: Trial = { rate: 1, alike: Float64Array.of(Infinity, 2), lacking: none, inside: none };
    expect(isAlike(trial, [1, 4], [1, 9])).toBe(true);
    expect(isAlike(trial, [1, 4], [1, 2])).toBe(true);
    expect(isAlike(trial, [1, 4], [1, 1])).toBe(false);
    expect(isAlike(trial, [1, 4], [2, 4])).toBe(false);
    expect(isAlike(trial, [1, 4], [1, 4])).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { compile } from '../../../../src/scenario/compile.js';
import { readScenario } from '../../../../src/scenario/read.js';
import { pricesOf } from '../../../../src/study/buffers/around/prices.js';
import { spotsOf, withLayout } from '../../../../src/study/buffers/spots.js';
import { Replicator, whole } from '../../../../src/study/run/replicator.js';
import { unitCost } from '../../../../src/study/sections/costs.js';

const read = (costs: string) =>
  readScenario(
    `
scenario: two plants with prices
programme: { arrivals: { exponential: { mean: 70 min } }, quantity: 30, due after: 3 h }
${costs}
sites:
  works: { crews: { smiths: 1 }, stations: { bay: { buffer: 30 }, oven: { buffer: 1 } } }
  yard: { stations: { gate: { buffer: 1 } } }
lanes: { road: { from: works, to: yard, trucks: 1, capacity: 1, drive: 20 min, bank: 2, arrival bank: 3 } }
route:
  - { step: weld, at: bay, crew: { smiths: 1 }, work: { exponential: { mean: 50 min } } }
  - { step: bake, at: oven, work: { exponential: { mean: 55 min } } }
  - lane: road
  - { step: check, at: gate, work: { exponential: { mean: 40 min } } }
`,
    'x.yaml',
    () => '',
  ).scenario!;
const priced = read(
  'costs: { currency: EUR, people: { default: 40 }, unit: { day: 90 }, late: { day: 70 }, ' +
    'buffer place: { day: 12, sites: { yard: 20 }, stations: { oven: 14 }, lanes: { road: { bank: 9 } } } }',
);

describe('what layouts cost', () => {
  const spots = spotsOf(priced, ['oven', 'road', 'gate']),
    model = compile(priced),
    prices = pricesOf(priced, model, spots)!;

  it('is the price of each place by station or bank, then site, then all', () => {
    expect(spots.map(({ name }) => name)).toEqual(['oven', 'road: bank', 'road: arrival bank', 'gate']);
    expect(prices.places).toEqual([14, 9, 20, 20]);
    expect(prices.floorOf([1, 2, 3, 1])).toBe(14 + 2 * 9 + 3 * 20 + 20);
    expect(prices.parts).toEqual(['people', 'overtime', 'units in work', 'floor', 'late units']);
  });

  it('is nothing without prices, and no floor without a price of places', () => {
    expect(pricesOf(read(''), model, spots)).toBeNull();
    const people = read('costs: { currency: EUR, people: { default: 40 } }');
    expect(pricesOf(people, compile(people), spots)?.floorOf([1, 2, 3, 1])).toBeNull();
  });

  it('is to the last cents what `simulate` tells of a scenario with that layout', async () => {
    for (const layout of [
      [1, 2, 3, 1],
      [4, 1, 1, 0],
      [0, 5, 2, 3],
    ]) {
      const scenario = withLayout(priced, spots, layout),
        its = compile(scenario),
        replicator = new Replicator({ seed: 'priced', workers: 1 }),
        row = await replicator.row({ key: 'x', model: its, read: whole }, 1, 3);
      for (const seen of row) {
        const cost = unitCost(scenario, its)!(seen);
        expect(prices.of(layout, prices.read(its)(seen))).toBeCloseTo(cost, 8);
      }
      // A replication of one layout that goes as one of another costs what its own floor costs.
      const spent = prices.read(its)(row[0]),
        more = layout.map((places) => places + 2);
      expect(prices.of(more, spent) - prices.of(layout, spent)).toBeCloseTo(
        ((14 + 9 + 20 + 20) * 2 * spent.days) / spent.shipped,
        8,
      );
    }
  });

  it('is not known of a replication that stood still', async () => {
    const replicator = new Replicator({ seed: 'priced', workers: 1 }),
      [seen] = await replicator.row({ key: 'x', model, read: whole }, 1, 1);
    expect(prices.of([1, 2, 3, 1], prices.read(model)({ ...seen, outcome: 'gridlock' }))).toBeNaN();
  });
});

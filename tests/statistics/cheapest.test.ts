import { describe, expect, it } from 'vitest';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { exactLine } from './exact-line.js';
import { exponential, lineYaml, noRoom } from './line.js';

const ZONE = 0.01,
  BUDGET = 6;

/** Prices an hour: of the line itself, of a unit inside, and of a place ahead of each station but the first. */
interface Prices {
  readonly line: number;
  readonly unit: number;
  readonly places: readonly number[];
}

/** All ways to share up to so many places out over so many spots. */
const allocations = (places: number, spots: number): number[][] =>
  spots === 0
    ? [[]]
    : Array.from({ length: places + 1 }, (_, here) => here).flatMap((here) =>
        allocations(places - here, spots - 1).map((rest) => [here, ...rest]),
      );

/** Money a unit, by the Markov chain. The place of each station is floor too. */
function exactCost(
  rates: readonly number[],
  { line, unit, places }: Prices,
  layout: readonly number[],
): number {
  const { throughput, wip } = exactLine(rates, layout),
    floor = places.reduce((sum, price, s) => sum + price * (1 + layout[s]), line);
  return (floor + unit * wip) / throughput;
}

/** The first station, which is no spot, bears the price of the line. */
const yamlOf = (rates: readonly number[], { line, unit, places }: Prices): string => `
${lineYaml({ work: rates.map((rate) => exponential(1 / rate)), between: noRoom(rates.length), hours: 1500 })}
costs:
  currency: EUR
  unit: { day: ${24 * unit} }
  buffer place: { day: 0, stations: { ${[line, ...places].map((price, s) => `station ${s + 1}: ${24 * price}`).join(', ')} } }
`;

describe('the layout of least cost a unit, against all layouts of the exact chain', SLOW, () => {
  it.each([
    // Floor is dear beside the line: few places.
    { rates: [1, 1, 1], prices: { line: 10, unit: 0.2, places: [1, 1] } },
    // The place that brings as much is five times as dear.
    { rates: [1, 1, 1], prices: { line: 20, unit: 0.1, places: [2, 0.4] } },
    // Units inside are dear: hardly any place, however cheap.
    { rates: [1.2, 1, 1.1], prices: { line: 4, unit: 2, places: [0.05, 0.05] } },
  ])(
    'rates $rates, prices $prices: within the zone of the cheapest, by trying all and by going down',
    async ({ rates, prices }) => {
      const costsWithin = (places: number): number[] =>
        allocations(places, rates.length - 1).map((layout) => exactCost(rates, prices, layout));
      // There is something to be found.
      expect(Math.max(...costsWithin(BUDGET))).toBeGreaterThan(1.1 * Math.min(...costsWithin(BUDGET)));
      for (const { goal, seed, places } of [
        { goal: { kind: 'budget', places: BUDGET } as const, seed: 'one', places: BUDGET },
        // Every layout reaches it, so there are no few that could all be tried; the cheapest has far fewer.
        { goal: { kind: 'target', rate: 0.3 } as const, seed: 'two', places: 3 * BUDGET },
      ]) {
        const least = Math.min(...costsWithin(places));
        const { cheapest, chosen } = await built.buffersStudy({
          scenario: scenarioBuilt(yamlOf(rates, prices)),
          file: 'line.yaml',
          goal,
          replications: 12,
          seed,
          workers: 1,
        });
        expect(cheapest!.within).toBe(goal.kind === 'budget' ? costsWithin(BUDGET).length : null);
        const its = exactCost(rates, prices, cheapest!.cheapest.places);
        expect(its, `${seed}: ${cheapest!.cheapest.places.join('-')}`).toBeLessThanOrEqual(
          (1 + ZONE) * least,
        );
        const { cost, dearer } = cheapest!.cheapest;
        expect(its).toBeGreaterThanOrEqual(cost!.low!);
        expect(its).toBeLessThanOrEqual(cost!.high!);
        // What is saved against the chosen layout, known exactly, lies in its interval too.
        const saved = exactCost(rates, prices, chosen.places) - its;
        if (dearer !== null) {
          expect(-saved).toBeGreaterThanOrEqual(dearer.low!);
          expect(-saved).toBeLessThanOrEqual(dearer.high!);
        } else expect(saved).toBe(0);
        // A verdict is never wrong where the truth is known.
        if (cheapest!.verdict === 'cheaper') expect(saved).toBeGreaterThan(0);
        if (cheapest!.verdict === 'as cheap')
          expect(Math.abs(saved)).toBeLessThanOrEqual(ZONE * (its + saved));
      }
    },
  );

  it('and what one place more or fewer brings lies in its interval', async () => {
    const rates = [1, 1, 1, 1],
      { placeByPlace, chosen } = await built.buffersStudy({
        scenario: scenarioBuilt(
          lineYaml({ work: rates.map((rate) => exponential(1 / rate)), between: noRoom(4), hours: 1500 }),
        ),
        file: 'line.yaml',
        goal: { kind: 'budget', places: 4 },
        replications: 12,
        seed: 'around',
        workers: 1,
      });
    const now = exactLine(rates, chosen.places).throughput;
    for (const [s, { points }] of placeByPlace!.spots.entries())
      for (const { places, more, standing } of points) {
        const exact = exactLine(rates, chosen.places.with(s, places)).throughput - now;
        expect(exact).toBeGreaterThanOrEqual(more.low!);
        expect(exact).toBeLessThanOrEqual(more.high!);
        if (standing === 'gains') expect(exact).toBeGreaterThan(0);
        if (standing === 'loses') expect(exact).toBeLessThan(0);
        if (standing === 'cliff') expect(exact).toBeLessThanOrEqual(-3 * ZONE * now * 0.95);
      }
    // Every place of so few matters: one fewer anywhere loses.
    const fewer = placeByPlace!.spots.flatMap(({ points }) => points.filter(({ by }) => by === -1));
    expect(fewer.length).toBeGreaterThan(0);
    expect(fewer.map(({ standing }) => standing)).toEqual(fewer.map(() => 'cliff'));
  });
});

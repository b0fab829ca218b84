import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exactThroughput } from './exact-line.js';
import { exponential, lineYaml, noRoom } from './line.js';

/** Long enough for a half-width well below the half percent that is asserted. */
const HOURS = 11_000;
const exponentials = (means: readonly number[]): string[] => means.map(exponential);
const equal = (stations: number): string[] => exponentials(new Array<number>(stations).fill(1));
const throughput = (work: readonly string[], between: readonly number[], seed?: string): number[] =>
  observations(lineYaml({ work, between, hours: HOURS }), { seed }).map(perHour);

describe(
  'a line of exponential stations without room between them, against Hunt (1956), Operations Research 4(6), 674-683',
  SLOW,
  () => {
    it.each([
      { stations: 2, expected: 2 / 3 },
      { stations: 3, expected: 22 / 39 },
      { stations: 4, expected: 0.514775 },
    ])('ships $expected an hour with $stations stations', ({ stations, expected }) => {
      expectAgreement(throughput(equal(stations), noRoom(stations)), expected);
    });

    it.each([1, 2, 3])('ships (q + 2)/(q + 3) an hour with two stations and q = %i spaces', (q) => {
      expectAgreement(throughput(equal(2), [q]), (q + 2) / (q + 3));
    });
  },
);

describe(
  'balanced lines with blocking after service, against Hillier & Boling (1967), Operations Research 15(2), 286-303',
  SLOW,
  () => {
    it.each([
      { stations: 3, spaces: 1, expected: 0.670466 },
      { stations: 3, spaces: 2, expected: 0.734017 },
      { stations: 3, spaces: 3, expected: 0.776712 },
      { stations: 4, spaces: 1, expected: 0.631153 },
      { stations: 5, spaces: 0, expected: 0.485798 },
      { stations: 6, spaces: 0, expected: 0.466713 },
    ])(
      'ships $expected an hour with $stations stations and $spaces spaces between',
      ({ stations, spaces, expected }) => {
        expectAgreement(throughput(equal(stations), noRoom(stations, spaces)), expected);
      },
    );

    it('ships 8/11 an hour with two Erlang-2 stations', () => {
      expectAgreement(
        throughput(['{ erlang: { mean: 1 h, phases: 2 } }', '{ erlang: { mean: 1 h, phases: 2 } }'], [0]),
        8 / 11,
      );
    });
  },
);

describe('unequal stations', SLOW, () => {
  it('ship 1/E[max(X1, X2)] an hour without room between, Muth (1973), Int. J. of Production Research 11(2), 155-169', () => {
    // exp(1) and exp(2): 1/(1 + 1/2 - 1/3).
    expectAgreement(throughput(exponentials([1, 0.5]), [0]), 6 / 7);
  });

  it('ship as much in reverse order, Muth (1979), Management Science 25(2), 152-158, and as much as their Markov chain says', () => {
    const means = [1, 0.7, 1.2, 0.9],
      between = [2, 0, 1],
      rates = means.map((mean) => 1 / mean);
    const exact = exactThroughput(rates, between);
    expect(exactThroughput(rates.toReversed(), between.toReversed())).toBeCloseTo(exact, 9);
    expectAgreement(throughput(exponentials(means), between), exact);
    expectAgreement(throughput(exponentials(means.toReversed()), between.toReversed(), 'reverse'), exact);
  });

  it.each([
    { spaces: 0, end: 1.0855, middle: 0.8289, expected: 0.567182, balanced: 22 / 39 },
    { spaces: 1, end: 1.0592, middle: 0.8816, expected: 0.673758, balanced: 0.670466 },
  ])(
    'ship up to 1 % more with a faster middle, $spaces spaces between: the bowl of Hillier & Boling (1966), J. of Industrial Engineering 17(12), 651-658',
    ({ spaces, end, middle, expected, balanced }) => {
      // The gain is half a percent, so the interval has to be a good deal narrower: 900,000 hours in all.
      const bowl = observations(
        lineYaml({ work: exponentials([end, middle, end]), between: [spaces, spaces], hours: 45_000 }),
      ).map(perHour);
      expectAgreement(bowl, expected, 0.002);
      expect(expected / balanced).toBeGreaterThan(1.004);
      expect(bowl.reduce((a, b) => a + b, 0) / bowl.length / balanced).toBeGreaterThan(1.002);
    },
  );
});

describe(
  'where the spaces are, four exponential stations, against their Markov chains (shape: Hillier, So & Boling (1993), Management Science 39(1), 126-133)',
  SLOW,
  () => {
    it.each([
      { between: [1, 1, 0], expected: 0.589703 },
      { between: [1, 2, 1], expected: 0.657175 },
      { between: [2, 2, 1], expected: 0.676672 },
      { between: [2, 3, 2], expected: 0.71834 },
    ])('ships $expected an hour with $between', ({ between, expected }) => {
      expect(exactThroughput([1, 1, 1, 1], between)).toBeCloseTo(expected, 6);
      expectAgreement(throughput(equal(4), between), expected);
    });
  },
);

describe('the exact chain used above', SLOW, () => {
  it('gives the published values itself', () => {
    expect(exactThroughput([1, 1, 1], [0, 0])).toBeCloseTo(22 / 39, 9);
    expect(exactThroughput([1, 2], [0])).toBeCloseTo(6 / 7, 9);
    expect(exactThroughput([1, 1], [3])).toBeCloseTo(5 / 6, 9);
  });
});

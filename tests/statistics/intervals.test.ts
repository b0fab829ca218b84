import { describe, expect, it } from 'vitest';
import { fillUniform, STATE_WORDS, seedStream, streamName } from '../../src/random/streams.js';
import { momentsOf } from '../../src/study/statistics/interval.js';
import { skewedInterval } from '../../src/study/statistics/skewed-interval.js';
import { sumOf } from '../../src/study/statistics/sums.js';
import { coverStudies } from '../../tools/coverage/studies.js';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';
import { exponential } from './line.js';

const REPLICATIONS = 20,
  STUDIES = 4000,
  LEVEL = 0.95;

/** Values one after another, each by the inverse of its distribution. */
function drawn(name: string, ofShare: (share: number) => number): () => number {
  const state = new Int32Array(STATE_WORDS),
    shares = new Float64Array(1);
  seedStream(state, 0, streamName('intervals', 1, name));
  return () => {
    fillUniform(shares, 0, 1, state, 0);
    return ofShare(shares[0]);
  };
}

/** Of so many studies of 20 values: shares that have an interval, and of these that hold the truth. */
function covered(truth: number, draw: () => number): { told: number; held: number } {
  const found = Array.from({ length: STUDIES }, () =>
      skewedInterval(momentsOf(Array.from({ length: REPLICATIONS }, draw)), LEVEL),
    ),
    told = found.filter(({ low }) => low !== null);
  return {
    told: told.length / STUDIES,
    held: told.filter(({ low, high }) => low! <= truth && truth <= high!).length / told.length,
  };
}

const rare = (chance: number) => (share: number) => (share < chance ? 1 : 0);

// The share held by an interval that holds 95 % has a standard deviation of 0.34 points in 4,000 studies.
describe('the interval of a mean of 20 replications, in 4,000 studies,', SLOW, () => {
  it.each([
    ['even from 0 to 1', 0.5, (share: number) => share],
    ['exponential, skewness 2', 1, (share: number) => -Math.log1p(-share)],
    // Shares beyond x of 1 / (1 + x)^12, so the mean is 1 / 11 (Lomax 1954).
    ['with a tail of power 12, skewness 2.5', 1 / 11, (share: number) => (1 - share) ** (-1 / 12) - 1],
    [
      '0 in half of them, else exponential',
      0.5,
      (share: number) => (share < 0.5 ? 0 : -Math.log(2 - 2 * share)),
    ],
  ] as const)('holds the truth in 93 to 97 % where values are %s', (name, truth, ofShare) => {
    const { told, held } = covered(truth, drawn(name, ofShare));
    expect(told).toBeGreaterThan(0.99);
    expect(held).toBeGreaterThan(0.93);
    expect(held).toBeLessThan(0.97);
  });

  // Five or more of 20 with a chance of 30 % and 3 %: 76.2 % and 0.03 % by the binomial distribution. Means of 0
  // and 1 take few values, which makes intervals that hold more often than they must.
  it.each([
    [0.3, 0.762],
    [0.03, 0.0003],
  ])('is told of what is seen in %d of replications as often as five see it', (chance, share) => {
    const { told, held } = covered(chance, drawn('rare', rare(chance)));
    expect(Math.abs(told - share)).toBeLessThan(3.5 * Math.sqrt((share * (1 - share)) / STUDIES));
    if (chance === 0.3) expect(held).toBeGreaterThan(0.93);
  });
});

describe('the coverage of a small build', SLOW, () => {
  // Two stations, one space between them, at a quarter of their rate: the first is rarely blocked.
  const yaml = `
scenario: two stations
programme: { arrivals: ${exponential(4)}, length: 300 h, warm up: 20 h }
sites: { hall: { stations: { first: { buffer: unlimited }, second: { buffer: 1 } } } }
route: [{ step: one, at: first, work: ${exponential(1)} }, { step: two, at: second, work: ${exponential(1)} }]
`;

  it('is 93 to 97 % of all intervals', async () => {
    const { coverage, truth } = await coverStudies(built, {
      scenario: scenarioBuilt(yaml),
      file: 'two.yaml',
      seed: 'two stations',
      level: LEVEL,
      studies: 100,
      replications: REPLICATIONS,
      plain: false,
      workers: 1,
      onStudy: () => undefined,
    });
    const all = coverage.byMeasure(truth),
      told = sumOf(all, (each) => each.told),
      held = sumOf(all, (each) => each.held);
    // Of all measures together: their share has a standard error below a point.
    expect(told).toBeGreaterThan(10_000);
    expect(held / told).toBeGreaterThan(0.93);
    expect(held / told).toBeLessThan(0.97);
    // A single one is within three of its own errors of the band.
    for (const name of [
      'wip.total',
      'leadTime.mean',
      'leadTime.p50',
      'leadTime.p90',
      'stations[].share.blocked',
    ]) {
      const { share, error } = all.find((each) => each.name === name)!;
      expect(error).toBeLessThan(0.03);
      expect(share + 3 * error).toBeGreaterThan(0.93);
      expect(share - 3 * error).toBeLessThan(0.97);
    }
  });
});

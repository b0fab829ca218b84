import { describe, it } from 'vitest';
import { controlled, expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential, lineYaml } from './line.js';

/**
 * Waiting lines in hours of mean work 1. Long runs, since what waits in a busy line is correlated over a long
 * time, and as many of them as bring the half-width below 1 %. Waits come from the mean content of the
 * buffer, by Little (1961).
 */
const HOURS = 200_000;

describe('one station with random arrivals at load 0.8', SLOW, () => {
  it('keeps an M/M/1 wait of 4 h, a lead time of 5 h and its exponential law', () => {
    const seen = observations(
      lineYaml({ work: [exponential(1)], between: [], arrivals: exponential(1.25), hours: HOURS }),
      { replications: 30 },
    );
    const busy = seen.map(({ stationShares }) => stationShares[0]),
      less = (values: readonly number[]): number[] => controlled(values, busy, 0.8);
    // Lq = rho^2 / (1 - rho) = 3.2; W = 3.2 / 0.8 = 4.
    expectAgreement(less(seen.map((o) => o.bufferMean[0] / 0.8)), 4, 0.01);
    expectAgreement(less(seen.map(({ leadMean }) => leadMean / 60)), 5, 0.01);
    expectAgreement(busy, 0.8, 0.005);
    // The time in an M/M/1 system is exponential with rate 1 - 0.8; a bin of the quantile is 0.27 % wide,
    // well below the half-width asked for.
    expectAgreement(less(seen.map(({ leadP50 }) => leadP50 / 60)), 5 * Math.log(2), 0.01);
    expectAgreement(less(seen.map(({ leadP95 }) => leadP95 / 60)), 5 * Math.log(20), 0.01);
    // Share of time with an empty buffer: none or one in the system, 1 - rho^2.
    expectAgreement(
      seen.map(({ bufferLevels }) => bufferLevels[0]),
      0.36,
      0.01,
    );
  });

  it('keeps an M/D/1 wait of 2 h (Pollaczek 1930, Khinchine 1932)', () => {
    const seen = observations(
      lineYaml({ work: ['1 h'], between: [], arrivals: exponential(1.25), hours: HOURS }),
      { replications: 20 },
    );
    expectAgreement(
      controlled(
        seen.map((o) => o.bufferMean[0] / 0.8),
        seen.map(({ stationShares }) => stationShares[0]),
        0.8,
      ),
      2,
      0.01,
    );
  });
});

describe('one station with random arrivals at load 0.7 and work of squared cv 2.5', SLOW, () => {
  // Of the same variance, lognormal work has the heavier tail.
  it.each([
    { shape: 'lognormal', replications: 55 },
    { shape: 'gamma', replications: 30 },
  ])(
    'keeps an M/G/1 wait of 4.0833 h with $shape work, where the formula of Kingman (1961) is exact',
    ({ shape, replications }) => {
      const work = `{ ${shape}: { mean: 1 h, cv: ${Math.sqrt(2.5)} } }`;
      const seen = observations(
        lineYaml({ work: [work], between: [], arrivals: exponential(1 / 0.7), hours: HOURS }),
        { replications },
      );
      expectAgreement(
        controlled(
          seen.map((o) => o.bufferMean[0] / 0.7),
          seen.map(({ stationShares }) => stationShares[0]),
          0.7,
        ),
        4.083333,
        0.01,
      );
    },
  );
});

describe('one station with random arrivals at load 0.7 and now a short, now a long work', SLOW, () => {
  it('keeps an M/H2/1 wait of 4.6667 h (Pollaczek 1930, Khinchine 1932)', () => {
    // Mean 0.8 / 2 + 0.2 × 3 = 1, second moment 2 (0.8 / 4 + 0.2 × 9) = 4; W = 0.7 × 4 / (2 × 0.3) = 14 / 3.
    const work =
      '{ mixture: [{ share: 80 %, time: { exponential: { mean: 0.5 h } } }, { share: 20 %, time: { exponential: { mean: 3 h } } }] }';
    const seen = observations(
      lineYaml({ work: [work], between: [], arrivals: exponential(1 / 0.7), hours: HOURS }),
      { replications: 35 },
    );
    expectAgreement(
      controlled(
        seen.map((o) => o.bufferMean[0] / 0.7),
        seen.map(({ stationShares }) => stationShares[0]),
        0.7,
      ),
      14 / 3,
      0.01,
    );
  });
});

describe('stations one after another', SLOW, () => {
  it('are each as if alone, Jackson (1957), Operations Research 5(4), 518-521', () => {
    const seen = observations(
      lineYaml({
        work: [exponential(1), exponential(0.5)],
        between: ['unlimited'],
        arrivals: exponential(1 / 0.7),
        hours: HOURS / 2,
      }),
    );
    // L = rho / (1 - rho) of each: 7/3 and 0.35/0.65.
    expectAgreement(
      seen.map(({ wip }) => wip),
      7 / 3 + 0.35 / 0.65,
      0.01,
    );
    expectAgreement(seen.map(perHour), 0.7, 0.005);
  });
});

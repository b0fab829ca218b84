import { describe, expect, it } from 'vitest';
import { DOWN } from '../../src/flow/floor/states.js';
import type { Observation } from '../../src/measure/observe.js';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exactUnreliable, type Unreliable } from './unreliable-line.js';

const exponential = (minutes: number): string => `{ exponential: { mean: ${minutes} min } }`;
const failing = (up: number, repair: number, more = ''): string =>
  `failures: { every: ${exponential(up)}, repair: ${exponential(repair)}${more} }`;

/**
 * Hopp & Spearman, Factory Physics (1996; 3rd ed. 2008), ch. 8: two machines of 15 min with c0^2 = 0.05 and
 * exponential stops, long and rare or short and frequent. Both are up 0.75 of the time, both take 20 min on
 * average; the squared coefficient of variation of the effective time is 6.25 or 1. Numbers from memory; with
 * t0 = 15, A = 0.75, mr the mean repair: t0^2 c0^2 / A^2 + 2 mr^2 (1 - A) t0 / (A mr), over te^2, gives them
 * exactly.
 */
describe('effective process times of a station that fails, against Hopp & Spearman ch. 8', SLOW, () => {
  const units = 40_000,
    replications = 40;
  it.each([
    { stops: 'long', up: 744, repair: 248, scv: 6.25, halfWidth: 0.04 },
    { stops: 'short', up: 114, repair: 38, scv: 1, halfWidth: 0.02 },
  ])(
    '$stops stops give a mean of 20 min and a squared coefficient of variation of $scv',
    ({ up, repair, scv, halfWidth }) => {
      const seen = observations(
        `
scenario: stops
programme: { arrivals: saturated, quantity: ${units} }
sites: { hall: { stations: { machine: { ${failing(up, repair)} } } } }
route: [{ step: work, at: machine, work: { mean: 15 min, cv: ${Math.sqrt(0.05)}, shape: gamma } }]
`,
        { replications },
      );
      const times = seen.map(({ shippedAt }) =>
        Array.from(shippedAt, (time, i) => time - (i === 0 ? 0 : shippedAt[i - 1])),
      );
      expectAgreement(
        times.map((each) => each.reduce((a, b) => a + b, 0) / units),
        20,
        0.01,
      );
      expectAgreement(
        times.map((each) => each.reduce((a, b) => a + (b - 20) ** 2, 0) / units / 20 ** 2),
        scv,
        halfWidth,
      );
      expectAgreement(
        seen.map(({ stationShares }) => 1 - stationShares[DOWN]),
        0.75,
        0.01,
      );
    },
  );
});

const line = (stations: readonly string[], work: readonly string[], hours: number): string => `
scenario: unreliable line
programme: { arrivals: saturated, length: ${hours} h, warm up: 500 h }
sites:
  hall:
    stations:
${stations.map((keys, i) => `      station ${i + 1}: { ${keys} }`).join('\n')}
route:
${work.map((time, i) => `  - { step: step ${i + 1}, at: station ${i + 1}, work: ${time} }`).join('\n')}
`;

describe('two stations that fail while they work', SLOW, () => {
  it('without a buffer and with equal fixed times share 1 / (1 + sum p/r) (Buzacott 1967)', () => {
    // International Journal of Production Research 5(3), 183-200: one station stops the other, so their stops
    // add. p/r = 30/300 and 22.5/150: 1 / 1.25. His line moves in step; ours may wear a part of a cycle
    // during a stop, some 3e-4 of the value.
    const seen = observations(line([failing(300, 30), failing(150, 22.5)], ['1 min', '1 min'], 3500), {
      replications: 24,
    });
    expectAgreement(
      seen.map((each) => perHour(each) / 60),
      1 / (1 + 30 / 300 + 22.5 / 150),
      0.005,
    );
  });

  const hourly = ({ rate, fails, repaired }: Unreliable): [string, string] => [
    failing(60 / fails, 60 / repaired),
    exponential(60 / rate),
  ];
  const first: Unreliable = { rate: 1, fails: 0.01, repaired: 0.1 };

  it('have the throughput of their Markov chain (model of Gershwin & Berman 1981)', () => {
    const second: Unreliable = { rate: 1.2, fails: 0.05, repaired: 0.2 },
      [keys1, work1] = hourly(first),
      [keys2, work2] = hourly(second);
    const seen = observations(line([keys1, `buffer: 2, ${keys2}`], [work1, work2], 30_000));
    expectAgreement(seen.map(perHour), exactUnreliable(first, second, 2), 0.005);
  });

  it('with 150 spaces between work as the slower one alone, at r / (r + p) = 0.909091', () => {
    const second: Unreliable = { rate: 2, fails: 0.01, repaired: 0.1 },
      [keys1, work1] = hourly(first),
      [keys2, work2] = hourly(second);
    expect(exactUnreliable(first, second, 150)).toBeCloseTo(0.1 / 0.11, 5);
    const seen = observations(line([keys1, `buffer: 150, ${keys2}`], [work1, work2], 30_000));
    expectAgreement(seen.map(perHour), 0.1 / 0.11, 0.005);
  });
});

describe('equipment that fails by the clock', SLOW, () => {
  it('is up for MTTF / (MTTF + MTTR) of the time, however little it is used', () => {
    // Renewal theory, any text. MTTF 60 h, MTTR 4 h: 0.9375; in two places, of which a unit every 10 h uses
    // little.
    const seen = observations(`
scenario: clock
programme: { arrivals: 10 h, length: 60000 h, warm up: 0 min }
sites: { hall: { stations: { machine: { places: 2, buffer: unlimited, ${failing(3600, 240, ', by: calendar time')} } } } }
route: [{ step: work, at: machine, work: 1 h }]
`);
    expectAgreement(
      seen.map(({ stationShares }) => 1 - stationShares[DOWN]),
      60 / 64,
      0.005,
    );
    expectAgreement(
      seen.map(({ failures: { count } }) => count[0]),
      (2 * 60_000) / 64,
      0.01,
    );
    expectAgreement(
      seen.map(({ failures: { minutes, repairs } }: Observation) => minutes[0] / repairs[0]),
      240,
      0.02,
    );
  });
});

import { describe, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

/** P(N >= n) of a Poisson number N. */
function poissonTail(mean: number, n: number): number {
  let term = Math.exp(-mean),
    below = 0;
  for (let k = 0; k < n; k++) {
    below += term;
    term *= mean / (k + 1);
  }
  return 1 - below;
}

/**
 * Units come at random, one an hour, and take a part each; everyone has a place to wait in, so demand is
 * backordered.
 */
const scenario = (supply: string): string => `
scenario: supply
programme: { start: 2001-01-01, arrivals: ${exponential(1)}, length: 25000 h, warm up: 1000 h }
sites: { hall: { stations: { floor: { places: 100 } } } }
supplies: { packs: { site: hall, ${supply} } }
route: [{ step: fit, at: floor, parts: { packs: 1 } }]
`;
const PLACES = 100,
  SHORT_PARTS = 4;

/**
 * One for one: whenever a part is asked for, one is ordered, S in stock and on order less what waits. Orders
 * outstanding are the customers of an M/G/infinity queue, Poisson with mean lambda L whatever the form of the
 * lead time (Palm 1938, Analysis of the Erlang traffic formulae for busy-signal arrangements, Ericsson
 * Technics 6; Feeney & Sherbrooke 1966, The (s-1, s) inventory policy under compound Poisson demand,
 * Management Science 12(5), 391-411; both from memory).
 */
describe("a base stock S with any lead time, against Palm's theorem", SLOW, () => {
  it.each([
    { S: 3, mean: 4, lead: '4 h', replications: 20 },
    { S: 4, mean: 4, lead: exponential(4), replications: 50 },
    { S: 5, mean: 6, lead: '{ discrete: { 1 h: 50 %, 11 h: 50 % } }', replications: 35 },
  ])('S = $S, lead time $lead: no stock with P(Poisson($mean) >= S)', ({ S, mean, lead, replications }) => {
    const seen = observations(
      scenario(`at start: ${S}, reorder: { level: ${S - 1}, lot: 1, lead time: ${lead} }`),
      { replications },
    );
    expectAgreement(
      seen.map(({ stockOut }) => stockOut[0]),
      poissonTail(mean, S),
      0.01,
    );
    expectAgreement(
      seen.map(({ supplies }) => supplies.onOrder[0]),
      mean,
      0.01,
    );
    // Backorders: the mean of (N - S)+ is the sum of P(N > n) for n >= S.
    let backorders = 0;
    for (let n = S; n < 100; n++) backorders += poissonTail(mean, n + 1);
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[SHORT_PARTS] * PLACES),
      backorders,
      0.01,
    );
    expectAgreement(
      seen.map(({ supplies, minutes }) => supplies.waitMinutes[0] / minutes),
      backorders,
      0.01,
    );
  });
});

/**
 * (r, Q) with a lead time that does not vary: the position is uniform on r + 1 .. r + Q and independent of
 * what is asked for in the lead time that follows, so P(no stock) = mean over these positions y of
 * P(Poisson(lambda L) >= y); the fill rate is the rest, since arrivals at random see time averages (Hadley &
 * Whitin 1963, Analysis of Inventory Systems, ch. 4; Wolff 1982, Operations Research 30(2), 223-231; both
 * from memory).
 */
describe('a reorder level r and lots of Q, against Hadley & Whitin', SLOW, () => {
  it.each([
    { r: 4, Q: 6, L: 5, replications: 24 },
    { r: 2, Q: 10, L: 8, replications: 24 },
  ])('r = $r, Q = $Q, lead time $L h', ({ r, Q, L, replications }) => {
    const seen = observations(
      scenario(`at start: ${r + Q}, reorder: { level: ${r}, lot: ${Q}, lead time: ${L} h }`),
      { replications },
    );
    const positions = Array.from({ length: Q }, (_, i) => r + 1 + i),
      out = positions.reduce((sum, y) => sum + poissonTail(L, y), 0) / Q;
    expectAgreement(
      seen.map(({ stockOut }) => stockOut[0]),
      out,
      0.01,
    );
    // Fill rate: units that did not have to wait.
    expectAgreement(
      seen.map(({ supplies, entered }) => 1 - supplies.waits[0] / entered),
      1 - out,
      0.01,
    );
    // On hand, the mean of (y - N)+: the sum of P(N <= n) for n < y.
    const stock =
      positions.reduce(
        (sum, y) =>
          sum + Array.from({ length: y }, (_, n) => 1 - poissonTail(L, n + 1)).reduce((a, b) => a + b, 0),
        0,
      ) / Q;
    expectAgreement(
      seen.map(({ stockMean }) => stockMean[0]),
      stock,
      0.01,
    );
  });
});

/**
 * A component that fails its test with chance p is replaced and tested again: the number used for each kit is
 * geometric with mean 1 / (1 - p) (any textbook of probability). With a limit of L replacements the mean is
 * (1 - p^(L + 1)) / (1 - p).
 */
describe('components used up by a test that replaces them', SLOW, () => {
  it.each([
    { p: 0.3, limit: 1000 },
    { p: 0.5, limit: 2 },
  ])('p = $p, at most $limit replacements', ({ p, limit }) => {
    const seen = observations(`
scenario: kits
programme: { arrivals: saturated, length: 4000 h, warm up: 100 h }
sites: { hall: { stations: { bench: {}, loom bench: {}, line: {} } } }
feeders:
  looms: { stock: 9, at start: 9, route: [{ step: make loom, at: loom bench, work: ${exponential(0.1)} }] }
  kits:
    stock: 2
    route:
      - { step: wire, at: bench, parts: { looms: 1 }, work: 10 min }
      - { step: test, at: bench, work: 5 min, fails: { chance: ${p}, back to: wire, limit: ${limit} } }
route: [{ step: fit, at: line, parts: { kits: 1 }, work: ${exponential(1)} }]
`);
    // Steps: fit, make loom, wire, test. A loom is used at each wiring, a kit at each fit.
    expectAgreement(
      seen.map(({ stepVisits }) => stepVisits[2] / stepVisits[0]),
      (1 - p ** (limit + 1)) / (1 - p),
      0.01,
    );
    expectAgreement(
      seen.map(({ stepVisits }) => stepVisits[1] / stepVisits[0]),
      (1 - p ** (limit + 1)) / (1 - p),
      0.01,
    );
  });
});

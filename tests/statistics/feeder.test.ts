import { describe, it } from 'vitest';
import { SHORT_PARTS, STATE_COUNT } from '../../src/flow/floor/states.js';
import { controlled, expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

/**
 * A feeder with one bench that builds to a target stock S while units take one part each, at random: the
 * shortfall below S is an M/M/1 line, so P(no stock) = rho^S, mean stock S - rho (1 - rho^S)/(1 - rho), units
 * that wait rho^(S+1)/(1 - rho) (Buzacott & Shanthikumar 1993, Stochastic Models of Manufacturing Systems,
 * ch. 4; formulas from memory).
 */
describe('a feeder as a made-to-stock M/M/1 line', SLOW, () => {
  const places = 80;

  // Shortfalls beyond the stock are rarer, and come in longer spells, the higher the target: more
  // replications for the same 1 %.
  it.each([
    { target: 1, rho: 0.8, replications: 24 },
    { target: 2, rho: 0.7, replications: 34 },
    { target: 4, rho: 0.7, replications: 60 },
  ])('with a target of $target at load $rho', ({ target, rho, replications }) => {
    const seen = observations(
      `
scenario: feeder
programme: { arrivals: ${exponential(1 / rho)}, length: 200000 h, warm up: 1000 h }
sites:
  hall: { stations: { bench: { buffer: unlimited }, floor: { places: ${places} } } }
feeders:
  axles: { stock: ${target}, at start: ${target}, route: [{ step: build, at: bench, work: ${exponential(1)} }] }
route:
  - { step: fit, at: floor, parts: { axles: 1 } }
`,
      { replications },
    );
    expectAgreement(
      seen.map(({ stockOut }) => stockOut[0]),
      rho ** target,
      0.01,
    );
    expectAgreement(
      seen.map(({ stockMean }) => stockMean[0]),
      target - (rho * (1 - rho ** target)) / (1 - rho),
      0.01,
    );
    const wait = rho ** (target + 1) / (1 - rho);
    expectAgreement(
      controlled(
        seen.map(({ stationShares }) => stationShares[STATE_COUNT + SHORT_PARTS] * places),
        seen.map(({ stationShares }) => stationShares[0]),
        rho,
      ),
      wait,
      0.01,
    );
  });
});

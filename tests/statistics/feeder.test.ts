import { describe, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { SHORT_PARTS, STATE_COUNT } from '../../src/flow/states.js';
import { exponential } from './line.js';

/**
 * A feeder with one bench that builds to a target stock S while units take one part each, at random: the shortfall below S is
 * an M/M/1 line, so P(no stock) = rho^S, mean stock S - rho (1 - rho^S)/(1 - rho), units that wait rho^(S+1)/(1 - rho)
 * (Buzacott & Shanthikumar 1993, Stochastic Models of Manufacturing Systems, ch. 4; formulas from memory).
 */
describe('a feeder as a made-to-stock M/M/1 line at load 0.8', SLOW, () => {
  const rho = 0.8, places = 80;

  // Shortfalls beyond the stock are rarer, and come in longer spells, the higher the target: more replications for the same 1 %.
  it.each([
    { target: 1, replications: 32 },
    { target: 3, replications: 70 },
    { target: 6, replications: 175 },
  ])('with a target of $target', ({ target, replications }) => {
    const seen = observations(`
scenario: feeder
programme: { arrivals: ${exponential(1 / rho)}, length: 200000 h, warm up: 1000 h }
sites:
  hall: { stations: { bench: { buffer: unlimited }, floor: { places: ${places} } } }
feeders:
  axles: { stock: ${target}, at start: ${target}, route: [{ step: build, at: bench, work: ${exponential(1)} }] }
route:
  - { step: fit, at: floor, parts: { axles: 1 } }
`, { replications });
    expectAgreement(seen.map(({ stockOut }) => stockOut[0]!), rho ** target, 0.01);
    expectAgreement(seen.map(({ stockMean }) => stockMean[0]!), target - (rho * (1 - rho ** target)) / (1 - rho), 0.01);
    // The bench is busy a share rho of the time on average. A replication in which it was busier by chance had more units wait;
    // taking off what the slope of the formula by rho gives for that leaves the mean as it is and halves the variance (a
    // control variate of fixed slope: Lavenberg & Welch 1981, Management Science 27(3), 322-335, from memory).
    const wait = rho ** (target + 1) / (1 - rho), slope = wait * ((target + 1) / rho + 1 / (1 - rho));
    expectAgreement(seen.map(({ stationShares }) => stationShares[0]!), rho, 0.005);
    expectAgreement(seen.map(({ stationShares }) => stationShares[STATE_COUNT + SHORT_PARTS]! * places - slope * (stationShares[0]! - rho)), wait, 0.01);
  });
});

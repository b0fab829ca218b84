import { describe, it } from 'vitest';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential, lineYaml } from './line.js';
import { SHORT_CREW } from '../../src/flow/states.js';

/**
 * Waiting lines in hours of mean work 1. Long runs, since what waits in a busy line is correlated over a long time; the
 * half-widths asserted, 0.5 to 5 %, are what a few seconds allow.
 */
const HOURS = 200_000;

describe('one station with random arrivals at load 0.8', SLOW, () => {
  it('keeps an M/M/1 wait of 4 h, a lead time of 5 h and its exponential law', () => {
    const seen = observations(lineYaml({ work: [exponential(1)], between: [], arrivals: exponential(1.25), hours: HOURS }));
    // Lq = rho^2 / (1 - rho) = 3.2; by Little (1961), W = 3.2 / 0.8 = 4.
    expectAgreement(seen.map((o) => o.bufferMean[0]! / 0.8), 4, 0.02);
    expectAgreement(seen.map(({ leadMean }) => leadMean / 60), 5, 0.02);
    expectAgreement(seen.map(({ stationShares }) => stationShares[0]!), 0.8, 0.005);
    // The time in an M/M/1 system is exponential with rate 1 - 0.8; a bin of the quantile is 0.27 % wide, far below the half-width asked for.
    expectAgreement(seen.map(({ leadP50 }) => leadP50 / 60), 5 * Math.log(2), 0.02);
    expectAgreement(seen.map(({ leadP95 }) => leadP95 / 60), 5 * Math.log(20), 0.025);
    // Share of time with an empty buffer: none or one in the system, 1 - rho^2.
    expectAgreement(seen.map(({ bufferLevels }) => bufferLevels[0]!), 0.36, 0.02);
  });

  it('keeps an M/D/1 wait of 2 h (Pollaczek 1930, Khinchine 1932)', () => {
    const seen = observations(lineYaml({ work: ['1 h'], between: [], arrivals: exponential(1.25), hours: HOURS }));
    expectAgreement(seen.map((o) => o.bufferMean[0]! / 0.8), 2, 0.02);
  });
});

describe('one station with random arrivals at load 0.7 and work of squared cv 2.5', SLOW, () => {
  it.each(['lognormal', 'gamma'])('keeps an M/G/1 wait of 4.0833 h with %s work, where the formula of Kingman (1961) is exact', (shape) => {
    const work = `{ ${shape}: { mean: 1 h, cv: ${Math.sqrt(2.5)} } }`;
    const seen = observations(lineYaml({ work: [work], between: [], arrivals: exponential(1 / 0.7), hours: HOURS }));
    expectAgreement(seen.map((o) => o.bufferMean[0]! / 0.7), 4.083333, 0.03);
  });
});

describe('several places or people, against Erlang C (Erlang 1917)', SLOW, () => {
  const cases = [
    { servers: 2, load: 1, delayed: 1 / 3 },
    { servers: 3, load: 2, delayed: 4 / 9 },
    { servers: 5, load: 4, delayed: 0.554113 },
    { servers: 10, load: 8, delayed: 0.40918 },
  ];

  it.each(cases)('$servers places at load $load let $delayed of the units wait', ({ servers, load, delayed }) => {
    const seen = observations(lineYaml({ work: [exponential(1)], between: [], arrivals: exponential(1 / load), places: servers, hours: 200_000 / load }));
    const rho = load / servers;
    expectAgreement(seen.map((o) => o.bufferMean[0]!), (delayed * rho) / (1 - rho), 0.03);
    // By arrivals that see time averages (Wolff 1982), the share of time with somebody waiting is the chance of delay times rho.
    expectAgreement(seen.map(({ bufferLevels }) => 1 - bufferLevels[0]!), delayed * rho, 0.015);
  });

  it.each(cases.slice(0, 3))('a crew of $servers at load $load does so too, at a station where everyone has a place', ({ servers, load, delayed }) => {
    const places = 80, rho = load / servers;
    const seen = observations(`
scenario: crew
programme: { arrivals: ${exponential(1 / load)}, length: ${60_000 / load} h, warm up: 1000 h }
sites:
  hall: { crews: { fitters: ${servers} }, stations: { floor: { places: ${places} } } }
route:
  - { step: fit, at: floor, crew: { fitters: 1 }, work: ${exponential(1)} }
`);
    expectAgreement(seen.map(({ stationShares }) => stationShares[SHORT_CREW]! * places), (delayed * rho) / (1 - rho), 0.05);
    expectAgreement(seen.map(({ crewBusy }) => crewBusy[0]!), rho, 0.01);
  });
});

describe('stations one after another', SLOW, () => {
  it('are each as if alone, Jackson (1957), Operations Research 5(4), 518-521', () => {
    const seen = observations(lineYaml({ work: [exponential(1), exponential(0.5)], between: ['unlimited'], arrivals: exponential(1 / 0.7), hours: HOURS }));
    // L = rho / (1 - rho) of each: 7/3 and 0.35/0.65.
    expectAgreement(seen.map(({ wip }) => wip), 7 / 3 + 0.35 / 0.65, 0.02);
    expectAgreement(seen.map(perHour), 0.7, 0.005);
  });
});

import { describe, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential, lineYaml } from './line.js';
import { SHORT_CREW } from '../../src/flow/states.js';

describe('several places or people, against Erlang C (Erlang 1917)', SLOW, () => {
  // The busier each server, the longer what waits is correlated: more replications for the same 1 %.
  const cases = [
    { servers: 2, load: 1, delayed: 1 / 3, replications: 30 },
    { servers: 3, load: 2, delayed: 4 / 9, replications: 40 },
    { servers: 5, load: 4, delayed: 0.554113, replications: 90 },
    { servers: 10, load: 8, delayed: 0.40918, replications: 120 },
  ];

  it.each(cases)('$servers places at load $load let $delayed of the units wait', ({ servers, load, delayed, replications }) => {
    const seen = observations(lineYaml({ work: [exponential(1)], between: [], arrivals: exponential(1 / load), places: servers, hours: 200_000 / load }), { replications });
    const rho = load / servers;
    expectAgreement(seen.map((o) => o.bufferMean[0]!), (delayed * rho) / (1 - rho), 0.01);
    // By arrivals that see time averages (Wolff 1982), the share of time with somebody waiting is the chance of delay times rho.
    expectAgreement(seen.map(({ bufferLevels }) => 1 - bufferLevels[0]!), delayed * rho, 0.01);
  });

  it.each(cases.slice(0, 3))('a crew of $servers at load $load does so too, at a station where everyone has a place', ({ servers, load, delayed, replications }) => {
    const places = 80, rho = load / servers;
    const seen = observations(`
scenario: crew
programme: { arrivals: ${exponential(1 / load)}, length: ${150_000 / load} h, warm up: 1000 h }
sites:
  hall: { crews: { fitters: ${servers} }, stations: { floor: { places: ${places} } } }
route:
  - { step: fit, at: floor, crew: { fitters: 1 }, work: ${exponential(1)} }
`, { replications });
    expectAgreement(seen.map(({ stationShares }) => stationShares[SHORT_CREW]! * places), (delayed * rho) / (1 - rho), 0.01);
    expectAgreement(seen.map(({ crewBusy }) => crewBusy[0]!), rho, 0.01);
  });
});

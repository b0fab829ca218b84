import { describe, expect, it } from 'vitest';
import { SHORT_CREW } from '../../src/flow/floor/states.js';
import { controlled, expectAgreement, observations, SLOW } from './agree.js';
import { exponential, lineYaml } from './line.js';

/** Share of units that wait, Erlang (1917): from his loss formula, by its recursion over the servers. */
function erlangC(servers: number, load: number): number {
  let lost = 1;
  for (let n = 1; n <= servers; n++) lost = (load * lost) / (n + load * lost);
  return lost / (1 - (load / servers) * (1 - lost));
}

describe('several places or people, against Erlang C (Erlang 1917)', SLOW, () => {
  // The busier each server, the longer what waits is correlated: more replications for the same 1 %.
  const cases = [
    { servers: 2, load: 1, units: 120_000, replications: 20 },
    { servers: 3, load: 2, units: 200_000, replications: 20 },
    { servers: 5, load: 3.5, units: 200_000, replications: 30 },
    { servers: 10, load: 7, units: 200_000, replications: 50 },
  ];

  it('has a formula that gives the known values', () => {
    // 1/3 and 4/9 by hand; the other two as tables have them, from memory.
    expect(erlangC(2, 1)).toBeCloseTo(1 / 3, 12);
    expect(erlangC(3, 2)).toBeCloseTo(4 / 9, 12);
    expect(erlangC(5, 4)).toBeCloseTo(0.554113, 6);
    expect(erlangC(10, 8)).toBeCloseTo(0.40918, 5);
  });

  it.each(cases)(
    '$servers places at load $load let as many units wait as he says',
    ({ servers, load, units, replications }) => {
      const seen = observations(
        lineYaml({
          work: [exponential(1)],
          between: [],
          arrivals: exponential(1 / load),
          places: servers,
          hours: units / load,
        }),
        { replications },
      );
      const rho = load / servers,
        delayed = erlangC(servers, load),
        busy = seen.map(({ stationShares }) => stationShares[0]);
      expectAgreement(
        controlled(
          seen.map((o) => o.bufferMean[0]),
          busy,
          rho,
        ),
        (delayed * rho) / (1 - rho),
        0.01,
      );
      // By arrivals that see time averages (Wolff 1982), the share of time with somebody waiting is the
      // chance of delay times rho.
      expectAgreement(
        controlled(
          seen.map(({ bufferLevels }) => 1 - bufferLevels[0]),
          busy,
          rho,
        ),
        delayed * rho,
        0.01,
      );
    },
  );

  it.each(cases.slice(0, 3))(
    'a crew of $servers at load $load does so too, at a station where everyone has a place',
    ({ servers, load, units, replications }) => {
      const places = 80,
        rho = load / servers,
        delayed = erlangC(servers, load);
      const seen = observations(
        `
scenario: crew
programme: { arrivals: ${exponential(1 / load)}, length: ${(0.75 * units) / load} h, warm up: 1000 h }
sites:
  hall: { crews: { fitters: ${servers} }, stations: { floor: { places: ${places} } } }
route:
  - { step: fit, at: floor, crew: { fitters: 1 }, work: ${exponential(1)} }
`,
        { replications },
      );
      expectAgreement(
        controlled(
          seen.map(({ stationShares }) => stationShares[SHORT_CREW] * places),
          seen.map(({ crewBusy }) => crewBusy[0]),
          rho,
        ),
        (delayed * rho) / (1 - rho),
        0.01,
      );
      expectAgreement(
        seen.map(({ crewBusy }) => crewBusy[0]),
        rho,
        0.01,
      );
    },
  );
});

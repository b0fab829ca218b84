import { describe, expect, it } from 'vitest';
import { SHORT_PARTS, STARVED, STATE_COUNT, WORKING } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { oneBench, passingBay, twoSteps } from './exact-kits.js';
import { exponential } from './line.js';

/** Exponential times against exact Markov chains, which are solved in `exact-kits.ts`: hours. */
describe('full kits and waits in the buffer, against exact chains', SLOW, () => {
  const rates = { loom: 1.6, step: 1.7, fit: 0.8 };
  const replications = { replications: 36 };
  const length = 'arrivals: saturated, length: 20000 h, warm up: 200 h';

  const steps = (key: string): string => `
scenario: two steps
programme: { ${length} }
sites: { hall: { stations: { first: {}, second: {}, line: {}, loom bench: { buffer: unlimited } } } }
feeders:
  dashboards:
    stock: 1
    full kit: ${key}
    route:
      - { step: open, at: first, parts: { looms: 1 }, work: ${exponential(1 / rates.step)} }
      - { step: close, at: second, parts: { looms: 1 }, work: ${exponential(1 / rates.step)} }
  looms: { stock: 2, route: [{ step: bind, at: loom bench, work: ${exponential(1 / rates.loom)} }] }
route: [{ step: fit, at: line, parts: { dashboards: 1 }, work: ${exponential(1 / rates.fit)} }]
`;

  it.each([true, false])('a kit for two steps, full kit: %s', (fullKit) => {
    const seen = observations(steps(String(fullKit)), replications),
      exact = twoSteps(rates, fullKit);
    const share = (station: number, state: number): number[] =>
      seen.map(({ stationShares }) => stationShares[station * STATE_COUNT + state]);
    expectAgreement(seen.map(perHour), exact.throughput, 0.005);
    expectAgreement(share(2, SHORT_PARTS), exact.lineShort, 0.01);
    expectAgreement(share(0, WORKING), exact.firstWorks, 0.01);
    if (fullKit) expect(Math.max(...share(1, SHORT_PARTS))).toBe(0);
    else expectAgreement(share(1, SHORT_PARTS), exact.secondShort, 0.01);
  });

  it('a bench that builds dashboards and the looms that go into them', () => {
    const seen = observations(
      `
scenario: one bench
programme: { ${length} }
sites: { hall: { stations: { bench: { buffer: unlimited }, line: {} } } }
feeders:
  dashboards: { stock: 1, route: [{ step: wire, at: bench, parts: { looms: 2 }, work: ${exponential(1 / rates.step)} }] }
  looms: { stock: 2, route: [{ step: bind, at: bench, work: ${exponential(1 / rates.loom)} }] }
route: [{ step: fit, at: line, parts: { dashboards: 1 }, work: ${exponential(1 / rates.fit)} }]
`,
      replications,
    );
    const exact = oneBench(rates);
    expectAgreement(seen.map(perHour), exact.throughput, 0.005);
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[STARVED]),
      exact.benchIdle,
      0.01,
    );
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[STATE_COUNT + SHORT_PARTS]),
      exact.lineShort,
      0.01,
    );
  });

  it('a bay ahead of which some wait for looms and others pass', () => {
    const bay = { come: 1.2, bay: 1.5, loom: 0.5, red: 0.4 };
    const seen = observations(
      `
scenario: passing
programme: { ${length}, options: { colour: { red: ${bay.red * 100} %, white: ${100 - bay.red * 100} % } } }
sites: { hall: { stations: { yard: {}, bay: { buffer: 1 }, loom bench: {} } } }
feeders: { looms: { stock: 1, route: [{ step: bind, at: loom bench, work: ${exponential(1 / bay.loom)} }] } }
route:
  - { step: come, at: yard, work: ${exponential(1 / bay.come)} }
  - { step: fit, at: bay, when: { colour: red }, parts: { looms: 1 }, wait for parts: in buffer, work: ${exponential(1 / bay.bay)} }
  - { step: plain, at: bay, when: { colour: white }, work: ${exponential(1 / bay.bay)} }
`,
      replications,
    );
    const exact = passingBay(bay);
    const share = (state: number): number[] =>
      seen.map(({ stationShares }) => stationShares[STATE_COUNT + state]);
    expectAgreement(seen.map(perHour), exact.throughput, 0.005);
    expectAgreement(share(SHORT_PARTS), exact.short, 0.01);
    expectAgreement(share(STARVED), exact.starved, 0.01);
  });
});

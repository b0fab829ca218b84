import { describe, expect, it } from 'vitest';
import { SHORT_CARRIER, SHORT_CREW } from '../../src/flow/floor/states.js';
import type { Observation } from '../../src/measure/observe.js';
import { controlled, expectAgreement, observations, perHour, SLOW } from './agree.js';
import { type ClosedNetwork, carrierYaml, meanValueAnalysis, productForm } from './closed-network.js';
import { exponential } from './line.js';
import { type ReworkLoop, reworkLoop } from './rework-loop.js';

/**
 * 0.874676 of these was found beforehand by mean-value analysis, convolution and the full Markov chain; no
 * printed source.
 */
const threeStations: ClosedNetwork = { hours: [1, 0.8, 0.5], carriers: 5 };
/**
 * Penny Fab One of Hopp & Spearman, Factory Physics, ch. 7 (from memory), practical worst case: w / (W0 + w -
 * 1) rb = 4/7 x 0.5.
 */
const pennyFab: ClosedNetwork = { hours: [2, 2, 2, 2], carriers: 4 };
const withWayBack: ClosedNetwork = { hours: [1, 0.8, 0.5], delay: 3, carriers: 5 };

describe('carriers, against closed networks (Gordon & Newell 1967; Reiser & Lavenberg 1980)', SLOW, () => {
  it('have rates on which the two formulas and the known values agree', () => {
    expect(meanValueAnalysis(threeStations)).toBeCloseTo(0.874676, 6);
    expect(meanValueAnalysis(pennyFab)).toBeCloseTo(2 / 7, 12);
    for (const network of [threeStations, pennyFab, withWayBack])
      expect(productForm(network)).toBeCloseTo(meanValueAnalysis(network), 12);
  });

  it.each([
    ['five carts and three stations', threeStations],
    ['Penny Fab One with four carts', pennyFab],
    ['a way back of 3 h in the mean', withWayBack],
  ])('%s', (_, network) => {
    const rate = meanValueAnalysis(network),
      seen = observations(carrierYaml(network, exponential, 9_000));
    expectAgreement(seen.map(perHour), rate, 0.01);
    // The first station is always taken; what it is not short of a cart, it works, for its rate x its time.
    expectAgreement(
      seen.map(({ stationShares }) => 1 - stationShares[SHORT_CARRIER]),
      rate * network.hours[0],
      0.01,
    );
    // Little's law: carts on the way back.
    const { delay } = network;
    if (delay !== undefined)
      expectAgreement(
        seen.map(({ kept }) => kept.coming[0]),
        rate * delay,
        0.01,
      );
  });
});

describe('carriers and units sent back', SLOW, () => {
  it('keep to the closed network with visit ratios where a unit is sent back from within (Gordon & Newell 1967)', () => {
    // One in five goes back from the third station to the second with its cart: 1, 1.25 and 1.25 visits. It
    // goes first there; with exponential work of one mean that changes who waits, not how many.
    const yaml = carrierYaml(threeStations, exponential, 9_000).replace(
      /step: step 2,/,
      'step: step 2, fails: { chance: 20 %, back to: step 1, limit: unlimited },',
    );
    expect(yaml).toContain('back to');
    expectAgreement(
      observations(yaml).map(perHour),
      meanValueAnalysis({ hours: [1, 1.25 * 0.8, 1.25 * 0.5], carriers: 5 }),
      0.01,
    );
  });

  it('ship as the exact chain does where units sent back from behind go on without their cart', () => {
    const loop: ReworkLoop = { first: 1, last: 0.5, test: 0.4, back: 0.3, carriers: 2 },
      exact = reworkLoop(loop);
    const seen = observations(`
scenario: rework loop
programme: { arrivals: saturated, length: 12000 h, warm up: 500 h }
sites: { hall: { stations: { a: {}, b: { buffer: unlimited }, t: { buffer: unlimited } } } }
carriers: { carts: { count: ${loop.carriers}, from: one, to: two } }
route:
  - { step: one, at: a, work: ${exponential(loop.first)} }
  - { step: two, at: b, work: ${exponential(loop.last)} }
  - { step: test, at: t, work: ${exponential(loop.test)}, fails: { chance: ${100 * loop.back} %, back to: two, limit: unlimited } }
`);
    expectAgreement(seen.map(perHour), exact.throughput, 0.01);
    expectAgreement(
      seen.map(({ kept }) => kept.held[0]),
      exact.held,
      0.01,
    );
  });

  it('are kept for once or for every visit of the step, by the key (Little 1961)', () => {
    // Room and carts for everybody: kept at the first step and once at the second, or 1 / (1 - 0.3) times.
    const seen = observations(`
scenario: room for all
programme: { arrivals: ${exponential(1)}, length: 12000 h, warm up: 500 h }
sites: { hall: { stations: { a: { places: 40 }, b: { places: 40 }, t: { places: 40 } } } }
carriers:
  off: { count: 90, from: one, to: two }
  on: { count: 90, from: one, to: two, in rework: again }
route:
  - { step: one, at: a, work: ${exponential(1)} }
  - { step: two, at: b, work: ${exponential(2)} }
  - { step: test, at: t, work: ${exponential(1)}, fails: { chance: 30 %, back to: two, limit: unlimited } }
`);
    for (const [id, hours] of [3, 1 + 2 / 0.7].entries())
      expectAgreement(
        seen.map(({ kept }) => kept.held[id]),
        hours,
        0.01,
      );
  });
});

describe('teams of two, against Erlang C (Erlang 1917)', SLOW, () => {
  it.each([
    { teams: 2, load: 1, delayed: 1 / 3, replications: 20 },
    { teams: 3, load: 2, delayed: 4 / 9, replications: 24 },
  ])(
    '$teams teams of one crew at load $load let $delayed of the units wait, with a second step in their hold',
    ({ teams, load, delayed, replications }) => {
      const places = 40,
        rho = load / teams,
        busy = ({ crewBusy }: Observation): number => crewBusy[0];
      const seen = observations(
        `
scenario: teams
programme: { arrivals: ${exponential(1 / load)}, length: ${150_000 / load} h, warm up: 1000 h }
sites:
  hall: { crews: { fitters: ${2 * teams} }, stations: { floor: { places: ${places} }, gate: { places: ${places} } } }
teams: { pair: { crew: fitters, people: 2, from: fit, to: hand over } }
route:
  - { step: fit, at: floor, work: ${exponential(1)} }
  - { step: hand over, at: gate }
`,
        { replications },
      );
      expectAgreement(
        controlled(
          seen.map(({ stationShares }) => stationShares[SHORT_CREW] * places),
          seen.map(busy),
          rho,
        ),
        (delayed * rho) / (1 - rho),
        0.01,
      );
      expectAgreement(seen.map(busy), rho, 0.01);
      expectAgreement(
        seen.map(({ kept, minutes }) => (kept.held[0] * minutes) / kept.ended[0] / 60),
        1,
        0.01,
      );
    },
  );
});

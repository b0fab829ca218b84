import { describe, it } from 'vitest';
import { WORKING } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential } from './line.js';

const station = (a: number, b: number, people: string): string => `
scenario: side by side
programme: { arrivals: saturated, length: 20000 h, warm up: 100 h }
sites:
  hall: { crews: { fitters: 9 }, stations: { stall: {${people}}, gate: { buffer: unlimited } } }
route:
  - at: stall
    side by side: [{ step: a, crew: { fitters: 1 }, work: ${exponential(a)} }, { step: b, crew: { fitters: 1 }, work: ${exponential(b)} }]
  - { step: out, at: gate, work: 1 min }
`;

describe('two exponential works side by side', SLOW, () => {
  // E max(X, Y) = 1/a + 1/b - 1/(a + b) for rates a and b: the sum less the mean of the shorter.
  it.each([
    [1, 1],
    [1, 0.25],
  ])('of %d h and %d h keep the place for the longer of them', (a, b) => {
    expectAgreement(observations(station(a, b, '')).map(perHour), 1 / (a + b - 1 / (1 / a + 1 / b)), 0.01);
  });

  it('keep it for their sum where there is room for one person', () => {
    const seen = observations(station(1, 0.25, ' people: 1 '));
    expectAgreement(seen.map(perHour), 1 / 1.25, 0.01);
    expectAgreement(
      seen.map(({ stationShares }) => stationShares[WORKING]),
      1,
      0.01,
    );
  });
});

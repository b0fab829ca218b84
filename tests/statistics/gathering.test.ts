import { describe, expect, it } from 'vitest';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

const lane = (leaves: string, capacity: number): string => `
scenario: lane
programme: { start: 2027-03-01, arrivals: ${exponential(0.5)}, length: 10000 h, warm up: 500 h }
sites:
  here: { stations: { gate: { places: 5 } } }
  there: { stations: { yard: { places: 5, buffer: unlimited } } }
lanes:
  road: { from: here, to: there, trucks: 20, capacity: ${capacity}, drive: 1 h, leaves: ${leaves} }
route:
  - { step: hand over, at: gate }
  - { lane: road }
  - { step: take over, at: yard }
`;

describe('units that come at random, two an hour', SLOW, () => {
  it('wait (B - 1)/(2 lambda) = 1 h for a truck of five to fill', () => {
    const seen = observations(lane('when full', 5));
    expectAgreement(
      seen.map(({ lanes }) => lanes.waitMinutes[0] / lanes.carried[0] / 60),
      1,
      0.01,
    );
    expectAgreement(
      seen.map(({ leadMean }) => leadMean / 60),
      2,
      0.01,
    );
    expect(seen.every(({ lanes }) => lanes.carried[0] === 5 * lanes.trips[0])).toBe(true);
  });

  it('wait half of a regular headway of 3 h, Welding (1957), Operational Research Quarterly 8(3), 133-142', () => {
    const every3h = '{ at: ["00:00", "03:00", "06:00", "09:00", "12:00", "15:00", "18:00", "21:00"] }';
    const seen = observations(lane(every3h, 100));
    expectAgreement(
      seen.map(({ lanes }) => lanes.waitMinutes[0] / lanes.carried[0] / 60),
      1.5,
      0.01,
    );
  });

  it('wait (1 - e^-m)/m of the longest wait, in the mean, for a truck that goes full or after it', () => {
    // A truck of two goes when the second comes or 1 h after the first: the second waits 0, the first
    // min(Exp(2/h), 1 h), mean (1 - e^-2)/2 h; a trip carries 2 with chance 1 - e^-2, else 1. Own arithmetic.
    const filled = 1 - Math.exp(-2),
      seen = observations(lane('{ when full or after: 1 h }', 2));
    expectAgreement(
      seen.map(({ lanes }) => lanes.carried[0] / lanes.trips[0]),
      1 + filled,
      0.005,
    );
    expectAgreement(
      seen.map(({ lanes }) => lanes.waitMinutes[0] / lanes.carried[0] / 60),
      filled / 2 / (1 + filled),
      0.01,
    );
  });

  it('wait (B - 1)/(2 lambda) for an oven that takes four at a time', () => {
    // The bake of 1 s keeps the next lot waiting too rarely (chance below 0.001 a lot) and too shortly to be
    // seen.
    const seen = observations(`
scenario: oven
programme: { arrivals: ${exponential(0.5)}, length: 10000 h, warm up: 500 h }
sites:
  hall: { stations: { oven: { places: 4, buffer: unlimited, lot: { least: 4, most: 4 } } } }
route:
  - { step: bake, at: oven, process: 1 s }
`);
    expectAgreement(
      seen.map(({ leadMean }) => leadMean / 60),
      0.75 + 1 / 3600,
      0.005,
    );
  });
});

describe('a truck ahead of a station as slow as itself, both exponential, nothing between', SLOW, () => {
  it('works 2/3 of the time and is blocked for 1/3, Hunt (1956), Operations Research 4(6), 674-683', () => {
    // The truck is the first station of a line of two without room between: 2/3 of what one alone would do
    // (quoted from memory).
    const seen = observations(`
scenario: shuttle
programme: { arrivals: saturated, length: 20000 h, warm up: 500 h }
sites:
  here: { stations: { gate: {} } }
  there: { stations: { yard: { buffer: 0 } } }
lanes: { road: { from: here, to: there, trucks: 1, capacity: 1, bank: 2, drive: ${exponential(1)} } }
route:
  - { step: hand over, at: gate }
  - { lane: road }
  - { step: take over, at: yard, work: ${exponential(1)} }
`);
    expectAgreement(
      seen.map(({ lanes }) => lanes.truckBusy[0]),
      2 / 3,
      0.005,
    );
    expectAgreement(
      seen.map(({ lanes }) => lanes.truckBlocked[0]),
      1 / 3,
      0.01,
    );
    expect(seen.every(({ lanes }) => lanes.truckFree[0] === 0)).toBe(true);
  });
});

describe('sampling one in four', SLOW, () => {
  const sampled = (sample: string): string => `
scenario: sample
programme: { arrivals: 1 h, quantity: 24000 }
sites:
  hall: { stations: { bench: {}, test bay: { buffer: 1 } } }
route:
  - { step: make, at: bench, work: 30 min }
  - { step: test, at: test bay, sample: ${sample}, work: 30 min }
`;

  it('at random tests a quarter of the units, in runs of geometric length', () => {
    const seen = observations(sampled('{ 1 in: 4, by: random }'), { replications: 60 });
    expectAgreement(
      seen.map((o) => o.stepVisits[1] / o.shipped),
      0.25,
      0.01,
    );
    // Both of two neighbours tested: 1/16; a tested unit is out an hour after it came in.
    const both = seen.map((o) => {
      const tested = Array.from(o.shippedAt, (shippedAt, i) => Number(shippedAt - o.enteredAt[i] > 45));
      return tested.reduce((sum, t, i) => sum + t * (tested[i + 1] ?? 0), 0) / (tested.length - 1);
    });
    expectAgreement(both, 1 / 16, 0.01);
  });

  it('every fourth tests exactly a quarter', () => {
    const [first] = observations(sampled('1 in 4'));
    expect(first.stepVisits[1]).toBe(6000);
  });
});

import { describe, expect, it } from 'vitest';
import { BLOCKED, STATE_COUNT } from '../../src/flow/floor/states.js';
import { expectAgreement, observations, SLOW } from './agree.js';
import { exponential } from './line.js';

describe('a loop of rework', SLOW, () => {
  const seen = observations(
    `
scenario: loop
programme: { arrivals: ${exponential(2)}, length: 100000 h, warm up: 1000 h }
sites:
  hall: { stations: { first: { buffer: unlimited }, second: { buffer: unlimited } } }
route:
  - { step: make, at: first, work: ${exponential(1)} }
  - { step: test, at: second, work: ${exponential(1)}, fails: { chance: 20 %, back to: make, limit: 1000 } }
`,
    { replications: 40 },
  );

  it('holds (5/8)/(3/8) units at each step with arrivals 0.5, back 0.2, rates 1, Jackson (1957), Operations Research 5(4), 518-521', () => {
    // Units sent back go first; with exponential work that changes who waits, not how many.
    const inBuffer = (o: (typeof seen)[number], station: number): number =>
      o.bufferMean[station] +
      o.stationShares[station * STATE_COUNT] +
      o.stationShares[station * STATE_COUNT + BLOCKED];
    expectAgreement(
      seen.map((o) => inBuffer(o, 0)),
      5 / 3,
      0.01,
    );
    expectAgreement(
      seen.map((o) => inBuffer(o, 1)),
      5 / 3,
      0.01,
    );
    expectAgreement(
      seen.map(({ wip }) => wip),
      10 / 3,
      0.01,
    );
  });

  it('visits each step 1/(1 - 0.2) times a unit', () => {
    for (const step of [0, 1])
      expectAgreement(
        seen.map((o) => o.stepVisits[step] / o.shipped),
        1.25,
        0.003,
      );
    expect(seen.every((o) => o.limitReached[0] === 0)).toBe(true);
  });
});

describe('tries for five good with chance 0.8', SLOW, () => {
  // Five steps of one hour each, done over until good, everybody with a place: the lead time is the number of
  // tries, which has the negative binomial law of any text on probability.
  const steps = [1, 2, 3, 4, 5];
  const seen = observations(`
scenario: tries
programme: { arrivals: 1 h, quantity: 20000 }
sites:
  hall: { stations: { ${steps.map((i) => `bench ${i}: { places: 60 }`).join(', ')} } }
route:
${steps.map((i) => `  - { step: try ${i}, at: bench ${i}, work: 1 h, fails: { chance: 20 %, back to: try ${i}, limit: 1000 } }`).join('\n')}
`);
  const hours = seen.map((o) => Array.from(o.shippedAt, (shippedAt, i) => (shippedAt - o.enteredAt[i]) / 60));

  it('need 6.25 on average', () => {
    expectAgreement(
      hours.map((tries) => mean(tries)),
      6.25,
      0.001,
    );
    expectAgreement(
      seen.map(({ leadMean }) => leadMean / 60),
      6.25,
      0.001,
    );
  });

  it('have variance 1.5625', () => {
    expectAgreement(
      hours.map((tries) => mean(tries.map((n) => (n - 6.25) ** 2))),
      1.5625,
      0.01,
    );
  });

  it('are exactly 5, 6 and 7 as often as the law says', () => {
    const share = (wanted: number): number[] =>
      hours.map((tries) => mean(tries.map((n) => Number(Math.abs(n - wanted) < 1e-6))));
    expectAgreement(share(5), 0.8 ** 5, 0.01);
    expectAgreement(share(6), 5 * 0.2 * 0.8 ** 5, 0.01);
    expectAgreement(share(7), 15 * 0.2 ** 2 * 0.8 ** 5, 0.01);
  });
});

describe('escapes', SLOW, () => {
  it('reach the customer as often as two inspections in a row miss them', () => {
    // 0.3 made, 0.4 and 0.5 of them missed: 0.06 open items a unit shipped; of units first seen at the
    // second, 0.12 x 0.5 fail.
    const seen = observations(
      `
scenario: escapes
programme: { arrivals: 1 h, quantity: 20000 }
defects: { dirt: {} }
sites:
  hall: { stations: { bench: { places: 9 }, first gate: { places: 9 }, second gate: { places: 9 } } }
route:
  - { step: make, at: bench, work: 1 h, creates: { dirt: 30 % } }
  - { step: look, at: first gate, work: 1 h, finds: { dirt: { chance: 60 %, repair: 30 min } } }
  - { step: look again, at: second gate, work: 1 h, finds: { dirt: { chance: 50 %, repair: 1 h } } }
`,
      { replications: 40 },
    );
    expectAgreement(
      seen.map((o) => o.openAtShipping / o.shipped),
      0.06,
      0.01,
    );
    expectAgreement(
      seen.map((o) => o.inspections.firstPasses[0] / o.inspections.firstVisits[0]),
      0.82,
      0.003,
    );
    expectAgreement(
      seen.map((o) => o.inspections.firstPasses[1] / o.inspections.firstVisits[1]),
      0.94,
      0.003,
    );
    expectAgreement(
      seen.map((o) => o.repairMinutes / o.shipped),
      0.18 * 30 + 0.06 * 60,
      0.01,
    );
  });
});

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

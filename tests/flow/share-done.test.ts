import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/flow/engine.js';
import { prepare } from '../../src/flow/plan.js';
import { observe } from '../../src/measure/observe.js';
import { modelOf } from './run-yaml.js';

/** Invented. */
const scenario = (programme: string): string => `scenario: Bench
programme: ${programme}
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  works:
    calendar: days
    crews: { fitters: 1 }
    stations: { bench: { buffer: unlimited, failures: { every: { exponential: { mean: 20 h } }, repair: 1 h } } }
route: [{ step: build, at: bench, crew: { fitters: 1 }, work: { mean: 2 h, cv: 0.4 } }]
`;

function sharesOf(programme: string): number[] {
  const plan = prepare(modelOf(scenario(programme))),
    shares: number[] = [];
  const told = simulate(plan, 'share', 1, { tell: (share) => shares.push(share) });
  // Whoever is told changes nothing, to the last bit.
  expect(observe(told, 1)).toEqual(observe(simulate(plan, 'share', 1), 1));
  return shares;
}

describe('how far a replication is', () => {
  it.each([
    ['of a quantity', '{ start: 2027-03-01, quantity: 30000, rate: { per day: 3 } }'],
    [
      'of a length',
      '{ start: 2027-03-01, arrivals: { exponential: { mean: 9 h } }, length: 300000 h, warm up: 0 h }',
    ],
  ])('%s is told often, ever more, up to its end', (_, programme) => {
    const shares = sharesOf(programme);
    expect(shares.length).toBeGreaterThan(12);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[0]).toBeLessThan(0.001);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    expect(shares.at(-1)).toBeGreaterThan(0.4);
  });

  it('is half where half of the time has passed, or half of the units have come and gone', () => {
    const plan = prepare(modelOf(scenario('{ start: 2027-03-01, quantity: 40000, rate: { per day: 3 } }')));
    // Released at a steady rate and built at once: share and time go together.
    const last = simulate(plan, 'share', 1).now,
      pairs: [number, number][] = [];
    let now = 0;
    simulate(plan, 'share', 1, {
      watch: () => (run) => {
        now = run.now;
      },
      tell: (share) => pairs.push([share, now / last]),
    });
    for (const [share, time] of pairs) expect(share).toBeCloseTo(time, 1);
  });
});

import { describe, expect, it } from 'vitest';
import { play } from '../run-yaml.js';

describe('people there in a shift', () => {
  it('are binomial: n people, each there with the chance 1 - p, independent from shift to shift', () => {
    const n = 4,
      p = 0.2;
    const { run } = play(`
scenario: absence
programme: { start: 2027-03-01, arrivals: 1 day, length: 80000 h }
calendars: { two: { hours: ["06:00-14:00", "14:00-22:00"], on: every day } }
sites: { hall: { calendar: two, crews: { fitters: { headcount: ${n}, absence: 20 % } }, stations: { floor: { places: 9, buffer: unlimited } } } }
route: [{ step: fit, at: floor, crew: { fitters: 1 }, work: 10 min }]
`);
    const [shifts] = run.crewShifts,
      count = shifts.current,
      seen = new Float64Array(n + 1),
      there = Array.from({ length: count }, (_, k) => shifts.presentIn(k));
    for (const people of there) seen[people]++;
    // 3333 days and 8 h.
    expect(count).toBe(2 * 3333);
    // Binomial chances: C(4, k) 0.8^k 0.2^(4 - k).
    const chances = [1, 4, 6, 4, 1].map((ways, k) => ways * (1 - p) ** k * p ** (n - k));
    const chiSquare = chances.reduce(
      (sum, chance, k) => sum + (seen[k] - count * chance) ** 2 / (count * chance),
      0,
    );
    // 4 degrees of freedom: 18.47 is passed once in a thousand (chi-square table, from memory).
    expect(chiSquare).toBeLessThan(18.47);
    const mean = n * (1 - p),
      variance = n * p * (1 - p);
    const lagged =
      there.slice(1).reduce((sum, people, k) => sum + (people - mean) * (there[k] - mean), 0) /
      (count - 1) /
      variance;
    expect(Math.abs(lagged)).toBeLessThan(3.5 / Math.sqrt(count));
  });
});

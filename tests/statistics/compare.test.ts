import { describe, expect, it } from 'vitest';
import type { ComparedMeasure } from '../../src/study/compare/results.js';
import { sameZone } from '../../src/study/compare/zones.js';
import { SLOW } from './agree.js';
import { comparedBuilt } from './built.js';

/**
 * A single server with Poisson arrivals, one an hour, and exponential work of 37.5 minutes in the mean: mu =
 * 1.6 an hour.
 */
const QUEUE = `
scenario: one server
programme: { arrivals: { exponential: { mean: 60 min } }, length: 800 h, warm up: 100 h }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: serve, at: bench, work: { exponential: { mean: 37.5 min } } }]
`;
/** A line that asks for more than it ships, with all measures that there are. */
const LINE = `
scenario: two benches
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 4 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { hall: { calendar: days, stations: { frame: {}, trim: { buffer: 2 } } } }
costs: { currency: EUR, unit: { day: 200 } }
route:
  - { step: build, at: frame, work: { exponential: { mean: 110 min } } }
  - { step: finish, at: trim, work: { gamma: { mean: 120 min, cv: 0.5 } } }
`;
const STUDIES = 300;
/**
 * A right program is further off than 3.5 standard deviations of the binomial count in 1 of 2000 such checks.
 */
const slack = (share: number): number => 3.5 * Math.sqrt((share * (1 - share)) / STUDIES);

/** Whether an interval says that there is a difference, however small. */
const differs = ({ difference: { low, high } }: ComparedMeasure): boolean => low! > 0 || high! < 0;

describe('a comparison of two service rates, against the M/M/1 queue', SLOW, () => {
  it('has the difference of mean times in the system, 1 / (mu2 - lambda) - 1 / (mu1 - lambda), in its interval as often as its level says', () => {
    // Erlang (1909); Gross et al. (2008), Fundamentals of Queueing Theory, sec. 2.2 (from memory): W = 1 /
    // (mu - lambda), here 1 / 0.6 h and 1 / 1 h.
    const expected = (1 / (2 - 1) - 1 / (1.6 - 1)) / 24;
    const studies = comparedBuilt(
        QUEUE,
        'faster: { changes: { route.serve.work.exponential.mean: 30 min } }',
        STUDIES,
        10,
      ),
      found = studies.map(
        ({ whatIfs: [faster] }) => faster.compared.find(({ measure }) => measure === 'lead mean')!,
      );
    // One what-if in four measures: 1 - 0.05 / 4.
    const level = 0.9875;
    expect(studies[0].differenceLevel).toBeCloseTo(level, 12);
    const covered =
      found.filter(({ difference: { low, high } }) => low! <= expected && expected <= high!).length / STUDIES;
    expect(Math.abs(covered - level), `${covered} covered`).toBeLessThanOrEqual(slack(level));
    // The grand mean of all studies: over 3000 pairs.
    const means = found.map(({ difference }) => difference.mean),
      grand = means.reduce((a, b) => a + b, 0) / STUDIES;
    const error = Math.sqrt(means.reduce((a, b) => a + (b - grand) ** 2, 0) / (STUDIES - 1) / STUDIES);
    expect(Math.abs(grand - expected) / error, `${grand} against ${expected}`).toBeLessThanOrEqual(3.5);
    expect(found.every(({ verdict }) => verdict === 'better')).toBe(true);
    // Both meet the same arrivals and the same luck at work, so pairing must help.
    expect(found.reduce((sum, { pairingGain }) => sum + pairingGain!, 0) / STUDIES).toBeGreaterThan(1.5);
  });

  it('sees a difference anywhere in six measures of two what-ifs that make none in at most 5 % of studies, and in some', () => {
    // Steps of other names draw other numbers from the same laws; neither is different from the base.
    const alike = ['first', 'second']
      .map(
        (name) =>
          `${name}: { changes: [{ "route[0].step": build ${name} }, { "route[1].step": finish ${name} }] }`,
      )
      .join('\n');
    const studies = comparedBuilt(LINE, alike, STUDIES, 10, sameZone(0)),
      each = studies.map(({ whatIfs }) => whatIfs.flatMap(({ compared }) => compared));
    expect(each[0]).toHaveLength(12);
    expect(studies[0].differenceLevel).toBeCloseTo(1 - 0.05 / 12, 12);
    // Bonferroni is an upper bound, and the measures go together.
    const inTable = each.filter((all) => all.some(differs)).length / STUDIES;
    expect(inTable).toBeLessThanOrEqual(0.05 + slack(0.05));
    expect(inTable).toBeGreaterThan(0);
    const claims = studies.filter(({ answer }) => /Ships (at|more|less)|Lead time (at|sh|lo)/.test(answer));
    expect(claims.length / STUDIES).toBeLessThanOrEqual(0.05 + slack(0.05));
    expect(claims.length / STUDIES).toBeLessThanOrEqual(inTable);
  });
});

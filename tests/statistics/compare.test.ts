import { describe, expect, it } from 'vitest';
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
const STUDIES = 300;
/**
 * A right program is further off than 3.5 standard deviations of the binomial count in 1 of 2000 such checks.
 */
const slack = (share: number): number => 3.5 * Math.sqrt((share * (1 - share)) / STUDIES);

describe('a comparison of two service rates, against the M/M/1 queue', SLOW, () => {
  it('has the difference of mean times in the system, 1 / (mu2 - lambda) - 1 / (mu1 - lambda), in its interval in 95 % of studies', () => {
    // Erlang (1909); Gross et al. (2008), Fundamentals of Queueing Theory, sec. 2.2 (from memory): W = 1 /
    // (mu - lambda), here 1 / 0.6 h and 1 / 1 h.
    const expected = (1 / (2 - 1) - 1 / (1.6 - 1)) / 24;
    const found = comparedBuilt(
      QUEUE,
      'faster: { changes: { route.serve.work.exponential.mean: 30 min } }',
      STUDIES,
      10,
    ).map(([faster]) => faster);
    const covered =
      found.filter(({ difference: { low, high } }) => low! <= expected && expected <= high!).length / STUDIES;
    expect(Math.abs(covered - 0.95), `${covered} covered`).toBeLessThanOrEqual(slack(0.95));
    // The grand mean of all studies: over 3000 pairs.
    const means = found.map(({ difference }) => difference.mean),
      grand = means.reduce((a, b) => a + b, 0) / STUDIES;
    const error = Math.sqrt(means.reduce((a, b) => a + (b - grand) ** 2, 0) / (STUDIES - 1) / STUDIES);
    expect(Math.abs(grand - expected) / error, `${grand} against ${expected}`).toBeLessThanOrEqual(3.5);
    expect(found.every(({ verdict }) => verdict === 'better')).toBe(true);
    // Both meet the same arrivals and the same luck at work, so pairing must help.
    expect(found.reduce((sum, { pairingGain }) => sum + pairingGain!, 0) / STUDIES).toBeGreaterThan(1.5);
  });

  it('sees a difference among three what-ifs that make none in at most 5 % of studies, and in some', () => {
    // A step of another name draws other numbers from the same law; the three are no different from the base.
    // With a zone no longer every interval across 0 says "no difference": it is not settled unless it is narrow.
    const same = ['first', 'second', 'third']
      .map((name) => `${name}: { changes: { route.serve.step: serve ${name} } }`)
      .join('\n');
    const wrong =
      comparedBuilt(QUEUE, same, STUDIES, 8).filter((study) =>
        study.some(({ verdict }) => verdict !== 'no difference that matters' && verdict !== 'not settled'),
      ).length / STUDIES;
    // Bonferroni is an upper bound, and the three share their base.
    expect(wrong).toBeLessThanOrEqual(0.05 + slack(0.05));
    expect(wrong).toBeGreaterThan(0);
  });
});

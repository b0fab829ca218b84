import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/scenario/read.js';
import { rateStudy } from '../../src/study/rate/rate.js';
import { SLOW } from './agree.js';

/** 22/39 an hour: Hunt (1956), Operations Research 4(6), 674-683. */
const CAPACITY = (24 * 22) / 39;

describe(
  'the highest rate of three exponential stations without room between them, whose capacity is that of Hunt (1956)',
  SLOW,
  () => {
    it('lies just under it, far below arithmetic, and more than that is not shipped at any rate', async () => {
      const { scenario } = readScenario(
        `
scenario: three stations
programme: { start: 2027-03-01, zone: UTC, quantity: 9, rate: { per day: 4 } }
sites: { hall: { zone: UTC, stations: { one: { buffer: unlimited }, two: {}, three: {} } } }
route:
  - { step: a, at: one, work: { exponential: { mean: 1 h } } }
  - { step: b, at: two, work: { exponential: { mean: 1 h } } }
  - { step: c, at: three, work: { exponential: { mean: 1 h } } }
`,
        'line.yaml',
        () => '',
      );
      // Two threads run the built engine.
      const { answer, arithmetic, points } = await rateStudy({
        scenario: scenario!,
        file: 'line.yaml',
        from: 12,
        to: 16,
        step: 0.25,
        weeks: 26,
        sure: 0.8,
        replications: 30,
        seed: 'hunt',
        workers: 2,
      });
      expect(arithmetic!.perDay).toBeCloseTo(24, 9);
      // 13.54: the rate is one of the three steps below.
      expect(answer.highestPerDay).toBeLessThan(CAPACITY);
      expect(answer.highestPerDay).toBeGreaterThanOrEqual(CAPACITY - 0.75);
      // At 14 a day and more the first station hardly ever starves; one such rate was run for long, as evidence.
      const [
          {
            shippedPerDay: { mean, low, high },
          },
        ] = points.filter(({ perDay }) => perDay >= 14).sort((a, b) => b.replications - a.replications),
        half = (high! - low!) / 2;
      expect(half / CAPACITY).toBeLessThan(0.01);
      expect(Math.abs(mean - CAPACITY)).toBeLessThan(3.5 * (half / 2));
    });
  },
);

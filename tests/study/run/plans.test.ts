import { expect, it } from 'vitest';
import { Plans } from '../../../src/study/run/plans.js';
import { modelOf } from '../../flow/run-yaml.js';

it('plans of a study are kept by key, the latest few of many, so that memory does not grow with the variants', () => {
  const model = modelOf(
      'scenario: one\nprogramme: { arrivals: 1 h, length: 10 h }\nsites: { hall: { stations: { bench: {} } } }\nroute: [{ step: fit, at: bench, work: 1 h }]\n',
    ),
    plans = new Plans();
  const made = Array.from({ length: 20 }, (_, i) => plans.make(String(i), model));
  expect(plans.get('19')).toBe(made[19]);
  const kept = made.filter((plan, i) => plans.get(String(i)) === plan);
  // One for each replication under way and some more; those kept are the latest.
  expect(kept.length).toBeGreaterThanOrEqual(4);
  expect(kept.length).toBeLessThan(20);
  expect(kept).toEqual(made.slice(-kept.length));
});

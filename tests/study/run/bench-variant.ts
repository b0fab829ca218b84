import type { Variant } from '../../../src/study/run/replicator.js';
import { modelOf } from '../../flow/run-yaml.js';

/**
 * A bench with so many minutes of exponential work, units every ten minutes on the average: a variant of
 * studies that cost nothing.
 */
export const benchVariant = <Value>(mean: number, read: Variant<Value>['read']): Variant<Value> => ({
  key: `mean ${mean}`,
  read,
  model: modelOf(`
scenario: line
programme: { start: 2027-03-01, arrivals: { exponential: { mean: 10 min } }, length: 2000 min }
sites: { hall: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: work, at: bench, work: { exponential: { mean: ${mean} min } } }]
`),
});

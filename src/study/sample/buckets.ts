import type { Observation } from '../../measure/observe.js';
import type { Estimate } from '../statistics/interval.js';
import { Deferred } from './deferred.js';
import type { Folded, Sample } from './sample.js';

/** The first so many buckets, known once all replications have come. */
export interface Shown {
  readonly count: Folded<number>;
}

/** Mean over replications of what cannot be below 0, by bucket shown. */
export function byBucket(
  sample: Sample,
  { count }: Shown,
  of: (observation: Observation, bucket: number) => number,
): Deferred<readonly Estimate[]> {
  const all = sample.clock.buckets.labels.map((_, b) => sample.amount((each) => of(each, b)));
  return new Deferred<readonly Estimate[]>(() => all.slice(0, count.value));
}

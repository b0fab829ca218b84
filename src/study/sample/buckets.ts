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

/** Buckets up to the last that has something in it, or of which something is asked. */
export function shownBuckets(sample: Sample): Shown {
  const {
      clock: {
        buckets: { asked },
      },
      model: { siteNames, lanes },
    } = sample,
    buckets = asked.length,
    locations = siteNames.length + lanes.count;
  const lives = ({ enteredIn, shippedIn, wipIn }: Observation, b: number): boolean => {
    if (enteredIn[b] > 0 || shippedIn[b] > 0) return true;
    for (let id = 0; id < locations; id++) if (wipIn[id * buckets + b] > 0) return true;
    return false;
  };
  return {
    count: sample.fold(asked.findLastIndex((each) => each !== null) + 1, (known, each) => {
      let last = buckets;
      while (last > known && !lives(each, last - 1)) last--;
      return last;
    }),
  };
}

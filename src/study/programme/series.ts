import type { Observation } from '../../measure/observe.js';
import { Later } from '../sample/deferred.js';
import type { Pending } from '../sample/deferred.js';
import { workingDaysBetween } from '../sample/planned.js';
import type { ReleaseCalendar } from '../sample/planned.js';
import { ratio } from '../sample/sample.js';
import type { Folded, Sample } from '../sample/sample.js';
import type { Estimate, Results } from '../simulate/results.js';

/** The first so many buckets, known once all replications have come. */
export interface Shown {
  readonly count: Folded<number>;
}

/**
 * Weeks of a programme or parts of a steady-state run, without those at the end in which nothing was planned
 * or happened.
 */
export function series(sample: Sample, shown: Shown): Pending<Results['series']> {
  const { buckets } = sample.clock,
    ofShown = <T>(all: readonly T[]): Later<readonly T[]> => new Later(() => all.slice(0, shown.count.value));
  return {
    unit: buckets.unit,
    labels: ofShown(buckets.labels),
    starts: ofShown(buckets.starts),
    workingDays: ofShown(buckets.workingDays),
    asked: ofShown(buckets.asked),
    released: byBucket(sample, shown, ({ enteredIn }, b) => enteredIn[b]),
    shipped: byBucket(sample, shown, ({ shippedIn }, b) => shippedIn[b]),
    shippedPerDay: byBucket(sample, shown, ({ shippedIn }, b) => ratio(shippedIn[b], buckets.workingDays[b])),
  };
}

/** Work in process: in all, and by site and lane. */
export function wip(sample: Sample, shown: Shown): Pending<Results['wip']> {
  const { siteNames, lanes } = sample.model;
  const places = [
    ...siteNames.map((name) => ({ name, kind: 'site' as const })),
    ...lanes.names.map((name) => ({ name, kind: 'lane' as const })),
  ];
  return {
    total: meanWip(sample),
    places: places.map((place, id) => ({
      ...place,
      mean: sample.amount(({ wipByLocation }) => wipByLocation[id]),
      series: byBucket(sample, shown, (each, b) => wipInBucket(sample, each, id, b)),
    })),
  };
}

export const meanWip = (sample: Sample): Later<Estimate> => sample.amount((each) => each.wip);

/** Mean over replications of what cannot be below 0, by bucket shown. */
export function byBucket(
  sample: Sample,
  { count }: Shown,
  of: (observation: Observation, bucket: number) => number,
): Later<readonly Estimate[]> {
  const all = sample.clock.buckets.labels.map((_, b) => sample.amount((each) => of(each, b)));
  return new Later<readonly Estimate[]>(() => all.slice(0, count.value));
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

/**
 * Mean units over a bucket: none are left once a run is finished; NaN where a run had stopped with units
 * inside.
 */
function wipInBucket(
  { model, clock }: Sample,
  { outcome, endedAt, wipIn, minutesIn }: Observation,
  location: number,
  bucket: number,
): number {
  const { bucketEdges } = model.programme,
    from = bucketEdges[bucket],
    to = bucketEdges[bucket + 1];
  const units = wipIn[location * clock.buckets.labels.length + bucket];
  if (outcome === 'finished')
    return to > endedAt ? units * (Math.max(0, endedAt - from) / (to - from)) : units;
  return minutesIn[bucket] > 0 ? units : NaN;
}

/**
 * Units shipped a working day of the first station's site, over the whole time observed; NaN where there was
 * no such day.
 */
export const shippedPerDay =
  ({ workingDays }: Pick<ReleaseCalendar, 'workingDays'>) =>
  ({ shipped, endedAt, minutes }: Pick<Observation, 'shipped' | 'endedAt' | 'minutes'>): number =>
    ratio(shipped, workingDaysBetween(workingDays, endedAt - minutes, endedAt));

/**
 * Units shipped over the time observed, per working day of the first station's site and per hour of the
 * clock.
 */
export function throughput(sample: Sample): {
  readonly perDay: Later<Estimate>;
  readonly perHour: Later<Estimate>;
} {
  return {
    perDay: sample.amount(shippedPerDay(sample.calendar)),
    perHour: sample.amount(({ shipped, minutes }) => ratio(60 * shipped, minutes)),
  };
}

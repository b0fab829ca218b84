import type { Observation } from '../../measure/observe.js';
import { overLoads } from '../loads/over-loads.js';
import { Deferred, type Pending } from '../sample/deferred.js';
import { type ReleaseCalendar, workingDaysBetween } from '../sample/planned.js';
import { byBucket, type Sample, type Shown } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

/** Buckets of the time series: ISO weeks for a programme, equal parts for a steady-state run. */
export interface SeriesResult {
  readonly unit: 'week' | 'part';
  readonly labels: readonly string[];
  readonly starts: readonly string[];
  readonly workingDays: readonly number[];
  /** Units per working day asked; null for steady state without a rate. */
  readonly asked: readonly (number | null)[];
  readonly released: readonly Estimate[];
  readonly shipped: readonly Estimate[];
  readonly shippedPerDay: readonly Estimate[];
  /**
   * The same as a mean over whole cycles of the loads around each week; null where weeks are even enough. See
   * `overLoads`.
   */
  readonly shippedOverLoads: readonly Estimate[] | null;
}

/** Work in process: in all, and by site and lane. */
export interface WipResult {
  readonly total: Estimate;
  readonly places: readonly {
    readonly name: string;
    readonly kind: 'site' | 'lane';
    readonly mean: Estimate;
    readonly series: readonly Estimate[];
  }[];
}

/**
 * Shipped over the whole time observed, per working day of the first station's site and per hour of the
 * clock.
 */
export interface ThroughputResult {
  readonly perDay: Estimate;
  readonly perHour: Estimate;
}

/**
 * Weeks of a programme or parts of a steady-state run, without those at the end in which nothing was planned
 * or happened.
 */
export function series(sample: Sample, shown: Shown): Pending<SeriesResult> {
  const { buckets } = sample.clock,
    smooth = overLoads(sample),
    ofShown = <T>(all: readonly T[]): Deferred<readonly T[]> => new Deferred(() => all.slice(0, shown.value));
  return {
    unit: buckets.unit,
    labels: ofShown(buckets.labels),
    starts: ofShown(buckets.starts),
    workingDays: ofShown(buckets.workingDays),
    asked: ofShown(buckets.asked),
    released: byBucket(sample, shown, ({ enteredIn }, b) => enteredIn[b]),
    shipped: byBucket(sample, shown, ({ shippedIn }, b) => shippedIn[b]),
    shippedPerDay: byBucket(sample, shown, ({ shippedIn }, b) => ratio(shippedIn[b], buckets.workingDays[b])),
    shippedOverLoads: smooth === null ? null : byBucket(sample, shown, smooth),
  };
}

export function wip(sample: Sample, shown: Shown): Pending<WipResult> {
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

export const meanWip = (sample: Sample): Deferred<Estimate> => sample.amount((each) => each.wip);

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
  return sample.fold(asked.findLastIndex((each) => each !== null) + 1, (known, each) => {
    let last = buckets;
    while (last > known && !lives(each, last - 1)) last--;
    return last;
  });
}

function wipInBucket({ model, clock }: Sample, seen: Observation, location: number, bucket: number): number {
  const { bucketEdges: edges } = model.programme,
    units = seen.wipIn[location * clock.buckets.labels.length + bucket];
  return unitsOver(seen, units, seen.minutesIn[bucket] > 0, edges[bucket], edges[bucket + 1]);
}

/**
 * Mean units over a bucket, minutes `from` to `to`: none are left once a run is finished; NaN where a run had
 * stopped with units inside.
 * @param units mean of the time in the bucket that was observed
 * @param isSeen whether there was such a time
 */
export function unitsOver(
  { outcome, endedAt }: Pick<Observation, 'outcome' | 'endedAt'>,
  units: number,
  isSeen: boolean,
  from: number,
  to: number,
): number {
  if (outcome === 'finished')
    return to > endedAt ? units * (Math.max(0, endedAt - from) / (to - from)) : units;
  return isSeen ? units : NaN;
}

/** Mean work in process over all sites and lanes, by bucket. */
export function wipByBucket({ wipIn }: Pick<Observation, 'wipIn'>, buckets: number): Float64Array {
  const all = new Float64Array(buckets);
  wipIn.forEach((units, at) => {
    all[at % buckets] += units;
  });
  return all;
}

/**
 * Units shipped a working day of the first station's site, over the whole time observed; NaN where there was
 * no such day.
 */
export const shippedPerDay =
  ({ workingDays }: Pick<ReleaseCalendar, 'workingDays'>) =>
  ({ shipped, endedAt, minutes }: Pick<Observation, 'shipped' | 'endedAt' | 'minutes'>): number =>
    ratio(shipped, workingDaysBetween(workingDays, endedAt - minutes, endedAt));

export const throughput = (sample: Sample): Record<keyof ThroughputResult, Deferred<Estimate>> => ({
  perDay: sample.amount(shippedPerDay(sample.calendar)),
  perHour: sample.amount(({ shipped, minutes }) => ratio(60 * shipped, minutes)),
});

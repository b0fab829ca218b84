import type { Observation } from '../measure/observation.js';
import type { Results } from './results.js';
import { ratio, type Sample } from './sample.js';

/** Weeks of a programme or parts of a steady-state run, without those at the end in which nothing was planned or happened. */
export function series(sample: Sample): Results['series'] {
  const { buckets } = sample.clock, count = bucketsShown(sample), shown = Array.from({ length: count }, (_, b) => b);
  return {
    unit: buckets.unit,
    labels: buckets.labels.slice(0, count),
    starts: buckets.starts.slice(0, count),
    workingDays: buckets.workingDays.slice(0, count),
    asked: buckets.asked.slice(0, count),
    released: shown.map((b) => sample.amount(({ enteredIn }) => enteredIn[b])),
    shipped: shown.map((b) => sample.amount(({ shippedIn }) => shippedIn[b])),
    shippedPerDay: shown.map((b) => sample.amount(({ shippedIn }) => ratio(shippedIn[b], buckets.workingDays[b]))),
  };
}

/** Work in process: in all, and by site and lane. */
export function wip(sample: Sample): Results['wip'] {
  const { siteNames, lanes } = sample.model, count = bucketsShown(sample);
  const places = [...siteNames.map((name) => ({ name, kind: 'site' as const })), ...lanes.names.map((name) => ({ name, kind: 'lane' as const }))];
  return {
    total: sample.amount((each) => each.wip),
    places: places.map((place, id) => ({
      ...place,
      mean: sample.amount(({ wipByLocation }) => wipByLocation[id]),
      series: Array.from({ length: count }, (_, b) => sample.amount((each) => wipInBucket(sample, each, id, b))),
    })),
  };
}

/** How many buckets have something in them, or before something. */
export function bucketsShown({ clock, observations, model }: Sample): number {
  const buckets = clock.buckets.labels.length, locations = model.siteNames.length + model.lanes.count;
  const lives = (b: number): boolean => clock.buckets.asked[b] !== null
    || observations.some(({ enteredIn, shippedIn, wipIn }) => enteredIn[b] > 0 || shippedIn[b] > 0 || Array.from({ length: locations }, (_, id) => wipIn[id * buckets + b]).some((units) => units > 0));
  let count = buckets;
  while (count > 0 && !lives(count - 1)) count--;
  return count;
}

/** Mean units over a bucket: none are left once a run is finished; NaN where a run had stopped with units inside. */
function wipInBucket({ model, clock }: Sample, { outcome, endedAt, wipIn, minutesIn }: Observation, location: number, bucket: number): number {
  const { bucketEdges } = model.programme, from = bucketEdges[bucket], to = bucketEdges[bucket + 1];
  const units = wipIn[location * clock.buckets.labels.length + bucket];
  if (outcome === 'finished') return to > endedAt ? units * (Math.max(0, endedAt - from) / (to - from)) : units;
  return minutesIn[bucket] > 0 ? units : NaN;
}

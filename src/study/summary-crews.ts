import type { Pending } from './later.js';
import type { Results } from './results.js';
import { ratio, type Sample } from './sample.js';
import { byBucket, type Shown } from './summary-series.js';

/** Crews in the order of the scenario. */
export function crews(sample: Sample, shown: Shown): Pending<Results['crews']> {
  const {
      model: { resources, siteNames },
      clock,
    } = sample,
    buckets = clock.buckets.labels.length;
  return resources.names.slice(0, resources.crews).map((name, id) => ({
    name,
    site: siteNames[resources.site[id]],
    headcount: resources.amount[id],
    headcounts: headcounts(sample, id),
    busy: sample.share(({ crewBusy }) => crewBusy[id]),
    usualHours: sample.amount(({ crewTime }) => crewTime.usual[id] / 60),
    overtimeHours: sample.amount(({ crewTime }) => crewTime.overtime[id] / 60),
    series: {
      engaged: byBucket(sample, shown, ({ crewEngagedIn, crewTime }, b) =>
        ratio(crewEngagedIn[id * buckets + b], crewTime.hours[id].onShift[b]),
      ),
      present: byBucket(sample, shown, ({ crewTime: { hours, people } }, b) =>
        ratio(people[id]?.present[b] ?? resources.amount[id] * hours[id].onShift[b], hours[id].onShift[b]),
      ),
      overtimeHours: byBucket(
        sample,
        shown,
        ({ crewTime: { hours, people } }, b) =>
          (people[id]?.overtime[b] ?? resources.amount[id] * hours[id].overtime[b]) / 60,
      ),
    },
  }));
}

function headcounts(
  { scenario, model: { resources, siteNames } }: Sample,
  id: number,
): readonly number[] | null {
  return scenario.sites[siteNames[resources.site[id]]].crews[resources.names[id]].shifts?.headcounts ?? null;
}

/** How often overtime rules asked for their hours. */
export function overtime(sample: Sample, shown: Shown): Pending<Results['overtime']> {
  const buckets = sample.clock.buckets.labels.length;
  return sample.model.overtime.map(({ name }, rule) => ({
    name,
    looked: sample.amount(({ overtimeRules }) => overtimeRules.looked[rule]),
    worked: sample.share(({ overtimeRules: { looked, worked } }) => ratio(worked[rule], looked[rule])),
    hours: byBucket(
      sample,
      shown,
      ({ overtimeRules: { minutesIn } }, b) => minutesIn[rule * buckets + b] / 60,
    ),
  }));
}

export function shutdowns({ scenario: { calendars } }: Sample): Results['shutdowns'] {
  return Object.entries(calendars).flatMap(([calendar, spec]) =>
    spec.shutdowns.map(({ from, to, note }) => ({ calendar, from, to, note: note ?? null })),
  );
}

import { named } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import { byBucket, type Sample, type Shown } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

export interface CrewResult {
  readonly name: string;
  readonly site: string;
  /** On the largest shift; and on each shift of the calendar's day, where they differ. */
  readonly headcount: number;
  readonly headcounts: readonly number[] | null;
  /** Engaged person-time over person-time on shift. */
  readonly busy: Estimate;
  /** Person-hours of people who were there, over the time observed: in usual hours, in overtime. */
  readonly usualHours: Estimate;
  readonly overtimeHours: Estimate;
  /**
   * By bucket of the series, over the crew's hours in it: people engaged and people there, on average; `n` is
   * 0 where it has none. Then person-hours of overtime.
   */
  readonly series: {
    readonly engaged: readonly Estimate[];
    readonly present: readonly Estimate[];
    readonly overtimeHours: readonly Estimate[];
  };
}

/** Work done again and repairs, person-hours a replication. */
export interface ReworkResult {
  readonly crew: string;
  readonly site: string;
  readonly hours: Estimate;
}

/** A rule for overtime, in the order of the calendars. */
export interface OvertimeResult {
  readonly name: string;
  /** Weeks or days in which it was looked at, and share of them in which its hours were worked. */
  readonly looked: Estimate;
  readonly worked: Estimate;
  /** Hours of the clock worked by it in each bucket of the series. */
  readonly hours: readonly Estimate[];
}

/** A planned shutdown of a calendar, ISO dates, both ends included. */
export interface ShutdownResult {
  readonly calendar: string;
  readonly from: string;
  readonly to: string;
  readonly note: string | null;
}

/** Crews in the order of the scenario. */
export function crews(sample: Sample, shown: Shown): Pending<CrewResult[]> {
  const {
      model: { resources },
      clock,
    } = sample,
    buckets = clock.buckets.labels.length;
  return Array.from({ length: resources.crews }, (_, id) => ({
    ...named(sample.model, 'resources', id),
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
export function overtime(sample: Sample, shown: Shown): Pending<OvertimeResult[]> {
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

export function rework(sample: Sample): Pending<ReworkResult[]> {
  const { resources, siteNames } = sample.model;
  return resources.names.slice(0, resources.crews).map((crew, id) => ({
    crew,
    site: siteNames[resources.site[id]],
    hours: sample.amount(({ reworkMinutes }) => reworkMinutes[id] / 60),
  }));
}

export function shutdowns({ scenario: { calendars } }: Sample): ShutdownResult[] {
  return Object.entries(calendars).flatMap(([calendar, spec]) =>
    spec.shutdowns.map(({ from, to, note }) => ({ calendar, from, to, note: note ?? null })),
  );
}

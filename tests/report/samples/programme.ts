import { JOURNEY_ACTIVITIES } from '../../../src/study/programme/activities.js';
import type { Journey, JourneyPart } from '../../../src/study/programme/journey.js';
import type { PlanResult } from '../../../src/study/programme/plan.js';

/** Invented parts of results that tell of the programme and of one unit, for looking at reports. */
export function samplePlan(weeks: number): PlanResult {
  const monday = (week: number): string =>
      new Date(Date.UTC(2027, 2, 1 + 7 * week)).toISOString().slice(0, 10),
    all = Array.from({ length: weeks }, (_, week) => week);
  const released = all.map((week) => Math.min(420, 10 * (week + 1))),
    shipped = all.map((week) => Math.max(0, Math.min(420, Math.round(9.5 * (week - 3)))));
  return {
    unit: 'week',
    starts: all.map(monday),
    ends: all.map((week) => monday(week + 1)),
    released,
    due: released.map((units) => Math.max(0, units - 60)),
    shipped: {
      p10: shipped.map((units) => Math.max(0, units - 6)),
      p50: shipped,
      p90: shipped.map((units) => Math.min(420, units + 6)),
    },
  };
}

/** Each step with every activity for an hour in turn, from 2027-06-01 06:00 on. */
export function sampleJourney(steps: readonly { readonly name: string; readonly site: string }[]): Journey {
  const start = 92 * 1440 + 360,
    dateTime = (minutes: number): string =>
      new Date(Date.UTC(2027, 2, 1) + minutes * 60_000).toISOString().slice(0, 19);
  const parts = steps.flatMap(({ name, site }, i) =>
    JOURNEY_ACTIVITIES.map((what, k): JourneyPart => {
      const fromMin = start + 60 * (i * JOURNEY_ACTIVITIES.length + k);
      return {
        fromMin,
        toMin: fromMin + 60,
        from: dateTime(fromMin),
        to: dateTime(fromMin + 60),
        step: name,
        at: name,
        site,
        what,
      };
    }),
  );
  return {
    build: 'RT-017',
    number: 17,
    replication: 1,
    chosen: 'median lead time',
    entered: parts[0].from,
    shipped: parts.at(-1)!.to,
    leadDays: parts.length / 24,
    parts,
    totals: JOURNEY_ACTIVITIES.map((what) => ({ what, days: steps.length / 24 })),
    steps: steps.map(({ name, site }) => ({
      step: name,
      site,
      hours: JOURNEY_ACTIVITIES.length,
      activeHours: 8,
    })),
  };
}

import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { isoDate, isoWeek } from '../calendar/date.js';
import { endOf, startOf, type WorkingDay } from '../calendar/days.js';
import { releaseWorkingDays } from '../dated/stages.js';
import { at } from '../lookup/columns.js';
import type { Scenario } from '../types/scenario.js';
import { releaseDays } from './release.js';
import { runSpan } from './span.js';

/** Dates of a run in the programme's zone, and what was planned for each bucket of its time series. */
export interface ProgrammeClock {
  readonly zone: string;
  /** Local date and time, `2027-03-01T06:00:00`, to the whole second; null for a time that is not finite. */
  dateTime(minutes: number): string | null;
  /** Local date, `2027-03-01`; null for a time that is not finite. */
  date(minutes: number): string | null;
  /** Number of the local day, see `calendar/date.ts`; Infinity for Infinity. */
  day(minutes: number): number;
  readonly buckets: {
    readonly unit: 'week' | 'part';
    /** `2027-W09` for weeks, `part 1` .. for parts. */
    readonly labels: readonly string[];
    /** Local date (weeks) or date and time (parts) of the start. */
    readonly starts: readonly string[];
    /**
     * Working days of the first station's site: each day counts by the share of its working minutes that lies
     * in the bucket.
     */
    readonly workingDays: readonly number[];
    /**
     * Units asked for a working day, mean over those of the bucket on which units are released; null if there
     * are none.
     */
    readonly asked: readonly (number | null)[];
  };
}

/** The dates of a scenario's run. Cheap: it expands one calendar. */
export function programmeClock(scenario: Scenario): ProgrammeClock {
  const span = runSpan(scenario);
  const { programme } = scenario;
  const days = releaseWorkingDays(scenario, span);
  const edges = span.bucketEdges;
  const workingDays = shares(days, edges, () => 1);
  const release = releaseDays(scenario, days, span);
  const releasing = shares(release, edges, () => 1);
  const asked = shares(release, edges, (day) => day.rate).map((units, i) =>
    at(releasing, i) > 0 ? units / at(releasing, i) : null,
  );

  const local = (minutes: number): number => span.clock.local(span.origin + minutes);
  const dayOf = (minutes: number): number => Math.floor(local(minutes) / MINUTES_PER_DAY);
  const dateTime = (minutes: number): string | null =>
    Number.isFinite(minutes)
      ? new Date(Math.round(local(minutes) * 60) * 1000).toISOString().slice(0, 19)
      : null;
  const date = (minutes: number): string | null =>
    Number.isFinite(minutes) ? isoDate(dayOf(minutes)) : null;
  const heads = edges.slice(0, -1);
  const isWeeks = span.kind === 'programme';
  return {
    zone: programme.zone,
    dateTime,
    date,
    day: dayOf,
    buckets: {
      unit: isWeeks ? 'week' : 'part',
      labels: heads.map((edge, i) => (isWeeks ? isoWeek(dayOf(edge)) : `part ${i + 1}`)),
      starts: heads.map((edge) => (isWeeks ? isoDate(dayOf(edge)) : (dateTime(edge) ?? ''))),
      workingDays,
      asked,
    },
  };
}

/** Sum of `value` over days by bucket, each day shared out by its working minutes. */
function shares<Day extends WorkingDay>(
  days: readonly Day[],
  edges: readonly number[],
  value: (day: Day) => number,
): number[] {
  const sums = new Float64Array(edges.length - 1);
  let first = 0;
  for (const day of days) {
    while (first < sums.length && at(edges, first + 1) <= startOf(day)) first++;
    for (let i = first; i < sums.length && at(edges, i) < endOf(day); i++) {
      const from = at(edges, i),
        to = at(edges, i + 1);
      let minutes = 0;
      for (const { start, end } of day.windows)
        minutes += Math.max(0, Math.min(end, to) - Math.max(start, from));
      sums[i] = at(sums, i) + (minutes / day.minutes) * value(day);
    }
  }
  return [...sums];
}

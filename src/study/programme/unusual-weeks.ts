import type { CalendarColumns } from '../../flow/model/time.js';
import { calendarOf } from '../../scenario/lookup/placed.js';
import { releaseSite } from '../../scenario/programme/rates.js';
import { rowsOf } from '../lists.js';
import type { Planned } from '../sample/planned.js';
import { daysOff } from './days-off.js';

/** Why a week is not like the others. */
export interface UnusualCause {
  readonly kind: 'outage' | 'shutdown' | 'holiday' | 'short week';
  /** What the planner calls it, in quotation marks, or its dates. */
  readonly what: string;
}

/** A week, or a part of a run, touched by an outage or days off, or with fewer working days than usual. */
export interface UnusualWeek {
  readonly bucket: number;
  /** As in the series: `2027-W23`, and the local date of its start. */
  readonly label: string;
  readonly start: string;
  /**
   * Working days of the first station's site, in it and in a usual week; null for the parts of a
   * steady-state run.
   */
  readonly workingDays: number;
  readonly usualDays: number | null;
  readonly causes: readonly UnusualCause[];
}

/** A night shift over the midnight of a Sunday may leave a week a little less than its whole days. */
const SAME_DAYS = 0.05;
/** The end of a bucket is the first instant of the next; a moment earlier is its last day. */
const INSTANT = 0.001;

/**
 * The buckets from `first` to `last` that are not like the others: a dated outage lies in working time of
 * what it closes, a calendar of a site, station, crew or lane has a day off on a weekday on which it works,
 * or the first station's site works fewer days than in a week without days off.
 */
export function unusualWeeks(plan: Planned, first: number, last: number): UnusualWeek[] {
  const {
      clock,
      scenario,
      model: {
        programme: { bucketEdges: edges },
      },
    } = plan,
    { unit, labels, starts, workingDays } = clock.buckets,
    off = daysOff(scenario);
  const usualDays =
    unit === 'week' ? (calendarOf(scenario, releaseSite(scenario).calendar)?.on.length ?? 7) : null;
  const week = (bucket: number): UnusualWeek => {
    const from = clock.day(edges[bucket]),
      to = clock.day(edges[bucket + 1] - INSTANT);
    const known = [
      ...outagesIn(plan, bucket),
      ...off.filter(({ days }) => [...days].some((day) => from <= day && day <= to)),
    ];
    const isShort = usualDays !== null && workingDays[bucket] < usualDays - SAME_DAYS;
    return {
      bucket,
      label: labels[bucket],
      start: starts[bucket],
      workingDays: workingDays[bucket],
      usualDays,
      causes:
        known.length === 0 && isShort
          ? [{ kind: 'short week', what: `of ${starts[bucket]}` }]
          : known.map(({ kind, what }) => ({ kind, what })),
    };
  };
  return Array.from({ length: last - first + 1 }, (_, i) => week(first + i)).filter(
    ({ causes }) => causes.length > 0,
  );
}

/** Outages that close something in a bucket while it would work. */
function outagesIn({ model }: Planned, bucket: number): UnusualCause[] {
  const { outages, stations, lanes, calendars, programme } = model;
  return outages.names.flatMap((name, id): UnusualCause[] => {
    const from = Math.max(outages.from[id], programme.bucketEdges[bucket]),
      to = Math.min(outages.to[id], programme.bucketEdges[bucket + 1]);
    const hours = [
      ...rowsOf(outages.stationStart, id).map((row) => stations.calendar[outages.station[row]]),
      ...rowsOf(outages.laneStart, id).map((row) => lanes.loadCalendar[outages.lane[row]]),
    ];
    return from < to && hours.some((calendar) => works(calendars[calendar], from, to))
      ? [{ kind: 'outage', what: `"${name}"` }]
      : [];
  });
}

/** Whether there is working time between two times; always without a calendar. Overtime by rule is none. */
function works(calendar: CalendarColumns | undefined, from: number, to: number): boolean {
  return (
    calendar === undefined ||
    calendar.start.some(
      (start, window) => start < to && calendar.end[window] > from && calendar.rules[window] === 0,
    )
  );
}

import type { Calendar } from '../../../flow/floor/calendar.js';
import { calendarAt } from '../../../flow/floor/calendar.js';
import type { Model } from '../../../flow/model/model.js';

/** What a log is read against: names, sites and calendars of the model, and the period looked at. */
export interface Frame {
  readonly model: Model;
  readonly calendars: readonly Calendar[];
  /** Start of the model's time, and the period, from <= to: minutes since 1970-01-01T00:00Z. */
  readonly origin: number;
  readonly from: number;
  readonly to: number;
  /** Its first day, by number. */
  readonly fromDay: number;
  /** Working days of the first station's site in it, by number; 1 at least. */
  readonly workingDays: number;
  /** Ids of steps and lanes by name. */
  readonly stepOf: ReadonlyMap<string, number>;
  /** Units that stand on the floor at `from`: nobody knows in a simulated log when they came. */
  readonly old: ReadonlySet<string>;
}

export function stepIds({ steps }: Model): Map<string, number> {
  const ids = new Map<string, number>();
  steps.names.forEach((name, id) => {
    if (!ids.has(name)) ids.set(name, id);
  });
  return ids;
}

/** Minutes of a calendar (-1: of the clock) between two times of the log. */
export function minutesBetween(frame: Frame, calendar: number, from: number, to: number): number {
  const { calendars, origin } = frame;
  return calendarAt(calendars, calendar)?.worked(from - origin, to - origin) ?? to - from;
}

/** Whether a time of the log lies in the period. */
export const isIn = (at: number, { from, to }: Pick<Frame, 'from' | 'to'>): boolean => at >= from && at < to;

/** Sites, then lanes: where a unit is that is at a step. */
export function placeOfStep({ stations, steps, siteNames }: Model, step: number): number {
  const station = steps.station[step] ?? -1;
  return station >= 0 ? (stations.site[station] ?? 0) : siteNames.length + (steps.lane[step] ?? 0);
}

export const placeNames = ({ siteNames, lanes }: Model): string[] => [...siteNames, ...lanes.names];

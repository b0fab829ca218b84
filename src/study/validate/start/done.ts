import { type Calendar, calendarAt } from '../../../flow/floor/calendar.js';
import type { Model } from '../../../flow/model/model.js';
import { meanOf } from '../../../random/distribution.js';

/** A model whose calendars reach back before a moment. */
export interface Earlier {
  readonly model: Model;
  readonly calendars: readonly Calendar[];
  /** Minutes since 1970-01-01T00:00Z. */
  readonly origin: number;
}

/** Since when a unit is at work, and its repair there (NaN: none): minutes since 1970-01-01T00:00Z. */
export interface AtWork {
  readonly since: number;
  readonly mendedSince: number;
  readonly at: number;
}

/**
 * Minutes of a step that are done: of work in its hours, of a process by the clock. Where something comes
 * behind the work, a process or a repair, this counts as if the work had taken as long as it does on average.
 */
export function doneOf(
  { model, calendars, origin }: Earlier,
  step: number,
  { since, mendedSince, at }: AtWork,
): number {
  const { steps, draws } = model,
    calendar = calendarAt(calendars, steps.workCalendar[step] ?? -1),
    [from, to] = [Math.max(0, since - origin), at - origin],
    minutes = (start: number): number => calendar?.worked(start, to) ?? to - start,
    work = draws[steps.workDraw[step] ?? -1],
    usual = work === undefined ? 0 : meanOf(work.distribution) * (steps.passes[step] ?? 1);
  if (!Number.isNaN(mendedSince)) return usual + minutes(Math.max(0, mendedSince - origin));
  if ((steps.processDraw[step] ?? -1) < 0) return work === undefined ? 0 : minutes(from);
  if (work === undefined) return to - from;
  const worked = minutes(from);
  return worked < usual ? worked : usual + to - (calendar?.advance(from, usual) ?? from + usual);
}

import { Calendar } from '../flow/calendar.js';
import type { Model } from '../flow/model.js';
import { CalendarBook } from '../scenario/calendar-book.js';
import { releaseSite, runSpan } from '../scenario/compile-span.js';
import type { Scenario } from '../scenario/scenario.js';

const DAY = 1440;
const WEEK = 7 * DAY;

/**
 * Mean minutes of each calendar for a working day of the release calendar (that of the first station's site), over the
 * whole weeks of the run's span. With a release calendar of five days a week, what is never off shift has 1440 * 7 / 5
 * minutes a working day, and a station that also works on Saturdays has the more for it.
 */
export interface DailyMinutes {
  /** Mean minutes a working day; calendar -1 is always. */
  of(calendar: number): number;
  /** Working days of the release calendar in the span looked at, and its length in minutes. */
  readonly workingDays: number;
  readonly spanMinutes: number;
}

export function dailyMinutes(model: Model, scenario: Scenario): DailyMinutes {
  const span = runSpan(scenario);
  const end = Math.min(span.end, span.horizon);
  const spanMinutes = end >= WEEK ? Math.floor(end / WEEK) * WEEK : end;
  const site = releaseSite(scenario);
  // Always open: a day of 24 h, whatever the clock does in spring and autumn.
  let workingDays = site.calendar === undefined ? spanMinutes / DAY : 0;
  if (site.calendar !== undefined) {
    for (const day of new CalendarBook(scenario, span).workingDays(site.calendar, site.zone)) {
      for (const { start, end: to } of day.windows) workingDays += Math.max(0, Math.min(to, spanMinutes) - start) / day.minutes;
    }
  }
  if (!(workingDays > 0)) throw new RangeError('programme: expected a working day of the first station\'s site in the span of the run, saw none; open its calendar or lengthen the run');
  const minutes = model.calendars.map((columns) => new Calendar(columns).worked(0, spanMinutes) / workingDays);
  return { of: (calendar) => (calendar < 0 ? spanMinutes / workingDays : minutes[calendar]), workingDays, spanMinutes };
}

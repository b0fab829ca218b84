import { Calendar, calendarAt } from '../../flow/floor/calendar.js';
import type { CrewShiftColumns } from '../../flow/model/crews.js';
import type { Model } from '../../flow/model/model.js';
import { type CalendarColumns, MINUTES_PER_DAY } from '../../flow/model/time.js';
import { CalendarBook } from '../../scenario/calendar/book.js';
import { releaseSite } from '../../scenario/programme/rates.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { remembered } from '../../scenario/values/raw.js';
import { sum } from '../statistics/sums.js';

const WEEK = 7 * MINUTES_PER_DAY;

/**
 * Mean minutes of each calendar for a working day of the release calendar (that of the first station's site),
 * over the whole weeks of the run's span. With a release calendar of five days a week, what is never off
 * shift has 1440 * 7 / 5 minutes a working day, and a station that also works on Saturdays has the more for
 * it. Overtime is left out.
 */
export interface DailyMinutes {
  /** Mean minutes a working day; calendar -1 is always. */
  of(calendar: number): number;
  /** Person-minutes a working day of a crew that is asked for in multiples of `by` people. */
  ofCrew(crew: number, by: number): number;
  /** A calendar without its overtime; null of -1: always. */
  calendar(id: number): Calendar | null;
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
  let workingDays = site.calendar === undefined ? spanMinutes / MINUTES_PER_DAY : 0;
  if (site.calendar !== undefined) {
    for (const day of new CalendarBook(scenario, span).workingDays(site.calendar, site.zone)) {
      for (const { start, end: to } of day.windows)
        workingDays += Math.max(0, Math.min(to, spanMinutes) - start) / day.minutes;
    }
  }
  if (!(workingDays > 0))
    throw new RangeError(
      "programme: expected a working day of the first station's site in the span of the run, got " +
        'none; open its calendar or lengthen the run',
    );
  const usual = model.calendars.map((columns) => new Calendar(usualHours(columns))),
    minutes = usual.map((calendar) => calendar.worked(0, spanMinutes) / workingDays);
  const { amount, calendar: calendars, shifts } = model.resources,
    of = (calendar: number): number => (calendar < 0 ? spanMinutes / workingDays : minutes[calendar]);
  return {
    of,
    ofCrew: (crew, by) => {
      const own = shifts[crew],
        calendar = calendars[crew];
      return own === null
        ? by * Math.floor(amount[crew] / by) * of(calendar)
        : personMinutes(model.calendars[calendar], own, spanMinutes, by) / workingDays;
    },
    calendar: (id) => calendarAt(usual, id),
    workingDays,
    spanMinutes,
  };
}

/** The calendar without its overtime: such windows have no length. */
function usualHours({ start, end, overtime, ...rest }: CalendarColumns): CalendarColumns {
  if (!overtime.includes(1)) return { start, end, overtime, ...rest };
  const ends = end.map((to, w) => (overtime[w] === 1 ? start[w] : to)),
    before = new Float64Array(start.length);
  for (let w = 1; w < start.length; w++) before[w] = before[w - 1] + (ends[w - 1] - start[w - 1]);
  return { ...rest, start, end: ends, before, overtime };
}

/** Sum over the shifts of people times minutes, less those who are missing on average; see `inMultiples`. */
function personMinutes(
  { start, end, overtime }: CalendarColumns,
  { firstWindow, people, absence }: CrewShiftColumns,
  until: number,
  by: number,
): number {
  let minutes = 0;
  const means = new Map<number, number>();
  people.forEach((count, shift) => {
    for (let w = firstWindow[shift]; w < firstWindow[shift + 1]; w++)
      if (overtime[w] === 0)
        minutes +=
          (by === 1 ? count : remembered(means, count, () => inMultiples(count, absence, by))) *
          Math.max(0, Math.min(end[w], until) - start[w]);
  });
  return by === 1 ? minutes * (1 - absence) : minutes;
}

/** Mean of those there, each missing with a chance, rounded down to multiples: the rest forms no team. */
function inMultiples(count: number, absence: number, by: number): number {
  // Chance that so many of those looked at so far are there.
  let chances = [1];
  for (let person = 0; person < count; person++)
    chances = Array.from(
      { length: person + 2 },
      (_, there) => (chances[there] ?? 0) * absence + (chances[there - 1] ?? 0) * (1 - absence),
    );
  return sum(chances.map((chance, there) => chance * by * Math.floor(there / by)));
}

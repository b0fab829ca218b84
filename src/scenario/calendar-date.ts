import { Temporal } from 'temporal-polyfill';

/** Dates as whole days since 1970-01-01: cheap to count with, no zone. */
export const MINUTES_PER_DAY = 1440;
const MS_PER_DAY = 86_400_000;

/** Day number of an ISO date (`2027-03-01`); a RangeError of Temporal's if there is no such date. */
export function dayNumber(isoDate: string): number {
  const { year, month, day } = Temporal.PlainDate.from(isoDate);
  return Math.round(Date.UTC(year, month - 1, day) / MS_PER_DAY);
}

/** ISO date of a day number. */
export function isoDate(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Weekday, 1 = Monday .. 7 = Sunday (day 0 was a Thursday). */
export function weekday(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** ISO 8601 week that holds the day, as `2027-W23`: the week belongs to the year of its Thursday. */
export function isoWeek(day: number): string {
  const thursday = day - weekday(day) + 4;
  const year = new Date(thursday * MS_PER_DAY).getUTCFullYear();
  const first = Math.round(Date.UTC(year, 0, 1) / MS_PER_DAY);
  return `${year}-W${String(Math.floor((thursday - first) / 7) + 1).padStart(2, '0')}`;
}

import { Temporal } from 'temporal-polyfill';

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

/** Day number of the Monday of an ISO week, `2027-W23`; undefined if there is no such week. */
export function mondayOf(week: string): number | undefined {
  const parts = /^(\d{4})-W(\d{2})$/.exec(week);
  if (parts === null) return undefined;
  // 4 January is always in week 1.
  const fourth = Math.round(Date.UTC(Number(parts[1]), 0, 4) / MS_PER_DAY),
    monday = fourth - weekday(fourth) + 1 + 7 * (Number(parts[2]) - 1);
  return isoWeek(monday) === week ? monday : undefined;
}

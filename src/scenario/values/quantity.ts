import { MINUTES_PER_DAY } from '../../flow/model/time.js';

/**
 * Times, chances, dates and clock times as planners write them. Each reader answers undefined for what it
 * cannot read.
 */

export type TimeUnit = 's' | 'min' | 'h' | 'day' | 'days';

/** Minutes in so many of a unit. Seconds are divided, so that 90 s is exactly 1.5 min. */
export function toMinutes(amount: number, unit: TimeUnit): number {
  return unit === 's'
    ? amount / 60
    : amount * { min: 1, h: 60, day: MINUTES_PER_DAY, days: MINUTES_PER_DAY }[unit];
}

export const TIME = /^(\d+(?:\.\d+)?) *(s|min|h|days?)$/;
export const CHANCE = /^(\d+(?:\.\d+)?) *%$/;
export const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
export const CLOCK = /^(\d{1,2}):(\d{2})$/;
export const CLOCK_SPAN = /^\d{1,2}:\d{2} *- *\d{1,2}:\d{2}$/;

/** A hundred years; longer is a slip. */
export const LONGEST_MIN = 100 * 366 * MINUTES_PER_DAY;

/** `1.5 h` -> 90 minutes. */
export function minutesOf(text: string): number | undefined {
  const parts = TIME.exec(text.trim());
  if (parts === null) return undefined;
  const minutes = toMinutes(Number(parts[1]), parts[2] as TimeUnit);
  return minutes <= LONGEST_MIN ? minutes : undefined;
}

/** What would be right where a time could not be read: the number seen, with a unit. */
export function timeAdvice(seen: unknown): string {
  const text = typeof seen === 'number' || typeof seen === 'string' ? String(seen).trim() : '';
  const [, number, unit = ''] = /^(-?\d+(?:\.\d+)?) *([a-z]*)$/i.exec(text) ?? [];
  if (number === undefined) return 'a time, such as "20 min"; units are s, min, h, days';
  if (number.startsWith('-')) return 'a time that is not negative';
  if (TIME.test(text) || Number(number) > LONGEST_MIN) return 'a time of at most 100 years';
  return `a time with its unit (s, min, h, days), such as "${number} ${unitMeant(unit)}"`;
}

/** The unit that a planner may have meant by `minutes`, `hrs`, `d`. */
function unitMeant(word: string): string {
  const first = word.toLowerCase();
  return first.startsWith('s') ? 's' : first.startsWith('h') ? 'h' : first.startsWith('d') ? 'days' : 'min';
}

/** `8 %` -> 0.08 */
export function chanceOf(text: string): number | undefined {
  const parts = CHANCE.exec(text.trim());
  const chance = parts === null ? NaN : Number(parts[1]) / 100;
  return chance <= 1 ? chance : undefined;
}

/** True for a day that exists, in the years 1900 to 2199. */
export function isDate(text: string): boolean {
  const parts = DATE.exec(text);
  if (parts === null) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (year < 1900 || year > 2199 || month < 1 || month > 12) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const longest = month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return day >= 1 && day <= longest;
}

/** `06:30` -> 390 minutes after midnight; `24:00` is the end of the day. */
export function clockOf(text: string): number | undefined {
  const parts = CLOCK.exec(text.trim());
  if (parts === null) return undefined;
  const minutes = Number(parts[1]) * 60 + Number(parts[2]);
  return Number(parts[2]) < 60 && minutes <= MINUTES_PER_DAY ? minutes : undefined;
}

/** `06:00-14:30`, minutes after midnight; an end at or before the start is on the next day. */
export function clockSpanOf(text: string): { startMin: number; endMin: number } | undefined {
  if (!CLOCK_SPAN.test(text.trim())) return undefined;
  const [start, end] = text.split('-').map(clockOf);
  return start === undefined || end === undefined || start === MINUTES_PER_DAY
    ? undefined
    : { startMin: start, endMin: end };
}

/** From Monday, day 1, on. */
export const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/**
 * `Mon-Thu, Sat` or `every day` -> weekdays, 1 = Monday .. 7 = Sunday, sorted. A span may run over Sunday.
 */
export function weekdaysOf(text: string): number[] | undefined {
  if (text.trim() === 'every day') return [1, 2, 3, 4, 5, 6, 7];
  const days = new Set<number>();
  for (const part of text.split(',')) {
    const ends = part.split('-').map((word) => WEEKDAYS.indexOf(word.trim()));
    const [first, last = first] = ends;
    if (first === undefined || last === undefined || first < 0 || last < 0 || ends.length > 2)
      return undefined;
    for (let day = first; ; day = (day + 1) % 7) {
      days.add(day + 1);
      if (day === last) break;
    }
  }
  return [...days].sort((a, b) => a - b);
}

/** `2027-05-31` or `2027-07-12 to 2027-07-30`, both ends included; whether they are in order is not asked. */
export function daySpanOf(text: string): { from: string; to: string } | undefined {
  const [from = '', to = from, ...more] = text.split(' to ').map((day) => day.trim());
  return more.length === 0 && isDate(from) && isDate(to) ? { from, to } : undefined;
}

/** `2027-08-09` or `2027-08-09 06:00`, minutes after midnight. */
export function momentOf(text: string): { day: string; minute: number | undefined } | undefined {
  const [day = '', clock, ...more] = text.trim().split(/ +/);
  if (more.length > 0 || !isDate(day)) return undefined;
  if (clock === undefined) return { day, minute: undefined };
  const minute = clockOf(clock);
  return minute === undefined ? undefined : { day, minute };
}

/** Minutes after midnight as a clock time: 390 -> `06:30`. */
export const sayClock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

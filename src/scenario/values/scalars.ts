import { z } from 'zod';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { name, oneOrMore } from './keys.js';
import {
  CHANCE,
  CLOCK,
  CLOCK_SPAN,
  chanceOf,
  clockOf,
  clockSpanOf,
  DATE,
  daySpanOf,
  isDate,
  minutesOf,
  momentOf,
  TIME,
  timeAdvice,
  weekdaysOf,
} from './quantity.js';
import { exact } from './thousands.js';

type Advice = string | ((issue: { readonly input?: unknown }) => string);

/** A text of this form. */
const formed = (form: RegExp, error: Advice) => z.string({ error }).regex(form, { error, abort: true });

/** A text as what `read` makes of it; where that is undefined, `otherwise` says what would be right. */
export function readable<T>(text: z.ZodString, read: (text: string) => T | undefined, otherwise: Advice) {
  return text.transform((written, context): T => {
    const value = read(written);
    if (value !== undefined) return value;
    const message = typeof otherwise === 'string' ? otherwise : otherwise({ input: written });
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });
}

export const word = <const Words extends readonly [string, ...string[]]>(...words: Words) =>
  z.enum(words, {
    error: words.length === 1 ? `the word "${words[0]}"` : `one of ${words.map((w) => `"${w}"`).join(', ')}`,
  });

export const flag = z.boolean({ error: 'true or false' });
/** A key that is left out rather than set to false. */
export const mark = z.literal(true, { error: 'true, or leave the key out' });
/** A remark for those who read the file. */
export const text = z.string({ error: 'a text' });

/** A whole number; the upper limit catches slips of the pen. */
export function whole(least: number, most = 1_000_000) {
  const error = `a whole number from ${least} to ${exact(most)}`;
  return z.int({ error }).min(least, { error }).max(most, { error });
}

export function number(
  least: number,
  most: number,
  error: Advice = `a number from ${least} to ${exact(most)}`,
) {
  return z.number({ error }).min(least, { error }).max(most, { error });
}

/** Greater than 0. */
export function positive(most: number) {
  const error = `a number greater than 0, at most ${exact(most)}`;
  return z.number({ error }).gt(0, { error }).max(most, { error });
}

/** A number of spaces, or `unlimited`. */
export const spaces = z.union([whole(0), word('unlimited')], {
  error: 'a whole number from 0, or unlimited',
});
/** The same, but one at least. */
export const someSpaces = z.union([whole(1), word('unlimited')], {
  error: 'a whole number from 1, or unlimited',
});
/** As a scenario has it: undefined for no limit. */
export const limitOf = (written: number | 'unlimited' | undefined): number | undefined =>
  written === 'unlimited' ? undefined : written;

const timeError = (issue: { readonly input?: unknown }) => timeAdvice(issue.input);

/** A fixed time with its unit, in minutes. */
export const duration = readable(formed(TIME, timeError), minutesOf, timeError);

/** A fixed time greater than 0, in minutes. */
export const spell = duration.refine((minutes) => minutes > 0, { error: 'a time greater than 0' });

function chanceAdvice(seen: unknown): string {
  const number = typeof seen === 'number' ? seen : Number.parseFloat(String(seen));
  const example = number > 1 && number <= 100 ? number : 8;
  return `a chance, such as "${example} %", or a number from 0 to 1`;
}
const chanceError = (issue: { readonly input?: unknown }) => chanceAdvice(issue.input);

/** 0..1 */
export const chance = z
  .union(
    [number(0, 1, chanceError), readable(formed(CHANCE, chanceError), chanceOf, 'a chance of at most 100 %')],
    { error: chanceError },
  )
  .meta({ id: 'chance', description: 'A chance: a percentage such as "8 %", or a number from 0 to 1.' });

const DATE_WANTED = 'a day of the calendar, such as "2027-03-01"';
export const date = formed(DATE, DATE_WANTED).refine(isDate, {
  error: `${DATE_WANTED}, in the years 1900 to 2199`,
});

const CLOCK_WANTED = 'a clock time, such as "08:00"';
/** A clock time before 24:00, in minutes after midnight. */
export const clock = readable(
  formed(CLOCK, CLOCK_WANTED),
  (text) => {
    const minute = clockOf(text);
    return minute === MINUTES_PER_DAY ? undefined : minute;
  },
  `${CLOCK_WANTED}, before 24:00`,
);

/** Clock times, each once, in order. */
export const timetable = z
  .array(clock, { error: 'a list of clock times, such as ["08:00", "13:00"]' })
  .min(1, { error: 'at least one clock time' })
  .refine((times) => new Set(times).size === times.length, { error: 'each clock time once' })
  .transform((times) => times.toSorted((a, b) => a - b));

const SPAN_WANTED = 'clock times, such as "06:00-14:30"';
/** From one clock time to another, minutes after midnight. */
export const clockSpan = readable(
  formed(CLOCK_SPAN, SPAN_WANTED),
  clockSpanOf,
  `${SPAN_WANTED}, from 00:00 to 24:00`,
);

export const SPAN_OF_DAYS = 'a day or a span of days, such as "2027-05-31" or "2027-07-12 to 2027-07-30"';
/** Days, both ends included. */
export const daySpan = readable(z.string({ error: SPAN_OF_DAYS }), daySpanOf, SPAN_OF_DAYS).refine(
  (span) => span.from <= span.to,
  { error: 'a span of days whose end is not before its start' },
);

const MOMENT_WANTED = 'a day, such as "2027-08-09", or a day and a clock time, such as "2027-08-09 06:00"';
/** A day, or a clock time on it. */
export const moment = readable(z.string({ error: MOMENT_WANTED }), momentOf, MOMENT_WANTED);

const DAYS_WANTED = 'weekdays, such as "Mon-Fri", "Mon-Thu, Sat" or "every day"';
/** Weekdays, 1 = Monday, each once and in order. */
export const weekdays = oneOrMore(
  readable(z.string({ error: DAYS_WANTED }), weekdaysOf, DAYS_WANTED),
  DAYS_WANTED,
).transform((lists) => [...new Set(lists.flat())].sort((a, b) => a - b));

/**
 * A value of an option. `true` and `false` are those who write YAML 1.1 for yes and no; numbers are taken as
 * written.
 */
export const optionValue = z
  .union([name('a value of the option'), z.number(), z.boolean()], { error: 'a value of the option' })
  .transform((value) => (value === true ? 'yes' : value === false ? 'no' : String(value)));

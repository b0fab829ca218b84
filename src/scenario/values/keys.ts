import { z } from 'zod';
import {
  CHANCE,
  chanceOf,
  CLOCK_SPAN,
  clockSpanOf,
  DATE,
  isDate,
  minutesOf,
  TIME,
  timeAdvice,
} from './quantity.js';

/** Starts the text of a problem with an unknown key; the known keys follow. */
export const KNOWN_KEYS = 'one of the keys ';

/** A map with these keys and no others. `what` says what the map is, for a value that is none. */
export function keys<Shape extends z.ZodRawShape>(shape: Shape, what: string) {
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys' ? `${KNOWN_KEYS}${Object.keys(shape).join(', ')}` : what,
  });
}

/** A map from names that the planner chooses. */
export function named<Value extends z.ZodType>(value: Value, what: string) {
  return z.record(
    z.string().regex(NAME, { error: 'a name of 1 to 80 characters without spaces at its ends' }),
    value,
    { error: what },
  );
}

export const NAME = /^\S(?:.{0,78}\S)?$/;
export const name = (what: string) =>
  z
    .string({ error: what })
    .regex(NAME, { error: `${what}, of 1 to 80 characters without spaces at its ends` });

export const word = <const Words extends readonly [string, ...string[]]>(...words: Words) =>
  z.enum(words, {
    error: words.length === 1 ? `the word "${words[0]}"` : `one of ${words.map((w) => `"${w}"`).join(', ')}`,
  });

export const flag = z.boolean({ error: 'true or false' });

/** A whole number; the upper limit catches slips of the pen. */
export function whole(least: number, most = 1_000_000) {
  const error = `a whole number from ${least} to ${most}`;
  return z.int({ error }).min(least, { error }).max(most, { error });
}

export function number(least: number, most: number) {
  const error = `a number from ${least} to ${most}`;
  return z.number({ error }).min(least, { error }).max(most, { error });
}

/** Greater than 0. */
export function positive(most: number) {
  const error = `a number greater than 0, at most ${most}`;
  return z.number({ error }).gt(0, { error }).max(most, { error });
}

/** A number of spaces, or `unlimited`. */
export const spaces = z.union([whole(0), word('unlimited')], {
  error: 'a whole number from 0, or unlimited',
});

const timeError = (issue: { readonly input?: unknown }) => timeAdvice(issue.input);

/** A fixed time with its unit, in minutes. */
export const duration = z
  .string({ error: timeError })
  .regex(TIME, { error: timeError, abort: true })
  .refine((text) => minutesOf(text) !== undefined, { error: timeError, abort: true })
  .transform((text) => minutesOf(text)!);

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
    [
      z.number({ error: chanceError }).min(0, { error: chanceError }).max(1, { error: chanceError }),
      z
        .string({ error: chanceError })
        .regex(CHANCE, { error: chanceError, abort: true })
        .refine((text) => chanceOf(text) !== undefined, { error: 'a chance of at most 100 %', abort: true })
        .transform((text) => chanceOf(text)!),
    ],
    { error: chanceError },
  )
  .meta({ id: 'chance', description: 'A chance: a percentage such as "8 %", or a number from 0 to 1.' });

const DATE_WANTED = 'a day of the calendar, such as "2027-03-01"';
export const date = z
  .string({ error: DATE_WANTED })
  .regex(DATE, { error: DATE_WANTED, abort: true })
  .refine(isDate, { error: `${DATE_WANTED}, in the years 1900 to 2199` });

const SPAN_WANTED = 'clock times, such as "06:00-14:30"';
export const clockSpan = z
  .string({ error: SPAN_WANTED })
  .regex(CLOCK_SPAN, { error: SPAN_WANTED, abort: true })
  .refine((text) => clockSpanOf(text) !== undefined, {
    error: `${SPAN_WANTED}, from 00:00 to 24:00`,
    abort: true,
  })
  .transform((text) => clockSpanOf(text)!);

/**
 * A value of an option. `true` and `false` are those who write YAML 1.1 for yes and no; numbers are taken as
 * written.
 */
export const optionValue = z
  .union([name('a value of the option'), z.number(), z.boolean()], { error: 'a value of the option' })
  .transform((value) => (value === true ? 'yes' : value === false ? 'no' : String(value)));

/** One, or a list of one or more. */
export function oneOrMore<Value extends z.ZodType>(value: Value, what: string) {
  return z
    .union([value, z.array(value).min(1, { error: `${what}, at least one` })], { error: what })
    .transform((seen) => (Array.isArray(seen) ? (seen as z.output<Value>[]) : [seen as z.output<Value>]));
}

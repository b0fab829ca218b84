import { z } from 'zod';
import { remembering } from './remembering.js';

/** Starts the text of a problem with an unknown key; the known keys follow. */
export const KNOWN_KEYS = 'one of the keys ';

type Camel<Key> = Key extends `${infer Head} ${infer Tail}` ? `${Head}${Capitalize<Camel<Tail>>}` : Key;
/** What is read of a map: its keys in camel case (`at start` -> `atStart`); undefined: left out. */
type Read<Shape extends z.ZodRawShape> = { [Key in keyof Shape as Camel<Key>]: z.output<Shape[Key]> };

const camelCase = (key: string): string => key.replace(/ (.)/g, (_, letter: string) => letter.toUpperCase());

/**
 * A map with these keys and no others, read with its keys in camel case; problems name the planner's own.
 * `what` says what the map is, for a value that is none.
 */
export function keys<Shape extends z.ZodRawShape>(shape: Shape, what: string) {
  const names = Object.keys(shape).map((key) => [camelCase(key), key] as const);
  const map = z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys' ? `${KNOWN_KEYS}${Object.keys(shape).join(', ')}` : what,
  });
  return map.transform(
    (written: Readonly<Record<string, unknown>>) =>
      Object.fromEntries(names.map(([name, key]) => [name, written[key]])) as Read<Shape>,
  );
}

/** Says what would be right at a path of the planner's keys below the map, and what is seen there. */
export type Wrong = (path: readonly (string | number)[], wanted: string, seen?: string) => void;

/** For `superRefine`: what the keys of a map must be together. Not asked while one of them is misspelt. */
export const together =
  <Map>(ask: (map: Map, wrong: Wrong) => void) =>
  (map: Map, context: z.RefinementCtx<Map>): void => {
    if (context.issues.length > 0) return;
    ask(map, (path, message, seen) => {
      context.addIssue({ code: 'custom', path: [...path], message, params: { seen } });
    });
  };

export const NAME = /^\S(?:.{0,78}\S)?$/;
export const name = (what: string) =>
  z
    .string({ error: what })
    .regex(NAME, { error: `${what}, of 1 to 80 characters without spaces at its ends` });

/** A map from names that the planner chooses. */
export function named<Value extends z.ZodType>(value: Value, what: string) {
  return z.record(
    z.string().regex(NAME, { error: 'a name of 1 to 80 characters without spaces at its ends' }),
    remembering(value),
    { error: what },
  );
}

/** One, or a list of one or more. */
export function oneOrMore<Value extends z.ZodType>(value: Value, what: string) {
  return z
    .union([value, z.array(value).min(1, { error: `${what}, at least one` })], { error: what })
    .transform((seen) => (Array.isArray(seen) ? (seen as z.output<Value>[]) : [seen as z.output<Value>]));
}

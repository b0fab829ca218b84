import { amountOf } from './amount.js';

/** Data as read from a file, before the schema is asked. */
export type RawMap = Readonly<Record<string, unknown>>;

export const isRawMap = (value: unknown): value is RawMap =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
/** A map, or an empty one for anything else. */
export const mapOf = (value: unknown): RawMap => (isRawMap(value) ? value : {});
/** A list; a single value counts as a list of one, nothing as an empty one. */
export const listOf = (value: unknown): readonly unknown[] =>
  Array.isArray(value) ? value : value === undefined || value === null ? [] : [value];

/** A map's own entry, never one of its prototype. */
export function own<Value>(map: Readonly<Record<string, Value>>, key: string): Value | undefined {
  return Object.hasOwn(map, key) ? map[key] : undefined;
}

/** What is made for a key, once. */
export function remembered<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  const before = known.get(key);
  if (before !== undefined) return before;
  const made = make();
  known.set(key, made);
  return made;
}

/** The same function, asked once of each thing for as long as that is kept; the thing must not change. */
export function once<Thing extends object, Value>(make: (thing: Thing) => Value): (thing: Thing) => Value {
  const known = new WeakMap<Thing, { readonly value: Value }>();
  return (thing) => {
    let made = known.get(thing);
    if (made === undefined) known.set(thing, (made = { value: make(thing) }));
    return made.value;
  };
}

/** What stands at a path; undefined for nothing. */
export function valueAt(root: unknown, path: readonly (string | number)[]): unknown {
  let value: unknown = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

/**
 * A number, alone or with a unit or per cent sign, or a sample such as `1 in 5`; no date, no clock time, no
 * name.
 */
export const isQuantity = (value: unknown): boolean =>
  typeof value === 'number' ||
  (typeof value === 'string' && (amountOf(value) !== undefined || /^1 in \d+$/.test(value.trim())));

/**
 * What stands at an address below a path, each with its own: keys from the top, `*` for every name of a map,
 * `#` for every item of a list (a single value counts as one), `+` for the same where one may stand alone.
 */
export function placesAt(
  value: unknown,
  path: readonly (string | number)[],
  address: readonly string[],
): { readonly path: readonly (string | number)[]; readonly value: unknown }[] {
  const [key, ...rest] = address;
  if (key === undefined) return [{ path, value }];
  if (key === '*')
    return Object.entries(mapOf(value)).flatMap(([name, inner]) => placesAt(inner, [...path, name], rest));
  if (key === '#' || key === '+')
    return listOf(value).flatMap((item, i) =>
      placesAt(item, key === '#' || Array.isArray(value) ? [...path, i] : path, rest),
    );
  return placesAt(mapOf(value)[key], [...path, key], rest);
}

const LONGEST_TEXT = 200;

/** A value on one line, as a planner would write it: `{ low: 35 min, high: 60 min }`. */
export function textOf(value: unknown): string {
  const text = flow(value);
  return text.length > LONGEST_TEXT ? `${text.slice(0, LONGEST_TEXT - 3)}...` : text;
}

function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (isRawMap(value))
    return `{ ${Object.entries(value)
      .map(([key, inner]) => `${flow(key)}: ${flow(inner)}`)
      .join(', ')} }`;
  const text = String(value);
  return typeof value === 'string' && /[,:[\]{}#"]/.test(text) ? JSON.stringify(text) : text;
}

import type { Distribution } from '../../random/distribution.js';
import type { Written } from '../chances/measured.js';
import { written } from '../fit/written.js';
import { shownJson } from '../shown.js';

/** One value for the section `measured` of a scenario. */
export interface Entry {
  /** `route[prime].creates.dirt in primer`. */
  readonly path: string;
  /** The value with its basis, YAML in one line. */
  readonly value: string;
}

export const entryOf = (path: string, value: Written): Entry => ({ path, value: flow(value) });

/** A fitted time with what it rests on. */
export function timeEntry(path: string, distribution: Distribution, basis: Written): Entry {
  const value = written(distribution),
    said = `basis: ${flow(basis)}`;
  return {
    path,
    value: value.startsWith('{') ? `${value.slice(0, -2)}, ${said} }` : `{ value: ${value}, ${said} }`,
  };
}

/** Data as YAML in one line: a double-quoted text is that of JSON. */
export function flow(value: Written): string {
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return PLAIN.test(value) ? value : quoted(value);
  return `{ ${Object.entries(value)
    .map(([key, inner]) => `${NAME.test(key) && !WORD.test(key) ? key : quoted(key)}: ${flow(inner)}`)
    .join(', ')} }`;
}

/** `8.33 %`, `42.5 min`, `2027-08-16`: texts that are no more than that to any reader of YAML. */
const PLAIN = /^\d+(\.\d+)? (%|min)$|^\d{4}-\d{2}-\d{2}$/,
  NAME = /^[A-Za-z][\w -]*\w$/,
  /** Keys that some readers take for other things. */
  WORD = /^(true|false|yes|no|on|off|null)$/i;

export const quoted = (text: string): string => shownJson(JSON.stringify(text));

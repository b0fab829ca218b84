import { isRawMap, type RawMap } from '../whole/outline.js';

/**
 * A number, alone or with a unit or per cent sign, or a sample such as `1 in 5`; no date, no clock time, no
 * name.
 */
const QUANTITY = /^-?\d+(?:\.\d+)? *(?:%|[A-Za-z]+(?:\/[A-Za-z]+)?)?$|^1 in \d+$/;
export const isQuantity = (value: unknown): boolean =>
  typeof value === 'number' || (typeof value === 'string' && QUANTITY.test(value.trim()));

const PLAIN_FORM = new Set(['low', 'likely', 'high', 'mean', 'cv', 'sd', 'shape']);
const NAMED_FORMS = new Set([
  'constant',
  'uniform',
  'triangular',
  'pert',
  'exponential',
  'erlang',
  'gamma',
  'lognormal',
  'normal',
  'discrete',
  'weibull',
]);

/** A map that is one time, whatever the number of its keys. */
export function isTime(map: RawMap): boolean {
  const keys = Object.keys(map);
  if ('observed' in map || (keys.length === 1 && NAMED_FORMS.has(keys[0]!))) return true;
  return ('low' in map || 'mean' in map) && keys.every((key) => PLAIN_FORM.has(key));
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

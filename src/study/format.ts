import { exact, withCommas } from '../scenario/values/thousands.js';
import { type Estimate, isSame, mapped } from './statistics/estimate.js';
import type { Proportion } from './statistics/proportion.js';

export { exact };

/** Anything with a middle and an interval around it. */
type Span = Pick<Estimate, 'mean' | 'low' | 'high'>;

/**
 * Decimals to show for a span: as many as make the first digit of the half-width visible, and the second
 * where the first is a 1, from 0 to 4. Without an interval (or with one of width zero): three significant
 * digits.
 */
function decimalsFor({ mean, low, high }: Span): number {
  const halfWidth = low === null || high === null ? 0 : (high - low) / 2;
  const size = halfWidth > 0 ? halfWidth / 2 : Math.abs(mean) / 100;
  if (!(size > 0)) return 0;
  return Math.min(4, Math.max(0, -Math.floor(Math.log10(size) + 1e-9)));
}

/** Halves are rounded up, also where 0.575 times 100 falls a hair below 57.5. */
function rounded(value: number, decimals: number): string {
  return (value + Math.sign(value) * 1e-9 * Math.abs(value)).toFixed(decimals);
}

/** `-0` and `3.0` read badly: no negative zero, no useless zeros after the point. */
function tidy(value: number, decimals: number): string {
  const text = rounded(value, decimals);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : withCommas(trimmed);
}

/** A bare number in three significant digits, no exponent: `3.4`, `0.0312`, `1,240`. */
export function number(value: number): string {
  return tidy(value, decimalsFor({ mean: value, low: null, high: null }));
}

/** The middle of an estimate with the digits that its interval deserves: `3.4`. */
export function mean(estimate: Estimate, scale = 1): string {
  const span = scaled(estimate, scale);
  return written(span, span.mean);
}

/** `+0.31`: the mean of a difference, with its sign. */
export function signed(difference: Estimate): string {
  const text = mean(difference);
  return difference.mean > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/**
 * The bounds of an estimate, `3.3 to 3.5`, or why there are none, in a few words that `shortForms` explains:
 * `no interval` below two replications, `too few, 190 would do`, `not seen`, `not seen, under 0.15`,
 * `always`.
 */
export function bounds(estimate: Estimate, scale = 1): string {
  const span = scaled(estimate, scale);
  if (estimate.needs !== undefined) return `too few, ${about(estimate.needs)} would do`;
  if (estimate.most !== undefined) return `not seen, under ${number(estimate.most)}`;
  if (isSame(estimate)) return estimate.mean === 0 && estimate.low === null ? 'not seen' : 'always';
  if (!hasInterval(span)) return 'no interval';
  return `${written(span, span.low)} to ${written(span, span.high)}`;
}

/** What those of the short forms of `bounds` mean that stand in a text; nothing where there are none. */
export const shortForms = (text: string): string[] =>
  SHORT_FORMS.filter(([form]) => form.test(text)).map(([, meaning]) => meaning);

const SHORT_FORMS: readonly (readonly [form: RegExp, meaning: string])[] = [
  [/too few, [\d,]+ would do/, 'too few: so many replications would do'],
  [/\bnot seen(?!,)/, 'not seen: in none of the replications'],
  [/\bnot seen, under/, 'not seen, under: in none of the replications, so at most so many in one'],
  [/\balways\)?$/m, 'always: the same in all replications'],
];

/** Name of the interval, `95 % CI`. */
export function intervalName(level: number): string {
  // A level shared out among many comparisons is close to 1, but never it.
  const isClose = level > 0.995 && level < 1,
    digits = 4 + Math.floor(-Math.log10(1 - level) - 2);
  return `${isClose ? Number((level * 100).toPrecision(digits)) : number(level * 100)} % CI`;
}

/**
 * `3.4 (95 % CI 3.3 to 3.5)`, or why there is no interval: `3.4 (no interval, 1 replication)`, `3.4 (too few
 * replications to say; about 190 would do)`, `0 (not seen in 20 replications; under 0.15 a replication)`,
 * `3.4 (the same in all 20 replications)`. `unit` follows the mean.
 */
export function withInterval(estimate: Estimate, unit = '', scale = 1): string {
  return `${mean(estimate, scale)}${unit === '' ? '' : ` ${unit}`} (${interval(estimate, scale)})`;
}

/** `95 % CI 3.3 to 3.5`, or why there is no interval, as above. */
export const interval = (estimate: Estimate, scale = 1): string =>
  noBounds(estimate) ?? `${intervalName(estimate.level)} ${bounds(estimate, scale)}`;

/** `95 % CI 3.3 to 3.5, 20 replications`, or the same. */
export const intervalAndCount = (estimate: Estimate): string =>
  noBounds(estimate) ?? `${interval(estimate)}, ${count(estimate.n, 'replication')}`;

/** Why an estimate has no bounds, in full; null: it has. */
function noBounds(estimate: Estimate): string | null {
  const { mean, low, n, needs, most } = estimate,
    replications = count(n, 'replication');
  if (needs !== undefined) return `too few replications to say; about ${about(needs)} would do`;
  if (most !== undefined) return `not seen in ${replications}; under ${number(most)} a replication`;
  if (isSame(estimate))
    return mean === 0 && low === null
      ? `not seen in ${replications}`
      : `the same in ${n === 2 ? 'both replications' : `all ${replications}`}`;
  return low === null ? `no interval, ${replications}` : null;
}

/** A number of replications that would do is itself a guess: two digits, rounded up. */
function about(replications: number): string {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(replications)) - 1);
  return exact(Math.ceil(replications / step) * step);
}

/** A share as per cent with its interval, `62 % (95 % CI 47 to 76)`. */
export function percentWithInterval(share: Estimate): string {
  return withInterval(share, '%', 100);
}

/**
 * `3.4 (3.3 to 3.5)`, for columns whose head names the interval, `none` where no replication has a value;
 * `scale` 100 for per cent.
 */
export function short(estimate: Estimate, scale = 1): string {
  if (estimate.n === 0) return 'none';
  return `${mean(estimate, scale)} (${bounds(estimate, scale)})`;
}

/** A proportion seen as an estimate, so that both are written by the same rules. */
export const asEstimate = ({ share, low, high, level, n }: Proportion): Estimate => ({
  mean: share,
  low,
  high,
  level,
  n,
});

/** As a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** As it goes on behind something. */
export const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** `1 replication`, `1,000 replications`. */
export function count(n: number, noun: string): string {
  return `${exact(n)} ${noun}${n === 1 ? '' : 's'}`;
}

const scaled = (estimate: Estimate, scale: number): Span => mapped(estimate, (value) => value * scale);

function hasInterval(span: Span): span is Span & { low: number; high: number } {
  return span.low !== null && span.high !== null;
}

/**
 * A value of the span with the decimals of the span; zeros at the end are kept where an interval makes them
 * tell something.
 */
function written(span: Span, value: number): string {
  const decimals = decimalsFor(span);
  if (!hasInterval(span) || span.low === span.high) return tidy(value, decimals);
  const text = rounded(value, decimals);
  return withCommas(Number(text) === 0 ? text.replace('-', '') : text);
}

/**
 * The days of a time from its first moment to its end, local dates and times: `2027-08-09 to 2027-08-20`, or
 * one day. An end at midnight is that of the day before.
 */
export function daysText(time: LocalTime): string {
  const { first, last } = daysOf(time);
  return first === last ? first : `${first} to ${last}`;
}

interface LocalTime {
  readonly from: string;
  readonly to: string;
}

/** The first and the last of these days. */
export const daysOf = ({ from, to }: LocalTime): { readonly first: string; readonly last: string } => ({
  first: from.slice(0, 10),
  last: new Date(Date.parse(`${to}Z`) - 1).toISOString().slice(0, 10),
});

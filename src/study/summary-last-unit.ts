import { number } from './format.js';
import { leastForQuantile, quantileRanks } from './quantile-interval.js';
import type { DateQuantile } from './results.js';
import type { Sample } from './sample.js';
import type { Observation } from '../measure/observation.js';

export const QUANTILES = [0.5, 0.8, 0.95];

/**
 * Quantiles over replications of the date on which the last unit was shipped. A replication that was not finished comes
 * after all that were: its date is not known, only that it is later. None without a quantity.
 */
export function lastUnit(sample: Sample): DateQuantile[] {
  if (sample.scenario.programme.quantity === undefined) return [];
  const dates = Float64Array.from(sample.observations, (each) => (each.outcome === 'finished' ? lastShipped(each) : Infinity)).filter((time) => !Number.isNaN(time)).sort();
  return QUANTILES.map((p) => dateQuantile(sample, dates, p));
}

/** When the last unit was shipped, minutes; NaN if none was, or if it was not kept. */
export function lastShipped({ shippedAt }: Observation): number {
  return shippedAt.reduce((last, time) => (time > last || Number.isNaN(last) ? time : last), NaN);
}

/** A quantile of dates, earliest first, with the order statistics that bound it; Infinity stands for later than all known. */
export function dateQuantile({ clock, level }: Sample, sorted: Float64Array, p: number): DateQuantile {
  const n = sorted.length, name = `P${number(p * 100)}`, ranks = quantileRanks(n, p, level);
  const none = { p, date: null, low: null, high: null };
  if (n === 0) return { ...none, why: 'no unit was shipped' };
  const late = sorted.filter((time) => time === Infinity).length;
  const unfinished = `${late} of ${n} replications ${late === 1 ? 'was' : 'were'} not finished`;
  if (ranks === null) return { ...none, why: `a ${number(level * 100)} % interval for ${name} needs ${leastForQuantile(p, level)} replications, there ${n === 1 ? 'is' : 'are'} ${n}` };
  const date = (rank: number): string | null => clock.date(sorted[rank - 1]);
  if (date(ranks.middle) === null) return { ...none, why: `${unfinished}, and ${name} is among those` };
  return { p, date: date(ranks.middle), low: date(ranks.low), high: date(ranks.high), why: date(ranks.high) === null ? `${unfinished}, so the interval has no end` : null };
}

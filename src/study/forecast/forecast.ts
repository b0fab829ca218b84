import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import type { LogTold } from '../../records/log-told.js';
import { dayNumber, isoDate } from '../../scenario/calendar/date.js';
import { LEVEL } from '../asked.js';
import { headOf, type ResultsHead } from '../head.js';
import { besides, type ForecastBesides } from './besides.js';
import { type BuildsOptions, buildsAhead } from './builds-ahead.js';

/** One order that is not out yet. */
export interface OrderAhead {
  readonly unit: string;
  /** Where it stands; null: not released. */
  readonly at: string | null;
  /** ISO dates; null: none, or not reached in the run. */
  readonly due: string | null;
  readonly half: string | null;
  readonly fourInFive: string | null;
  /** Builds in which it is late, and days behind its due day in half of these; null without a due day. */
  readonly late: number | null;
  readonly daysLate: number | null;
}

export interface ForecastResults extends ResultsHead<'forecast'>, ForecastBesides {
  readonly replications: number;
  readonly log: LogTold & { readonly file: string };
  readonly at: string;
  /** `06:30`, by the clock of the programme's zone; null: its first minute. */
  readonly time: string | null;
  readonly units: { readonly standing: number; readonly shipped: number; readonly toCome: number };
  /** The likeliest to be late first, then by date. */
  readonly orders: readonly OrderAhead[];
  readonly lastUnit: { readonly half: string | null; readonly fourInFive: string | null };
  readonly notes: readonly string[];
}

export interface ForecastOptions extends BuildsOptions {
  readonly file: string;
}

/**
 * The rest of a programme from where the floor stands: which orders will be late, by how much, how sure.
 * Rejects with a RangeError for a programme that cannot be run.
 */
export async function forecastStudy(options: ForecastOptions): Promise<ForecastResults> {
  const { scenario, file, log, seed, replications } = options,
    { floor, clock, units, last } = await buildsAhead(options);
  const dayOf = (instant: number): number =>
      Number.isFinite(instant) ? Math.floor(clock.local(instant) / MINUTES_PER_DAY) : Infinity,
    dateOf = (instant: number): string | null => (Number.isFinite(instant) ? isoDate(dayOf(instant)) : null);
  const ahead = units.map(({ unit, at, dueAt, shippedAt }): OrderAhead => {
    const isDue = dueAt < Infinity,
      sorted = shippedAt.toSorted(ascending),
      behind = sorted.filter((out) => out > dueAt).map((out) => out - dueAt),
      daysLate = dayOf(dueAt + quantile(behind, 0.5)) - dayOf(dueAt - 1);
    return {
      unit,
      at,
      // The end of the due day is the start of the next.
      due: isDue ? dateOf(dueAt - 1) : null,
      half: dateOf(quantile(sorted, 0.5)),
      fourInFive: dateOf(quantile(sorted, 0.8)),
      late: isDue ? behind.length : null,
      daysLate: isDue && Number.isFinite(daysLate) ? Math.max(1, daysLate) : null,
    };
  });
  const by = (date: string | null): number => (date === null ? Infinity : dayNumber(date));
  ahead.sort((a, b) => (b.late ?? 0) - (a.late ?? 0) || by(a.half) - by(b.half) || 0);
  const sorted = last.toSorted(ascending),
    unfinished = last.filter((at) => at === Infinity).length,
    standing = floor.opening.placed.length;
  return {
    ...headOf('forecast', { scenario, file, seed, level: LEVEL }),
    replications,
    log: { file: log.file, ...floor.log },
    at: floor.date,
    time: floor.minute === 0 ? null : floor.said.slice(-5),
    units: { standing, shipped: floor.shipped, toCome: ahead.length - standing },
    orders: ahead,
    lastUnit: { half: dateOf(quantile(sorted, 0.5)), fourInFive: dateOf(quantile(sorted, 0.8)) },
    ...besides(scenario, units, dayOf, floor.day),
    notes: [
      ...floor.notes,
      ...(unfinished > 0 ? [`${unfinished} of ${replications} builds do not ship all units.`] : []),
    ],
  };
}

const ascending = (a: number, b: number): number => a - b;

/** The least value that this share of builds does not exceed; Infinity of those that never come. */
const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Infinity;

import { FINISHED, simulate } from '../../../flow/engine.js';
import { MINUTES_PER_DAY } from '../../../flow/model/time.js';
import { prepare } from '../../../flow/plan.js';
import type { LogTold } from '../../../records/log-told.js';
import { dayNumber, isoDate } from '../../../scenario/calendar/date.js';
import { compile } from '../../../scenario/compile.js';
import { runSpan } from '../../../scenario/programme/span.js';
import type { Order } from '../../../scenario/types/programme.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { LEVEL, wholeNumber } from '../../asked.js';
import { headOf, type ResultsHead } from '../../head.js';
import type { LogSource } from '../types.js';
import { type AskedMoment, type FloorAt, floorAt } from './floor-at.js';

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

export interface ForecastResults extends ResultsHead<'forecast'> {
  readonly replications: number;
  readonly log: LogTold & { readonly file: string };
  readonly at: string;
  readonly units: { readonly standing: number; readonly shipped: number; readonly toCome: number };
  /** The likeliest to be late first, then by date. */
  readonly orders: readonly OrderAhead[];
  readonly lastUnit: { readonly half: string | null; readonly fourInFive: string | null };
  readonly notes: readonly string[];
}

export interface ForecastOptions {
  readonly scenario: Scenario;
  readonly file: string;
  readonly log: LogSource;
  readonly at: AskedMoment;
  readonly seed: string;
  readonly replications: number;
  readonly signal?: AbortSignal | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
}

/** The scenario from the day of the moment on: with the units that stand there, and those still to come. */
export function restOf(scenario: Scenario, floor: FloorAt, nameOf: (step: number) => string): Scenario {
  const { programme } = scenario,
    known = new Map(
      programme.orders.list.flatMap((order) => (order.build === undefined ? [] : [[order.build, order]])),
    ),
    written = { path: ['programme', 'opening'] };
  const standing = floor.opening.placed.map(({ unit, step, options }): Order => {
    const order = known.get(unit),
      came = floor.inside.units.get(unit)?.enteredAt ?? NaN,
      after = programme.orders.dueAfterMin,
      dueAfter = after === undefined || Number.isNaN(came) ? undefined : dayAt(scenario, came + after);
    return {
      build: unit,
      release: undefined,
      due: notBefore(order?.due ?? dueAfter, floor.date),
      options: { ...order?.options, ...options },
      at: nameOf(step),
      written: order?.written ?? written,
    };
  });
  const rest = programme.orders.list
    .filter(({ build, at }) => at === undefined && (build === undefined || !floor.entered.has(build)))
    .map((order) => ({
      ...order,
      release: notBefore(order.release, floor.date),
      due: order.due,
    }));
  return {
    ...scenario,
    programme: {
      ...programme,
      start: floor.date,
      quantity:
        programme.quantity === undefined
          ? undefined
          : Math.max(1, programme.quantity - floor.entered.size + standing.length),
      orders: { ...programme.orders, list: [...standing, ...rest] },
    },
  };
}

const notBefore = (date: string | undefined, first: string): string | undefined =>
  date !== undefined && date < first ? first : date;

const dayAt = (scenario: Scenario, instant: number): string => {
  const { clock } = runSpan(scenario);
  return isoDate(Math.floor(clock.local(instant) / MINUTES_PER_DAY));
};

/**
 * The rest of a programme from where the floor stands: which orders will be late, by how much, how sure.
 * Rejects with a RangeError for a programme that cannot be run.
 */
export async function forecastStudy(options: ForecastOptions): Promise<ForecastResults> {
  const { scenario, file, log, seed, replications } = options;
  wholeNumber('replications', replications);
  if (scenario.programme.quantity === undefined)
    throw new RangeError('programme: expected a `quantity` for a forecast of its orders, got none');
  const whole = compile(scenario),
    floor = await floorAt(log, scenario, options.at),
    rest = restOf(scenario, floor, (step) => whole.steps.names[step] ?? ''),
    model = compile(rest),
    plan = prepare(model),
    { clock, origin } = runSpan(rest),
    { orders } = model.programme;
  const shipped: number[][] = [],
    late: number[][] = [],
    due: number[] = [],
    last: number[] = [];
  let unfinished = 0;
  for (let r = 1; r <= replications; r++) {
    options.signal?.throwIfAborted();
    const run = simulate(plan, seed, r);
    run.shippedAt.forEach((at, u) => {
      const out = Number.isNaN(at) ? Infinity : at,
        // Of a unit that never came in, that of its order.
        dueAt = run.dueAt[u] ?? Infinity;
      (shipped[u] ??= []).push(out);
      if (dueAt < Infinity) due[u] = dueAt;
      const behind = (late[u] ??= []);
      if (dueAt < Infinity && out > dueAt) behind.push(out - dueAt);
    });
    if (run.outcome === FINISHED) last.push(run.now);
    else {
      unfinished++;
      last.push(Infinity);
    }
    options.onReplication?.(r, replications);
    await Promise.resolve();
  }
  const dateOf = (minutes: number): string | null =>
    Number.isFinite(minutes) ? isoDate(Math.floor(clock.local(origin + minutes) / MINUTES_PER_DAY)) : null;
  const known = new Map(floor.opening.placed.map((placed) => [placed.unit, placed]));
  const named = new Set(rest.programme.orders.list.map(({ build }) => build));
  const ahead = shipped.map((times, u): OrderAhead => {
    // A clash with a number of the planner's is named anew by the model; here units go on to be counted.
    const own = orders.names[u],
      unit = own !== undefined && named.has(own) ? own : String(floor.entered.size + u + 1 - known.size),
      placed = known.get(unit),
      dueAt = due[u] ?? Infinity,
      isDue = dueAt < Infinity,
      sorted = times.toSorted((a, b) => a - b),
      behind = (late[u] ?? []).toSorted((a, b) => a - b),
      daysLate = quantile(behind, 0.5) / MINUTES_PER_DAY;
    return {
      unit,
      at: placed === undefined ? null : (whole.steps.names[placed.step] ?? null),
      // The end of the due day is the start of the next.
      due: isDue ? dateOf(dueAt - 1) : null,
      half: dateOf(quantile(sorted, 0.5)),
      fourInFive: dateOf(quantile(sorted, 0.8)),
      late: isDue ? behind.length : null,
      daysLate: isDue && Number.isFinite(daysLate) ? Math.ceil(daysLate) : null,
    };
  });
  const by = (date: string | null): number => (date === null ? Infinity : dayNumber(date));
  ahead.sort((a, b) => (b.late ?? 0) - (a.late ?? 0) || by(a.half) - by(b.half) || 0);
  last.sort((a, b) => a - b);
  return {
    ...headOf('forecast', { scenario, file, seed, level: LEVEL }),
    replications,
    log: { file: log.file, ...floor.log },
    at: floor.date,
    units: {
      standing: known.size,
      shipped: floor.shipped,
      toCome: ahead.length - known.size,
    },
    orders: ahead,
    lastUnit: { half: dateOf(quantile(last, 0.5)), fourInFive: dateOf(quantile(last, 0.8)) },
    notes: [
      ...floor.notes,
      `The forecast begins with the first minute of ${floor.date}.`,
      ...(unfinished > 0 ? [`${unfinished} of ${replications} builds do not ship all units.`] : []),
    ],
  };
}

/** The least value that this share of builds does not exceed; Infinity of those that never come. */
const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Infinity;

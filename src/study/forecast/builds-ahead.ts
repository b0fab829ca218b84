import { FINISHED, simulate } from '../../flow/engine.js';
import { prepare } from '../../flow/plan.js';
import type { ZoneClock } from '../../scenario/calendar/zone.js';
import { compile } from '../../scenario/compile.js';
import { runSpan } from '../../scenario/programme/span.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { wholeNumber } from '../asked.js';
import { type AskedMoment, type FloorAt, floorAt } from '../validate/start/floor-at.js';
import type { LogSource } from '../validate/types.js';
import { refusedIn, restOf } from './rest.js';

export interface BuildsOptions {
  readonly scenario: Scenario;
  readonly log: LogSource;
  readonly at: AskedMoment;
  readonly seed: string;
  readonly replications: number;
  readonly signal?: AbortSignal | undefined;
  readonly onReplication?: ((done: number, of: number) => void) | undefined;
}

/** A unit that is not out yet, in each build; times are minutes since 1970-01-01T00:00Z. */
export interface UnitAhead {
  readonly unit: string;
  /** The step where it stands; null: it has not come in. */
  readonly at: string | null;
  /** End of its due day; Infinity: it has none. */
  readonly dueAt: number;
  /** By build; Infinity: never in it. */
  readonly shippedAt: readonly number[];
}

export interface BuildsAhead {
  readonly floor: FloorAt;
  /** In build order. */
  readonly units: readonly UnitAhead[];
  /** When the last unit is out, by build; Infinity: not all of them are. */
  readonly last: readonly number[];
  readonly clock: ZoneClock;
}

/**
 * Simulates the rest of a programme from where the floor stands.
 * Rejects with a RangeError for a programme that cannot be run.
 */
export async function buildsAhead(options: BuildsOptions): Promise<BuildsAhead> {
  const { scenario, log, seed, replications } = options;
  wholeNumber('replications', replications);
  if (scenario.programme.quantity === undefined)
    throw new RangeError('programme: expected a `quantity` for a forecast of its orders, got none');
  const whole = compile(scenario),
    floor = await floorAt(log, { scenario, model: whole }, options.at),
    rest = restOf(floor, whole),
    model = compile(rest),
    plan = prepare(model),
    { clock, origin } = runSpan(rest),
    shipped: number[][] = [],
    due: number[] = [],
    last: number[] = [];
  for (let r = 1; r <= replications; r++) {
    options.signal?.throwIfAborted();
    const run = simulate(plan, seed, r);
    run.shippedAt.forEach((at, u) => {
      (shipped[u] ??= []).push(Number.isNaN(at) ? Infinity : origin + at);
      // Of a unit that never came in, that of its order.
      const dueAt = run.dueAt[u] ?? Infinity;
      if (dueAt < Infinity) due[u] = origin + dueAt;
    });
    last.push(run.outcome === FINISHED ? origin + run.now : Infinity);
    options.onReplication?.(r, replications);
    await Promise.resolve();
  }
  const known = new Map(floor.opening.placed.map((placed) => [placed.unit, placed])),
    named = new Set(rest.programme.orders.list.map(({ build }) => build));
  const units = shipped.map((shippedAt, u): UnitAhead => {
    // A clash with a number of the planner's is named anew by the model; here units go on to be counted.
    const own = model.programme.orders.names[u],
      unit = own !== undefined && named.has(own) ? own : String(floor.entered.size + u + 1 - known.size),
      placed = known.get(unit);
    return {
      unit,
      at: placed === undefined ? null : (whole.steps.names[placed.step] ?? null),
      dueAt: due[u] ?? Infinity,
      shippedAt,
    };
  });
  return { floor: { ...floor, notes: [...floor.notes, ...refusedIn(rest)] }, units, last, clock };
}

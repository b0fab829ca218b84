import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { programmeClock } from '../../scenario/programme/clock.js';
import type { ToJudge } from '../held/rate-held.js';
import { defined } from '../lists.js';
import { lastUnitDates, lastUnitDay } from '../programme/dates.js';
import type { Changed } from '../reliefs/changes.js';
import type { Shipments } from '../reliefs/shipped.js';
import type { Replicator, Variant } from '../run/replicator.js';
import { unitCost } from '../sections/costs.js';
import { difference } from '../statistics/difference.js';
import { proportion } from '../statistics/proportion.js';
import { amount } from '../statistics/skewed-interval.js';
import { sum } from '../statistics/sums.js';
import type { BuildResult, ReachGoal, StepResult } from './results.js';

/** What is kept of a replication of a build that is told. */
export interface Seen extends ToJudge, Shipments {
  /** Money a unit shipped; NaN without prices. Days to the last unit; NaN unless all are out. */
  readonly cost: number;
  readonly lastUnit: number;
}

/** A build with what fresh replications of it were. */
export interface Told {
  readonly changed: Changed;
  readonly seen: readonly Seen[];
}

/** Runs builds at the plan itself, no replication of one twice however often it is asked for. */
export class Teller {
  private readonly known = new Map<string, Seen[]>();

  constructor(private readonly replicator: Replicator) {}

  /** The first so many replications of each. */
  async tell(builds: readonly Changed[], replications: number): Promise<Told[]> {
    const lacking = this.lacking(builds, replications);
    for (const has of new Set(lacking.map((build) => this.seenOf(build).length))) {
      const those = lacking.filter((build) => this.seenOf(build).length === has),
        rows = await this.replicator.rows(those.map(variantOf), has + 1, replications);
      for (const [i, build] of those.entries()) this.seenOf(build).push(...defined(rows[i]));
    }
    return builds.map((changed) => ({ changed, seen: this.seenOf(changed).slice(0, replications) }));
  }

  /** How many have to be run for that. */
  toRun(builds: readonly Changed[], replications: number): number {
    return sum(this.lacking(builds, replications).map((build) => replications - this.seenOf(build).length));
  }

  /** Builds of which fewer are known, each once. */
  private lacking(builds: readonly Changed[], replications: number): Changed[] {
    const once = new Map(builds.map((build) => [build.key, build]));
    return [...once.values()].filter((build) => this.seenOf(build).length < replications);
  }

  private seenOf({ key }: Changed): Seen[] {
    const seen = this.known.get(key) ?? [];
    this.known.set(key, seen);
    return seen;
  }
}

function variantOf({ key, scenario, model }: Changed): Variant<Seen> {
  const cost = unitCost(scenario, model);
  return {
    key: `${key} told`,
    model,
    read: (each) => ({
      outcome: each.outcome,
      shipped: each.shipped,
      leadMean: each.leadMean,
      shippedIn: each.shippedIn,
      shippedOn: each.shippedOn,
      endedAt: each.endedAt,
      minutes: each.minutes,
      cost: cost === null ? NaN : cost(each),
      lastUnit: lastUnitDay(each),
    }),
  };
}

/** How units are counted in a build, see `shippedADay`. */
export type PerDay = (changed: Changed) => (seen: Shipments) => number;

/** The figures of a build. */
export function figuresOf(
  { changed, seen }: Told,
  perDay: PerDay,
  goal: ReachGoal,
  level: number,
): Omit<BuildResult, 'money' | 'day'> {
  const { scenario } = changed,
    clock = programmeClock(scenario),
    days = seen.map(({ lastUnit }) => lastUnit),
    costs = amount(
      seen.map(({ cost }) => cost),
      level,
    );
  return {
    throughput: amount(seen.map(perDay(changed)), level),
    costPerUnit: costs.n === 0 ? null : costs,
    lastUnit: lastUnitDates(scenario, days, clock, level),
    byDate:
      goal.kind === 'rate'
        ? null
        : proportion(days.filter((day) => isBy(clock, day, goal.date)).length, days.length, level),
  };
}

/** What a build ships more than the one before it. */
export const gainOver = (before: Told, after: Told, perDay: PerDay, level: number): StepResult['gain'] =>
  difference(before.seen.map(perDay(before.changed)), after.seen.map(perDay(after.changed)), level)
    .difference;

function isBy(clock: ReturnType<typeof programmeClock>, day: number, date: string): boolean {
  const out = clock.date(day * MINUTES_PER_DAY);
  return out !== null && out <= date;
}

import type { ScenarioData } from '../../scenario/data.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { ToVary } from '../../scenario/vary.js';
import { constraint } from '../constraint/constraint.js';
import { likeliest } from '../constraint/likeliest.js';
import type { ConstraintResult } from '../constraint/results.js';
import { seenIn } from '../constraint/seen.js';
import { inWeeksJudged, type Watched, watch } from '../constraint/watch.js';
import type { Verdict } from '../held/rate-held.js';
import { inUnit } from '../planners-unit.js';
import { changedTo } from '../reliefs/changes.js';
import { valuesOf } from '../reliefs/values/values.js';
import { type WeakestResult, weakest } from '../reliefs/values/weakest.js';
import { Replicator, type ReplicatorOptions } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { boundsOf, type Estimate } from '../statistics/estimate.js';
import type { ComparedInWeeks, CompareResults } from './results.js';

export interface OutlookOptions extends Omit<ReplicatorOptions, 'seed'> {
  readonly onStage?: ((text: string) => void) | undefined;
}

/** A build of several that were set side by side. */
export interface ToldBuild {
  /** Null for the scenario as it is. */
  readonly name: string | null;
  readonly scenario: Scenario;
  /** What it ships, in the planner's unit, and what its plan asks, units a working day; null: no rate. */
  readonly shipped: Estimate;
  readonly askedPerDay: number | null;
}

interface OutlookAsked extends Pick<ComparedInWeeks, 'judged'> {
  readonly results: Pick<CompareResults, 'level' | 'replications' | 'rateUnit' | 'seed'>;
  readonly scenario: Scenario;
  readonly data: ScenarioData | undefined;
  readonly told: ToldBuild;
}

/**
 * What stops the build that is told, and which guess hangs on most what the scenario as it is ships. They
 * hang on the results alone: after shards were merged they are the same as after one run.
 */
export async function outlook(
  { results, judged, scenario, data, told }: OutlookAsked,
  { onStage, ...options }: OutlookOptions,
): Promise<{ readonly constraint: ConstraintResult; readonly weakest: WeakestResult | null }> {
  const { level, replications, rateUnit, seed } = results,
    base = changedTo(scenario),
    plan = planned(scenario, base.model),
    replicator = new Replicator({ ...options, seed });
  const watching = (build: Scenario, verdict: Verdict): Promise<Watched> =>
    watch(
      inWeeksJudged(plan, { ...judged, verdict }, { base: changedTo(build), replications, level }),
      replicator,
    );
  onStage?.(`looking at what stops ${told.name === null ? 'it' : `“${told.name}”`}`);
  try {
    const seen = await watching(
        told.scenario,
        verdictOf(told, told.askedPerDay === null ? 0 : inUnit(told.askedPerDay, rateUnit)),
      ),
      found = await constraint(seen, replicator),
      toVary = valuesOf({ scenario, data });
    return { constraint: found, weakest: await weakestOf(seen, found, toVary) };
  } finally {
    await replicator.close();
  }

  /** Where nothing was tried on the scenario as it is, what waits there tells which guesses may bear most. */
  async function weakestOf(
    seen: Watched,
    found: ConstraintResult,
    toVary: ToVary,
  ): Promise<WeakestResult | null> {
    if (toVary.assumptions.length === 0) return null;
    if (told.name === null) return weakest(seen, found, toVary, replicator);
    const ofBase = await watching(scenario, 'no rate asked'),
      waiting = likeliest(plan, seenIn(ofBase.observations)).map(({ thing, waiting: units }) => ({
        thing,
        units,
      }));
    return weakest(ofBase, { tried: [], waiting }, toVary, replicator);
  }
}

/** By the whole interval of what it ships. */
function verdictOf({ shipped, askedPerDay }: ToldBuild, rate: number): Verdict {
  if (askedPerDay === null) return 'no rate asked';
  const { low, high } = boundsOf(shipped);
  return low >= rate ? 'holds' : high < rate ? 'falls short' : 'not settled';
}

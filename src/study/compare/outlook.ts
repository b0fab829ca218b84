import type { ScenarioData } from '../../scenario/data.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { constraint } from '../constraint/constraint.js';
import { likeliest } from '../constraint/likeliest.js';
import type { ConstraintResult } from '../constraint/results.js';
import { seenIn } from '../constraint/seen.js';
import { type ConstraintAsked, inWeeksJudged, watch } from '../constraint/watch.js';
import type { Verdict } from '../held/rate-held.js';
import { inUnit } from '../planners-unit.js';
import { type Changed, changedTo } from '../reliefs/changes.js';
import { hangsOn } from '../reliefs/values/hangs-on.js';
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
  const asked = (build: Changed, verdict: Verdict): ConstraintAsked =>
    inWeeksJudged(plan, { ...judged, verdict }, { base: build, replications, level });
  const perDay = told.askedPerDay === null ? null : inUnit(told.askedPerDay, rateUnit),
    ofTold = asked(told.name === null ? base : changedTo(told.scenario), verdictOf(told.shipped, perDay));
  onStage?.(`looking at what stops ${told.name === null ? 'it' : `“${told.name}”`}`);
  try {
    return told.name === null
      ? await hangsOn(ofTold, { scenario, data }, replicator)
      : {
          constraint: await constraint(await watch(ofTold, replicator), replicator),
          weakest: await weakestOfBase(),
        };
  } finally {
    await replicator.close();
  }

  /** Nothing was tried on the scenario as it is: what waits there tells which guesses may bear most. */
  async function weakestOfBase(): Promise<WeakestResult | null> {
    const toVary = valuesOf({ scenario, data });
    if (toVary.assumptions.length === 0) return null;
    const seen = await watch(asked(base, 'no rate asked'), replicator),
      waiting = likeliest(plan, seenIn(seen.observations));
    return weakest(seen, { tried: [], waiting }, toVary, replicator);
  }
}

/** By the whole interval of what it ships, against the rate asked; null: none is. */
function verdictOf(shipped: Estimate, rate: number | null): Verdict {
  if (rate === null) return 'no rate asked';
  const { low, high } = boundsOf(shipped);
  return low >= rate ? 'holds' : high < rate ? 'falls short' : 'not settled';
}

import type { ToVary } from '../../scenario/vary.js';
import { constraint } from '../constraint/constraint.js';
import { likeliest } from '../constraint/likeliest.js';
import { seenIn } from '../constraint/seen.js';
import { inWeeksJudged, type Watched, watch } from '../constraint/watch.js';
import type { Verdict } from '../held/rate-held.js';
import { defined } from '../lists.js';
import { inUnit } from '../planners-unit.js';
import { changedTo } from '../reliefs/changes.js';
import { valuesOf } from '../reliefs/values/values.js';
import { type WeakestResult, weakest } from '../reliefs/values/weakest.js';
import { Replicator, type ReplicatorOptions } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import { boundsOf } from '../statistics/estimate.js';
import type { CompareAsked } from './design.js';
import type { ComparedInWeeks, CompareResults, VariantResult } from './results.js';

export interface WithConstraintOptions extends Omit<ReplicatorOptions, 'seed'> {
  readonly onStage?: ((text: string) => void) | undefined;
}

/**
 * The results with what stops the what-if that ships most, or the scenario as it is where none surely ships
 * more, and with the guess that what the scenario ships hangs on most. They hang on the results alone: after
 * shards were merged they are the same as after one run.
 */
export async function withConstraint(
  { results, judged }: ComparedInWeeks,
  { scenario, data, whatIfs, seed }: CompareAsked,
  { onStage, ...options }: WithConstraintOptions,
): Promise<CompareResults> {
  const { level, replications, rateUnit } = results,
    most = shipsMost(results),
    base = changedTo(scenario),
    plan = planned(scenario, base.model);
  const asked = (name: string | null) =>
    inWeeksJudged(
      plan,
      { ...judged, verdict: verdictOf(results, name) },
      {
        base: name === null ? base : changedTo(defined(whatIfs.find((each) => each.name === name)).scenario),
        ...{ replications, level },
      },
    );
  onStage?.(`looking at what stops ${most === null ? 'it' : `“${most}”`}`);
  const replicator = new Replicator({ ...options, seed });
  try {
    const seen = await watch(asked(most), replicator),
      found = await constraint(seen, replicator),
      toVary = valuesOf({ scenario, data });
    return {
      ...results,
      constraint: { of: most, ...found },
      weakest:
        toVary.assumptions.length === 0
          ? null
          : most === null
            ? await weakest(seen, found, toVary, replicator)
            : await ofBase(await watch(asked(null), replicator), toVary),
    };
  } finally {
    await replicator.close();
  }

  /** Nothing was tried on the scenario as it is: what waits there tells which guesses may bear most. */
  function ofBase(seen: Watched, toVary: ToVary): Promise<WeakestResult | null> {
    const waiting = likeliest(plan, seenIn(seen.observations)).map(({ thing, waiting: units }) => ({
      thing,
      units,
    }));
    return weakest(seen, { tried: [], waiting }, toVary, replicator);
  }

  /** By the whole interval of what it ships. */
  function verdictOf({ base, whatIfs }: CompareResults, name: string | null): Verdict {
    const variant: VariantResult = defined(name === null ? base : whatIfs.find((each) => each.name === name)),
      { low, high } = boundsOf(shippedBy(results, name));
    if (variant.askedPerDay === null) return 'no rate asked';
    const rate = inUnit(variant.askedPerDay, rateUnit);
    return low >= rate ? 'holds' : high < rate ? 'falls short' : 'not settled';
  }
}

/** The what-if that ships most, of those that surely ship more than the scenario; null: none does. */
function shipsMost({ whatIfs }: CompareResults): string | null {
  const more = whatIfs
    .map(({ name, compared }) => ({
      name,
      shipped: compared.find(({ measure }) => measure === 'throughput'),
    }))
    .filter(({ shipped }) => shipped !== undefined && boundsOf(shipped.difference).low > 0)
    .sort((a, b) => (b.shipped?.value.mean ?? 0) - (a.shipped?.value.mean ?? 0));
  return more[0]?.name ?? null;
}

function shippedBy({ base, whatIfs }: CompareResults, name: string | null) {
  const values = name === null ? base.values : defined(whatIfs.find((each) => each.name === name)).compared;
  return defined(values.find(({ measure }) => measure === 'throughput')).value;
}

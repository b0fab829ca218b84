import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { RateJudged, Verdict } from '../held/rate-held.js';
import type { Changed } from '../reliefs/changes.js';
import { shippedADay } from '../reliefs/shipped.js';
import { type Replicator, whole } from '../run/replicator.js';
import type { Planned } from '../sample/planned.js';
import { mean } from '../statistics/sums.js';
import { type Base, FIRST_LOOK, over, type ShippedPerDay } from './trial.js';

/** Replications of each trial at most. */
export const TRIAL_REPLICATIONS = 20;
/** A gain below this share of what is shipped does not matter; our own convention, as in `reliefs`. */
const ZONE_SHARE = 0.01;

export interface ConstraintAsked {
  readonly base: Changed;
  /** The weeks that are judged: minutes since the start, ISO dates; null: the whole run is. */
  readonly weeks: {
    readonly fromMin: number;
    readonly toMin: number;
    readonly from: string;
    readonly to: string;
  } | null;
  readonly verdict: Verdict;
  /** Units shipped a working day in these weeks. */
  readonly shippedPerDay: ShippedPerDay;
  readonly replications: number;
  readonly level: number;
}

/** What is asked of a build in the weeks in which a rate was judged; `plan`: of the build that it was. */
export function inWeeksJudged(
  plan: Planned,
  judged: Pick<RateJudged, 'window' | 'verdict' | 'heldIn' | 'askedPerDay'>,
  asked: Pick<ConstraintAsked, 'base' | 'replications' | 'level'>,
): ConstraintAsked {
  const { window, verdict } = judged,
    { bucketEdges: edges } = plan.model.programme;
  return {
    ...asked,
    verdict,
    weeks:
      window === null
        ? null
        : {
            from: window.from,
            to: window.to,
            fromMin: edges[window.first] ?? NaN,
            toMin: edges[window.last + 1] ?? NaN,
          },
    shippedPerDay: shippedADay(plan, judged),
  };
}

/** The first replications of a build in the weeks that are judged, in which changes are tried on it. */
export interface Watched extends Base {
  readonly asked: ConstraintAsked;
  /** As many as were run so far; both grow as trials need more. */
  readonly observations: readonly Observation[];
  /** Units shipped a working day, by replication. */
  readonly shipped: readonly number[];
  /** A gain that does not matter, units a working day. */
  readonly zone: number;
  readonly model: Model;
  /** When the last week judged is over, minutes. */
  readonly until: number;
}

/** Runs as many replications as trials look at first. */
export async function watch(asked: ConstraintAsked, replicator: Replicator): Promise<Watched> {
  const { base, weeks, shippedPerDay } = asked,
    model = weeks === null ? base.model : over(base.model, weeks.fromMin, weeks.toMin),
    most = Math.min(asked.replications, TRIAL_REPLICATIONS),
    variant = { key: `${base.key} watched`, model, read: whole },
    inWeeks = shippedPerDay(base),
    observations: Observation[] = [],
    shipped: number[] = [];
  const upTo = async (to: number): Promise<readonly number[]> => {
    if (observations.length >= to) return shipped;
    const more = await replicator.row(variant, observations.length + 1, to);
    observations.push(...more);
    shipped.push(...more.map(inWeeks));
    return shipped;
  };
  await upTo(Math.min(FIRST_LOOK, most));
  const zone = Math.max(1e-9, ZONE_SHARE * mean(shipped));
  return { asked, observations, shipped, zone, model, until: weeks?.toMin ?? Infinity, most, upTo };
}

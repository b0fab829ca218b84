import type { ScenarioData } from '../../scenario/data.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { ConstraintAsked } from '../constraint/watch.js';
import type { Arithmetic } from '../loads/loads.js';
import { shippedADay } from '../reliefs/shipped.js';
import { hangsOn } from '../reliefs/values/hangs-on.js';
import type { Replicator } from '../run/replicator.js';
import type { RateAsked } from './at-rate.js';
import { watched } from './line.js';
import type { RateResults } from './results.js';

/**
 * What stops the build is tried at so many times the lowest rate that does not hold: at that rate itself no
 * gain could be larger than the little that is missing.
 */
const TRIED_ABOVE = 1.1;

/** A scenario, and the weeks in which its rates are watched. */
interface StoppedAsked extends Pick<RateAsked, 'settleWeeks' | 'weeks'> {
  readonly scenario: Scenario;
  readonly data: ScenarioData | undefined;
  readonly arithmetic: Arithmetic;
  readonly replications: number;
  readonly level: number;
}

/**
 * What stops a rate a tenth above the lowest that does not hold, and which guess what is shipped there hangs
 * on most.
 * @param above the lowest that does not hold; null where all do: then nothing stops it
 */
export async function stoppedAbove(
  above: number | null,
  { scenario, data, arithmetic, settleWeeks, weeks, replications, level }: StoppedAsked,
  replicator: Replicator,
): Promise<Pick<RateResults, 'constraint' | 'weakest'>> {
  if (above === null) return { constraint: null, weakest: null };
  const perDay = Number((TRIED_ABOVE * above).toFixed(9)),
    atIt = (each: Scenario) => watched(each, { perDay, settleWeeks, weeks }, arithmetic),
    at = atIt(scenario),
    asked: ConstraintAsked = {
      base: { key: digest(at.scenario), scenario: at.scenario, model: at.model },
      weeks: at,
      verdict: 'falls short',
      shippedPerDay: shippedADay(at.plan, {
        window: { first: at.first, last: at.end - 1, workingDays: at.workingDays, asked: at.units },
        askedPerDay: perDay,
        heldIn: (seen) => at.counting.shipped(seen) / at.workingDays,
      }),
      replications,
      level,
    };
  const { constraint, weakest } = await hangsOn(
    asked,
    { scenario, data },
    replicator,
    (each) => atIt(each).scenario,
  );
  return { constraint: { perDay, ...constraint }, weakest };
}

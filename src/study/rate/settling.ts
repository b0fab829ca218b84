import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Replicator } from '../run/replicator.js';
import { readingOf } from '../sample/reading.js';
import { atRate } from './at-rate.js';
import { REST_WEEKS } from './ramp.js';

const PILOT_REPLICATIONS = 4,
  LONGEST_SETTLE_WEEKS = 52;
/** Weeks for the floor to fill in the pilot itself. */
export const PILOT_SETTLE_WEEKS = 8;

/**
 * Weeks until the floor is full: the longest 90 % lead time of a few replications at the lowest rate, and
 * some for WIP to come to rest.
 */
export async function settling(
  scenario: Scenario,
  perDay: number,
  weeks: number,
  replicator: Replicator,
): Promise<number> {
  const pilot = atRate(scenario, { perDay, settleWeeks: PILOT_SETTLE_WEEKS, weeks }),
    model = compile(pilot.scenario);
  const variant = { key: digest(pilot.scenario), model: model, read: readingOf(pilot.scenario, model) },
    readings = await replicator.row(variant, 1, PILOT_REPLICATIONS);
  const longest = Math.max(0, ...readings.map(({ leadP90Days }) => leadP90Days).filter(Number.isFinite));
  return Math.min(LONGEST_SETTLE_WEEKS, Math.ceil(longest / 7) + REST_WEEKS);
}

import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import { programmeClock } from '../../scenario/programme/clock.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { type DateQuantile, lastUnitDates, lastUnitDay } from '../programme/dates.js';
import { withHighestRate } from '../reliefs/changes.js';
import type { Replicator } from '../run/replicator.js';

/** Replications at most: as many as bound the day at four in five (17, by ranks), and a few. */
const MOST = 20;

/**
 * When the last unit of the plan is out if it asks for no more than `perDay`, units a working day, and for
 * that where it asks for its highest rate. None without a quantity, or a rate that holds.
 */
export async function lastUnitAt(
  perDay: number | null,
  scenario: Scenario,
  { replications, level }: { readonly replications: number; readonly level: number },
  replicator: Replicator,
): Promise<DateQuantile[]> {
  if (perDay === null || scenario.programme.quantity === undefined) return [];
  const plan = asking(scenario, perDay),
    days = await replicator.row(
      { key: `${digest(plan)} last unit`, model: compile(plan), read: lastUnitDay },
      1,
      Math.min(replications, MOST),
    );
  return lastUnitDates(plan, days, programmeClock(plan), level);
}

/** The plan with `perDay`, units a working day, as its highest rate: phases above it are cut to it. */
export function asking(scenario: Scenario, perDay: number): Scenario {
  const changed = withHighestRate(scenario, perDay);
  return (askedRate(changed).highest ?? 0) > perDay ? asking(changed, perDay) : changed;
}

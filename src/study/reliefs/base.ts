import type { RateJudged } from '../held/rate-held.js';
import { countingResult } from '../loads/words.js';
import { inUnit, type PlannersUnit } from '../planners-unit.js';
import { lastUnitDates, plannedEnd } from '../programme/dates.js';
import type { Planned } from '../sample/planned.js';
import { amount } from '../statistics/skewed-interval.js';
import type { ReliefsResults } from './results.js';
import type { Compared } from './runs.js';

/**
 * What is told of the base, and of how it is counted.
 * @param level of what is told of single builds; `each` that of its means
 */
export function baseResult(
  plan: Planned,
  judged: RateJudged,
  ofBase: readonly Compared[],
  { level, each, unit }: { readonly level: number; readonly each: number; readonly unit: PlannersUnit },
): Pick<ReliefsResults, 'base' | 'counted'> & { readonly rate: Omit<ReliefsResults['rate'], 'set'> } {
  const { window, counting, askedPerDay } = judged,
    of = (what: keyof Compared): number[] => ofBase.map((one) => one[what]),
    costs = amount(of('cost'), each);
  return {
    counted: {
      over: window === null ? 'whole run' : 'judged window',
      from: window?.from ?? null,
      to: window?.to ?? null,
      counting: counting === null ? null : countingResult(counting),
    },
    rate: { asked: askedPerDay === null ? null : inUnit(askedPerDay, unit), askedPerDay },
    base: {
      throughput: amount(of('throughput'), each),
      costPerUnit: costs.n === 0 ? null : costs,
      currency: plan.scenario.costs?.currency ?? null,
      plannedEnd: plannedEnd(plan),
      lastUnit: lastUnitDates(plan.scenario, of('lastUnit'), plan.clock, level),
      keptUp: judged.holding?.keptUp ?? null,
      gridlocks: judged.gridlocks,
    },
  };
}

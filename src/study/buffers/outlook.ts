import type { Observation } from '../../measure/observe.js';
import type { ScenarioData } from '../../scenario/data.js';
import { programmeClock } from '../../scenario/programme/clock.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { inWeeksJudged } from '../constraint/watch.js';
import { judgeRate } from '../held/rate-held.js';
import { lastUnitDates, lastUnitDay, plannedEnd } from '../programme/dates.js';
import { changedTo } from '../reliefs/changes.js';
import { hangsOn } from '../reliefs/values/hangs-on.js';
import { type Replicator, whole } from '../run/replicator.js';
import { planned } from '../sample/planned.js';
import type { BufferResults } from './results.js';
import { type Layout, type Spot, withLayout } from './spots.js';

export interface OutlookAsked {
  readonly scenario: Scenario;
  readonly data: ScenarioData | undefined;
  readonly spots: readonly Spot[];
  readonly chosen: Layout;
  /** Of the scenario as it is, from the first replication on. */
  readonly base: readonly Observation[];
  readonly level: number;
}

/**
 * What is asked of a layout once it is chosen: what stops the build with it, which guess that hangs on most,
 * and when the last unit is out. Over weeks of its own, in as many replications as `base` has.
 */
export async function outlook(
  { scenario, data, spots, chosen, base, level }: OutlookAsked,
  replicator: Replicator,
): Promise<Pick<BufferResults, 'constraint' | 'weakest' | 'plannedEnd' | 'lastUnit'>> {
  const withIt = (each: Scenario): Scenario => withLayout(each, spots, chosen),
    build = changedTo(withIt(scenario)),
    plan = planned(build.scenario, build.model),
    replications = base.length,
    observations = await replicator.row(
      { key: `${build.key} whole`, model: build.model, read: whole },
      1,
      replications,
    ),
    judged = judgeRate(plan, observations, level);
  const asked = inWeeksJudged(plan, judged, { base: build, replications, level }),
    clock = programmeClock(scenario),
    dates = (all: readonly Observation[]) => lastUnitDates(scenario, all.map(lastUnitDay), clock, level);
  return {
    ...(await hangsOn(asked, { scenario, data }, replicator, withIt)),
    plannedEnd: plannedEnd({ model: build.model, clock }),
    lastUnit: { chosen: dates(observations), present: dates(base) },
  };
}

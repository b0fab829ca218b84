import type { Scenario } from '../types/scenario.js';

/** A change of a scenario also of how it is before some of its changes are there. */
export function everywhere(scenario: Scenario, change: (scenario: Scenario) => Scenario): Scenario {
  const changed = change(scenario),
    { before } = scenario;
  return before === undefined
    ? changed
    : { ...changed, before: before.map((stage) => ({ ...stage, scenario: change(stage.scenario) })) };
}

/** With so much more a day that it costs whatever is built. */
export const withStanding = (scenario: Scenario, day: number): Scenario =>
  day === 0
    ? scenario
    : everywhere(scenario, (its) =>
        its.costs === undefined
          ? its
          : { ...its, costs: { ...its.costs, standingDay: (its.costs.standingDay ?? 0) + day } },
      );

import type { Chance } from '../types/steps.js';
import type { Finding, Path } from '../types/problem.js';
import { MOST_VALUES } from '../work/steps-compiled.js';

import type { Scenario } from '../types/scenario.js';
import { findsOf, own, routesOf, siteOfStation, stepsOf } from '../whole/placed.js';

/** Options that conditions cannot tell apart, and options asked of what has none. */
export function optionFindings(scenario: Scenario): Finding[] {
  return [...tooManyValues(scenario), ...ofStock(scenario)];
}

function tooManyValues(scenario: Scenario): Finding[] {
  const asked = new Set(
    routesOf(scenario).flatMap((route) =>
      [...route.entries, ...stepsOf(route).map(({ step }) => step)].flatMap(({ when }) => Object.keys(when)),
    ),
  );
  return [...asked].flatMap((option): Finding[] => {
    const count = Object.keys(own(scenario.programme.options, option) ?? {}).length;
    if (count <= MOST_VALUES) return [];
    return [
      {
        path: ['programme', 'options', option],
        wanted:
          `at most ${MOST_VALUES} values where a step has a condition on the option; merge values that ` +
          'are built alike',
        seen: String(count),
        atKey: true,
      },
    ];
  });
}

/**
 * Sub-assemblies for stock are built before their unit is known, so nothing on their way can go by its
 * options.
 */
function ofStock(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario);
  return routesOf(scenario).flatMap((route) => {
    if (route.kind !== 'stock') return [];
    const found: Finding[] = [];
    const tell = (path: Path): void =>
      void found.push({
        path,
        wanted: 'nothing by option in a feeder of stock, whose sub-assemblies are not yet of a unit',
        atKey: true,
      });
    const chance = (path: Path, { byOption }: Chance): void => {
      if (byOption.length > 0) tell(path);
    };
    for (const placed of stepsOf(route)) {
      const { path, step } = placed;
      if (Object.keys(step.workFactor).length > 0) tell([...path, 'work factor']);
      for (const [kind, made] of Object.entries(step.creates)) chance([...path, 'creates', kind], made);
      for (const { path: at, find } of findsOf(placed)) chance([...at, 'chance'], find.chance);
      const site = siteOf.get(step.at);
      if (site !== undefined && scenario.sites[site]?.stations[step.at]?.changeover !== undefined) {
        found.push({
          path: [...path, 'at'],
          wanted: 'a station without changeover, since sub-assemblies for stock have no options',
          seen: `"${step.at}"`,
        });
      }
    }
    return found;
  });
}

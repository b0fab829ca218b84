import { type PlacedRoute, routesOf, sendBacksOf, stepsOf } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { own } from '../values/raw.js';
import { possibleValues } from '../work/conditions.js';

/** Steps that no unit can visit, and feeders that nothing uses. */
export function unreachable(scenario: Scenario): Finding[] {
  const routes = routesOf(scenario);
  const found = routes.flatMap((route) => [
    ...neverMet(scenario, route),
    ...neverSentBack(route),
    ...skippedTargets(route),
  ]);
  if (!scenario.route.some((entry) => entry.kind === 'step'))
    found.push({ path: ['route'], wanted: 'at least one step at a station', seen: 'only lanes' });

  const used = new Set(
    routes.flatMap((route) =>
      stepsOf(route).flatMap(({ step }) => [...Object.keys(step.parts), ...step.takesOff]),
    ),
  );
  for (const [name, feeder] of Object.entries(scenario.feeders)) {
    if (used.has(name)) continue;
    found.push({
      path: ['feeders', name],
      wanted:
        feeder.kind === 'own'
          ? 'a step that takes these parts off and a later one with them in parts; no step does'
          : 'a step with this feeder in its parts; no step has it',
      atKey: true,
    });
  }
  return found;
}

function neverMet(scenario: Scenario, route: PlacedRoute): Finding[] {
  const inner = stepsOf(route)
    .filter(({ path }) => path.length > route.path.length + 1)
    .map(({ path, step }) => ({ path, entry: step }));
  return [...route.entries.map((entry, i) => ({ path: [...route.path, i], entry })), ...inner].flatMap(
    ({ path, entry }): Finding[] => {
      if (route.kind === 'stock' && Object.keys(entry.when).length > 0) {
        return [
          {
            path: [...path, 'when'],
            wanted:
              'no condition in a feeder of stock, whose sub-assemblies are not yet of a unit and have ' +
              'no options',
            atKey: true,
          },
        ];
      }
      const { options } = scenario.programme;
      const empty = Object.entries(entry.when).find(
        ([option]) =>
          own(options, option) !== undefined && possibleValues(options, option, entry.when).length === 0,
      );
      if (empty === undefined) return [];
      const [option, values] = empty,
        mix = own(options, option) ?? {};
      // A value that does not exist is reported with the names.
      if (!values.every((value) => Object.hasOwn(mix, value))) return [];
      return [
        {
          path: [...path, 'when'],
          wanted: 'a condition that some unit can meet',
          seen: `${option}: ${values.join(' or ')}, with a share of 0 %`,
        },
      ];
    },
  );
}

function neverSentBack(route: PlacedRoute): Finding[] {
  const loops = sendBacksOf(route);
  return stepsOf(route).flatMap(({ path, index, step }): Finding[] =>
    step.rework !== 'only' || loops.some((loop) => loop.to <= index && index <= loop.from)
      ? []
      : [
          {
            path: [...path, 'rework'],
            wanted:
              'a later step that sends units back to or past this one; without it a step with rework: ' +
              'only is never visited',
            seen: '"only"',
          },
        ],
  );
}

function skippedTargets(route: PlacedRoute): Finding[] {
  return sendBacksOf(route).flatMap(({ path, to }): Finding[] => {
    const target = route.entries[to];
    return target?.kind === 'step' && target.rework === 'skip'
      ? [
          {
            path,
            wanted: 'a step that units in rework visit',
            seen: `"${target.name}", which has rework: skip`,
          },
        ]
      : [];
  });
}

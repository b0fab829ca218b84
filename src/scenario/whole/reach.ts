import { furthestBack, type PlacedRoute, routesOf, sendBacksOf, stepsOf } from '../lookup/placed.js';
import { possibleValues } from '../steps/conditions.js';
import type { Finding, Path } from '../types/problem.js';
import type { OptionMix } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import type { Condition } from '../types/steps.js';
import { own } from '../values/raw.js';

/** Steps that no unit can visit, and feeders that nothing uses. */
export function* unreachable(scenario: Scenario): Iterable<Finding> {
  const used = new Set<string>();
  for (const route of routesOf(scenario)) {
    const steps = stepsOf(route);
    for (const { step } of steps)
      for (const part of [...Object.keys(step.parts), ...step.takesOff]) used.add(part);
    // Entries, lanes among them, then those side by side.
    const entries = route.entries.map(({ when }, i) => ({ path: [...route.path, i], when }));
    const inner = steps
      .filter(({ path }) => path.length > route.path.length + 1)
      .map(({ path, step: { when } }) => ({ path, when }));
    for (const { path, when } of [...entries, ...inner])
      yield* neverMet(scenario.programme.options, route, [...path, 'when'], when);
    const furthest = furthestBack(route);
    for (const { path, index, step } of steps)
      if (step.rework === 'only' && (furthest[index] ?? -1) < index)
        yield {
          path: [...path, 'rework'],
          wanted:
            'a later step that sends units back to or past this one; without it a step with rework: ' +
            'only is never visited',
          seen: '"only"',
        };
    for (const { path, to } of sendBacksOf(route)) {
      const target = route.entries[to];
      if (target?.kind === 'step' && target.rework === 'skip')
        yield {
          path,
          wanted: 'a step that units in rework visit',
          seen: `"${target.name}", which has rework: skip`,
        };
    }
  }
  if (!scenario.route.some((entry) => entry.kind === 'step'))
    yield { path: ['route'], wanted: 'at least one step at a station', seen: 'only lanes' };
  for (const [name, feeder] of Object.entries(scenario.feeders))
    if (!used.has(name))
      yield {
        path: ['feeders', name],
        wanted:
          feeder.kind === 'own'
            ? 'a step that takes these parts off and a later one with them in parts; no step does'
            : 'a step with this feeder in its parts; no step has it',
        atKey: true,
      };
}

function* neverMet(options: OptionMix, route: PlacedRoute, path: Path, when: Condition): Iterable<Finding> {
  if (route.kind === 'stock' && Object.keys(when).length > 0) {
    yield {
      path,
      wanted:
        'no condition in a feeder of stock, whose sub-assemblies are not yet of a unit and have ' +
        'no options',
      atKey: true,
    };
    return;
  }
  const empty = Object.entries(when).find(
    ([option]) => own(options, option) !== undefined && possibleValues(options, option, when).length === 0,
  );
  if (empty === undefined) return;
  const [option, values] = empty,
    mix = own(options, option) ?? {};
  // A value that does not exist is reported with the names.
  if (values.every((value) => Object.hasOwn(mix, value)))
    yield {
      path,
      wanted: 'a condition that some unit can meet',
      seen: `${option}: ${values.join(' or ')}, with a share of 0 %`,
    };
}

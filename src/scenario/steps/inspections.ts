import { saySeen } from '../file/problem.js';
import type { Lookup, RawRoute, RawStep } from '../lookup/outline.js';
import type { Path } from '../types/problem.js';
import { named } from '../values/keys.js';
import { isRawMap, mapOf, placesAt } from '../values/raw.js';
import type { TimeSchema } from '../values/time.js';
import { chanceByOption, chanceNames, timeNames } from './chances.js';
import { findSchema } from './finds.js';
import { comparisonSchema, holdSchema } from './holds.js';

/** The defects that a step may make. */
export const createsKey = named(chanceByOption, 'kinds of defect with their chances, such as { runs: 4 % }')
  .default({})
  .describe(
    'Defects that the step may cause, with their chances. Example: { dirt in primer: 6 %, runs: { ' +
      'usual: 4 %, colour: { red: 7 % } } }',
  );

/** Keys of a step that look for defects or hold units for them. */
export function inspectionKeys(time: TimeSchema) {
  const find = findSchema(time);
  return {
    finds: named(find, 'kinds of defect, each with a chance and what then')
      .default({})
      .describe(
        'Open defects that the step may find, each with its chance and what follows; those missed ' +
          'may be found later. Example: { runs: { chance: 90 %, back to: prime, limit: 3 } }',
      ),
    fails: find
      .optional()
      .describe(
        'A test that may fail, whatever the defects: its chance and what follows. Example: { chance: ' +
          '4 %, back to: fit doors }',
      ),
    hold: holdSchema(time)
      .optional()
      .describe(
        'Units with noted items (`carry`, or passed on at the limit of a loop) may not pass: each ' +
          'takes a place, and the crew mends its items one after another before the work of the step. ' +
          'A unit without any skips the step, unless the step has work, a process or another task for ' +
          'all units. A `process` here is the wait for release. Example: { mend: 45 min }',
      ),
    'compares with': comparisonSchema(time)
      .optional()
      .describe(
        'A second measurement: how often it agrees with an earlier inspection on whether something ' +
          'is found, counting first visits of both. Example: { step: measure wheels, if it differs: 40 ' +
          'min }',
      ),
  };
}

/** Options of chances, steps to go back to or to compare with. */
export function inspectionNames({ path, entry, index }: RawStep, route: RawRoute, lookup: Lookup): void {
  for (const { path: at, value } of placesAt(entry, path, ['creates', '*'])) chanceNames(at, value, lookup);
  for (const { path: at, value } of [
    ...placesAt(entry, path, ['finds', '*']),
    ...placesAt(entry, path, ['fails']),
  ]) {
    const { chance, repair, carry, 'back to': target } = mapOf(value);
    timeNames([...at, 'repair'], repair, lookup);
    timeNames([...at, 'carry'], carry, lookup);
    chanceNames([...at, 'chance'], chance, lookup);
    earlierStep([...at, 'back to'], target, index, true, route, lookup);
  }
  timeNames([...path, 'hold', 'mend'], mapOf(entry['hold'])['mend'], lookup);
  const comparison = entry['compares with'],
    inside = isRawMap(comparison),
    at = [...path, 'compares with', ...(inside ? ['step'] : [])];
  earlierStep(at, inside ? comparison['step'] : comparison, index, false, route, lookup);
}

/**
 * An earlier step of the same route, or perhaps this one: to which a unit goes back, with which a measurement
 * is compared.
 */
function earlierStep(
  path: Path,
  target: unknown,
  index: number,
  mayBeThis: boolean,
  route: RawRoute,
  { outline, look, tell }: Lookup,
): void {
  if (typeof target !== 'string') return;
  const place = route.steps.get(target);
  if (place !== undefined && (place < index || (mayBeThis && place === index))) return;
  const seen = saySeen(target);
  if (place !== undefined)
    tell({
      path,
      wanted: mayBeThis ? 'the same or an earlier step' : 'an earlier step',
      seen: `${seen}, which ${place === index ? 'is this one' : 'comes later'}`,
    });
  else if (outline.routes.some((other) => other.steps.has(target)))
    tell({ path, wanted: 'a step of the same route', seen: `${seen}, which is in another` });
  else look(path, target, route.steps, 'step of this name in this route');
}

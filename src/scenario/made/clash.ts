import { namedChanges } from '../changes/possible.js';
import { findPath } from '../file/edit-path.js';
import type { Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { listOf, mapOf } from '../values/raw.js';

/**
 * The name of a bundle that is made in a scenario and has an edit at a path, around it or below it;
 * undefined where the value there is that of the file.
 */
export function bundleAt(
  { value, scenario }: { readonly value: unknown; readonly scenario: Scenario },
  path: Path,
): string | undefined {
  const isAt = (text: unknown): boolean => {
    const found = typeof text === 'string' ? findPath(value, text) : undefined;
    return (
      found !== undefined &&
      found.fault === undefined &&
      found.path.every((part, i) => i >= path.length || part === path[i])
    );
  };
  return namedChanges(scenario).find(
    ({ made, changes }) =>
      made !== undefined &&
      listOf(changes).some((edits) =>
        Object.entries(mapOf(edits)).some(
          ([key, given]) => key !== 'scale' && isAt(key === 'remove' ? given : key),
        ),
      ),
  )?.name;
}

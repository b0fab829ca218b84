import type { PossibleChange } from '../types/possible.js';

/**
 * What of some changes can still be made beside those that are: less often where some of it is made, without
 * what it requires and is there; nothing that one of them excludes, or that requires such a one.
 */
export function leftOf(all: readonly PossibleChange[]): readonly PossibleChange[] {
  const made = new Set(all.flatMap(({ name, made }) => (made === undefined ? [] : [name])));
  if (made.size === 0) return all;
  const barred = new Set(
    all.flatMap(({ name, excludes }) =>
      made.has(name) ? excludes : excludes.some((other) => made.has(other)) ? [name] : [],
    ),
  );
  // Each round finds those that require what the rounds before have found.
  for (let before = -1; before < barred.size; ) {
    before = barred.size;
    for (const { name, requires } of all) if (requires.some((other) => barred.has(other))) barred.add(name);
  }
  return all
    .filter(({ name }) => made.has(name) || !barred.has(name))
    .flatMap(({ made: making, ...each }): PossibleChange[] => {
      const { changes, atMost = changes === undefined ? undefined : 1, requires } = each,
        left = atMost === undefined ? undefined : atMost - (making?.times ?? 0);
      return left !== undefined && left <= 0
        ? []
        : [
            {
              ...each,
              atMost: making === undefined ? each.atMost : left,
              requires: requires.filter((other) => !made.has(other)),
            },
          ];
    });
}

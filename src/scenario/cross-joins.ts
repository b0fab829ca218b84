import type { PlacedRoute } from './cross-routes.js';
import { stepsOf } from './cross-routes.js';

/** Index of the entry of `to` at which what goes along `from` first joins it, by itself or inside another sub-assembly; undefined if it never does. */
export function joinIndex(
  routes: readonly PlacedRoute[],
  from: PlacedRoute,
  to: PlacedRoute,
  seen: ReadonlySet<PlacedRoute> = new Set(),
): number | undefined {
  if (seen.has(to)) return undefined;
  const inner = new Set(seen).add(to);
  return stepsOf(to).find(({ step }) =>
    Object.keys(step.parts).some((name) => {
      const feeder = routes.find((route) => route.feeder === name);
      return (
        feeder !== undefined && (feeder === from || joinIndex(routes, from, feeder, inner) !== undefined)
      );
    }),
  )?.index;
}

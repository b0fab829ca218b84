import type { PlacedRoute } from '../../scenario/lookup/placed.js';
import { stepsOf } from '../../scenario/lookup/placed.js';
import type { Spot } from './types.js';

/** Where each step of a route stands on its line. */
export interface PlacedLine {
  readonly route: PlacedRoute;
  readonly at: ReadonlyMap<string, number>;
}

/** Where the own parts of a feeder come off; null: nowhere, as of a feeder that builds to a stock. */
export const leavesAt = (lines: readonly PlacedLine[], feeder: string): Spot | null =>
  spots(lines, ({ takesOff }) => takesOff.includes(feeder)).at(0) ?? null;

/** Where the parts of a feeder, or a supply, are used, in the order of the routes. */
export const joinsAt = (lines: readonly PlacedLine[], part: string): Spot[] =>
  spots(lines, ({ parts }) => Object.hasOwn(parts, part));

function spots(
  lines: readonly PlacedLine[],
  is: (step: { readonly parts: object; readonly takesOff: readonly string[] }) => boolean,
): Spot[] {
  return lines.flatMap(({ route, at }) =>
    stepsOf(route).flatMap(({ step }) =>
      is(step) ? [{ side: route.feeder ?? null, entry: at.get(step.name) ?? 0, step: step.name }] : [],
    ),
  );
}

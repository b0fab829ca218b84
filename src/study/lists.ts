import type { Model } from '../flow/model/model.js';
import { defined, neighbours } from '../scenario/values/lists.js';

export { defined, neighbours };

/** Numbers of the rows that belong to `first`, or to all up to `end`, by the first row of each. */
export function rowsOf(starts: Int32Array, first: number, end = first + 1): number[] {
  const rows: number[] = [],
    last = defined(starts[end]);
  for (let row = defined(starts[first]); row < last; row++) rows.push(row);
  return rows;
}

/** Name of a lane, and where it leads from and to. */
export const laneNamed = (
  { lanes, siteNames }: Model,
  lane: number,
): { readonly name: string; readonly site: string } => ({
  name: defined(lanes.names[lane]),
  site: `${defined(siteNames[defined(lanes.from[lane])])} to ${defined(siteNames[defined(lanes.to[lane])])}`,
});

/** Name and site of a station, or of a crew or another resource. */
export const named = (
  model: Model,
  of: 'stations' | 'resources',
  id: number,
): { readonly name: string; readonly site: string } => ({
  name: defined(model[of].names[id]),
  site: defined(model.siteNames[defined(model[of].site[id])]),
});

/** `a, b or c`. */
export const listed = (names: readonly string[], last = 'or'): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${last} ${defined(names.at(-1))}`;

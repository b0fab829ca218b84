import type { Model } from '../flow/model.js';
import type { Observation } from '../measure/observation.js';
import { bufferOf } from '../scenario/compile-room.js';
import type { RateMeasure } from './buffers-measure.js';
import type { Layout, Spot } from './buffers-spots.js';
import type { Reading } from './replicator.js';

/**
 * One replication of a layout. With `alike[s]` places or more at spot s it would have gone on just so: nobody was ever shut out
 * there, and no more were ever in it. Infinity: only with the places that it had.
 */
export interface Trial {
  readonly rate: number;
  readonly alike: Float64Array;
}

export const readTrial =
  (measure: RateMeasure, spots: readonly Spot[]): Reading<Trial> =>
  (observation, { model }) => ({
    rate: measure.of(observation),
    alike: Float64Array.from(spots, (spot) => alikeFrom(observation, model, spot)),
  });

function alikeFrom({ room: { shutOut, most } }: Observation, model: Model, spot: Spot): number {
  const buffer = bufferOf(model, spot);
  if (buffer < 0 || shutOut[buffer] === 1) return Infinity;
  // Units in an arrival bank stand in its places, where their most is not counted.
  return spot.kind === 'arrival bank' ? model.stations.places[buffer]! : most[buffer]!;
}

/** Whether a replication of `layout` goes just as `trial` went with the places `had`. */
export function isAlike({ alike }: Trial, had: Layout, layout: Layout): boolean {
  for (let s = 0; s < had.length; s++) if (layout[s] !== had[s] && layout[s]! < alike[s]!) return false;
  return true;
}

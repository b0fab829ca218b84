import { HALF } from '../signs/glyphs.js';
import type { Label } from '../signs/labels.js';
import type { World } from '../world.js';

/** Room between a line and the text above it, and between tracks at least: for marks, arcs and spaces. */
export const LABEL_GAP = HALF + 3;
const LEAST = 34;

/**
 * Distances of the tracks from the way in one band of cells: each line runs above the texts of all that stand
 * below it.
 */
export function tracksAcross({ strip }: World, labels: ReadonlyMap<number, Label>): number[] {
  const cells = [...labels.keys()],
    first = Math.min(...cells),
    last = Math.max(...cells),
    spans = strip.sides.flatMap(({ track, cells: own, leaves, joins }) => {
      if (own.length === 0) return [];
      // Where it leaves or joins it runs beside the column, not over it.
      const from = leaves >= 0 ? leaves + 1 : (own[0] ?? 0),
        to = joins >= 0 ? joins - 1 : (own.at(-1) ?? 0);
      return to < first || from > last ? [] : [{ track, from, to }];
    });
  const most = Math.max(0, ...spans.map(({ track }) => track)),
    distances = [0];
  for (let track = 1; track <= most; track++) {
    let distance = distances[track - 1] ?? 0;
    if (spans.some((each) => each.track === track)) distance += LEAST;
    for (const [cell, label] of labels) {
      const own = strip.cells[cell]?.track ?? 0;
      if (own < track && spans.some((each) => each.track === track && each.from <= cell && cell <= each.to))
        distance = Math.max(distance, (distances[own] ?? 0) + LABEL_GAP + label.height + LEAST / 2);
    }
    distances.push(distance);
  }
  return distances;
}

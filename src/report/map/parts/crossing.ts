import { sum } from '../../../study/statistics/sums.js';
import type { Arc } from '../signs/backs.js';
import type { World } from '../world.js';

/** Cells of a short side line. */
const SHORT = 3;

/** What a cut ahead of a cell would part: arcs weigh most, then side lines, then people and pulse lines. */
export function crossing({ strip: { sides }, brackets }: World, arcs: readonly Arc[], cell: number): number {
  const cutArcs = arcs.filter(({ fromCell, toCell }) => toCell < cell && fromCell >= cell).length,
    cutSides = sides.flatMap(({ cells, leaves, joins }) => {
      const begin = leaves >= 0 ? leaves : (cells[0] ?? 0),
        end = joins >= 0 ? joins : (cells.at(-1) ?? 0);
      // A bench beside its station reads badly apart from it.
      return cells.length > 0 && begin < cell && end >= cell ? [end - begin <= SHORT ? 3 : 1.5] : [];
    });
  const cutBrackets = brackets.filter(
    ({ kind, fromCell, toCell }) => kind !== 'carrier' && fromCell < cell && toCell >= cell,
  ).length;
  return 3 * cutArcs + sum(cutSides) + cutBrackets;
}

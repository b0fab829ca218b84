import type { Unit } from '../floor/unit.js';
import type { Alive } from './alive.js';
import { lacksOf } from './lacks.js';

/**
 * The ring that really holds: of those that can never go on, and behind which one of them stands, units that
 * wait for each other and for nobody else. It is a strongly connected part of who waits for whom out of which
 * nothing leads, the first that a depth-first walk closes (Tarjan 1972, SIAM J. Comput. 1, 146-160; such a
 * knot is what holds where any one of several would do: Holt 1972, ACM Computing Surveys 4, 179-196; both
 * from memory).
 * @param start one that can never go on
 * @returns by build number
 */
export function coreOf(alive: Alive, start: Unit): Unit[] {
  const order = new Map<Unit, number>(),
    low = new Map<Unit, number>(),
    open: Unit[] = [],
    // Not by recursion: a queue may be long.
    path: { readonly unit: Unit; readonly ahead: Unit[] }[] = [];
  const enter = (unit: Unit): void => {
    low.set(unit, order.size);
    order.set(unit, order.size);
    open.push(unit);
    path.push({ unit, ahead: lacksOf(alive, unit).flatMap(({ holders }) => holders) });
  };
  const lower = (unit: Unit, to: number): void => {
    low.set(unit, Math.min(low.get(unit)!, to));
  };
  enter(start);
  for (;;) {
    const { unit, ahead } = path[path.length - 1],
      next = ahead.pop();
    if (next !== undefined) {
      if (order.has(next)) lower(unit, order.get(next)!);
      else enter(next);
    } else if (low.get(unit) === order.get(unit)) {
      return open.slice(open.indexOf(unit)).sort((a, b) => a.number - b.number || a.at - b.at);
    } else {
      path.pop();
      lower(path[path.length - 1].unit, low.get(unit)!);
    }
  }
}

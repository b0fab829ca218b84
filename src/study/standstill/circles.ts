import type { Model } from '../../flow/model/model.js';
import { nodesOf } from './nodes.js';
import type { Wait } from './wait.js';

/** Waits of which each begins where the one before it ends, and the first where the last ends. */
export type Circle = readonly Wait[];

/** So many waits are followed: a large scenario has thousands that lie in one knot. */
const MOST_FOLLOWED = 400;

/** For each wait that lies in a circle the shortest one through it, each circle once, the shortest first. */
export function circlesOf(waits: readonly Wait[], count: number): Circle[] {
  const from = Array.from({ length: count }, (): Wait[] => []);
  for (const wait of waits) from[wait.from].push(wait);
  const knot = knotsOf(from),
    inKnots = waits.filter((wait) => knot[wait.from] === knot[wait.to]),
    // Those that close a circle: all but the plain way on, of which a long line has many.
    first = [...inKnots].sort((a, b) => Number(a.why === 'on') - Number(b.why === 'on')),
    found = new Map<string, Circle>();
  for (const wait of first.slice(0, MOST_FOLLOWED)) {
    const circle = shortest(wait, from, knot),
      key = circle
        .map((each) => `${each.from} ${each.why} ${each.of} ${each.find}`)
        .toSorted()
        .join();
    if (!found.has(key)) found.set(key, circle);
  }
  return [...found.values()].sort((a, b) => a.length - b.length);
}

/** From where the wait ends back to where it begins, breadth first, within its knot. */
function shortest(wait: Wait, from: readonly (readonly Wait[])[], knot: Int32Array): Circle {
  const by = new Map<number, Wait | null>([[wait.to, null]]),
    open = [wait.to];
  for (const node of open) {
    if (node === wait.from) break;
    for (const next of from[node])
      if (knot[next.to] === knot[node] && !by.has(next.to)) {
        by.set(next.to, next);
        open.push(next.to);
      }
  }
  const way: Wait[] = [];
  for (let each = by.get(wait.from) ?? null; each !== null; each = by.get(each.from) ?? null)
    way.unshift(each);
  return [wait, ...way];
}

/**
 * By node the number of its knot, a strongly connected part (Tarjan 1972, SIAM J. Comput. 1, 146-160; from
 * memory), without recursion.
 */
function knotsOf(from: readonly (readonly Wait[])[]): Int32Array {
  const count = from.length,
    order = new Int32Array(count).fill(-1),
    low = new Int32Array(count),
    knot = new Int32Array(count).fill(-1),
    next = new Int32Array(count),
    open: number[] = [],
    path: number[] = [];
  let begun = 0,
    closed = 0;
  for (let root = 0; root < count; root++) {
    if (order[root] >= 0) continue;
    path.push(root);
    while (path.length > 0) {
      const node = path[path.length - 1];
      if (order[node] < 0) {
        order[node] = low[node] = begun++;
        open.push(node);
      }
      if (next[node] < from[node].length) {
        const { to } = from[node][next[node]++];
        if (order[to] < 0) path.push(to);
        else if (knot[to] < 0) low[node] = Math.min(low[node], order[to]);
        continue;
      }
      path.pop();
      if (path.length > 0) low[path[path.length - 1]] = Math.min(low[path[path.length - 1]], low[node]);
      if (low[node] !== order[node]) continue;
      for (let member = -1; member !== node; ) {
        member = open.pop()!;
        knot[member] = closed;
      }
      closed++;
    }
  }
  return knot;
}

/**
 * Whether there are units enough to fill a circle. Of rooms alone each has to be full, of units of the
 * programme, or of those that have a carrier if all its steps are on the stretch of one.
 */
export function canFill(model: Model, circle: Circle): boolean {
  const { steps, routes, companions, resources, programme } = model,
    nodes = nodesOf(model),
    isRoom = ({ from }: Wait): boolean => nodes.isRoom(from);
  if (!circle.every(isRoom) || !circle.every(({ step }) => routes.own[steps.route[step]] === 0)) return true;
  // Sub-assemblies are begun anew.
  const rooms = new Set(circle.map(({ from }) => from)),
    users = Array.from({ length: steps.count }, (_, step) => step).filter(
      (step) =>
        model.sideBySide.group[step] < 0 && (rooms.has(nodes.place(step)) || rooms.has(nodes.room(step))),
    );
  if (users.some((step) => steps.route[step] > 0)) return true;
  const units = (spots: (node: number) => number): number =>
    [...rooms].reduce((sum, node) => sum + spots(node), 0);
  if (programme.quantity < units(nodes.spots)) return false;
  return companions.names.every((_, id) => {
    const first = companions.from[id],
      isWithin = users.every((step) => first <= step && step <= companions.to[id]);
    // Ahead of its first step a unit may stand without one.
    const spots = (node: number): number =>
      node === nodes.place(first) ? nodes.places(node) : nodes.spots(node);
    return !isWithin || resources.amount[companions.resource[id]] >= units(spots) * companions.amount[id];
  });
}

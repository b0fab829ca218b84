import { saySeen } from '../file/problem.js';
import type { PossibleChange } from '../types/possible.js';
import type { Finding } from '../types/problem.js';

/** Possible changes by their names. */
export type KnownChanges = ReadonlyMap<string, PossibleChange>;

/** Circles of requires, each told once; and what requires two that exclude one another. */
export function* requiresFindings(all: readonly PossibleChange[], known: KnownChanges): Iterable<Finding> {
  const told = new Set<string>();
  for (const each of all) {
    const path = ['costs', 'changes', each.name, 'requires'],
      circle = circleFrom(each, known);
    if (circle !== undefined) {
      const key = JSON.stringify([...circle].sort());
      if (!told.has(key))
        yield {
          path,
          wanted: 'no circle: none of them could be made first',
          seen: [...circle, each.name].map(saySeen).join(' requires '),
        };
      told.add(key);
      continue;
    }
    const together = [each.name, ...requiredBy(each, known)],
      clash = together
        .flatMap((one) => (known.get(one)?.excludes ?? []).map((other) => [one, other] as const))
        .find(([, other]) => together.includes(other));
    if (clash !== undefined && each.requires.length > 0)
      yield {
        path,
        wanted: 'changes that can be made together',
        seen: `${saySeen(clash[0])}, which excludes ${saySeen(clash[1])}`,
      };
  }
}

/** A way by requires from a change back to itself. */
function circleFrom(start: PossibleChange, known: KnownChanges): string[] | undefined {
  const seen = new Set<string>();
  const back = (from: PossibleChange): string[] | undefined => {
    for (const next of from.requires) {
      if (next === start.name && from !== start) return [from.name];
      const change = known.get(next);
      if (change === undefined || next === from.name || seen.has(next)) continue;
      seen.add(next);
      const rest = back(change);
      if (rest !== undefined) return [from.name, ...rest];
    }
    return undefined;
  };
  return back(start);
}

/** All that a change requires, also by way of others, what is required first ahead; not itself. */
export function requiredBy(change: PossibleChange, known: KnownChanges): string[] {
  const found = new Set<string>(),
    open = new Set([change.name]);
  const visit = ({ requires }: PossibleChange): void => {
    for (const other of requires) {
      const next = known.get(other);
      if (next === undefined || open.has(other)) continue;
      open.add(other);
      visit(next);
      found.add(other);
    }
  };
  visit(change);
  return [...found];
}

import type { Thing } from '../../../scenario/reliefs/thing.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { defined } from '../../lists.js';
import { type Changed, changedOr } from '../changes.js';
import type { Relief } from '../relief.js';

/** Largest group; fewer reliefs than that are tried one by one. */
const GROUP = 16;

type Member = Changed & { readonly of: Relief };

/**
 * Numbers of reliefs, in groups of those that may bring about as much, the most first, and of these in their
 * order, which is that of kinds and of the route; one by itself where others could not be changed with it.
 * @param bears how much each may bring, see `byArithmetic`
 */
export function grouped(
  reliefs: readonly Member[],
  mayJoin: (relief: Member) => boolean,
  bears: (thing: Thing) => number,
): number[][] {
  const numbers = [...reliefs.keys()],
    weights = reliefs.map(({ of }) => bears(of.of)),
    join = numbers
      .filter((i) => isJoined(reliefs[i], mayJoin))
      .sort((a, b) => defined(weights[b]) - defined(weights[a]) || a - b),
    alone = numbers.filter((i) => !join.includes(i));
  if (join.length < GROUP) return numbers.map((i) => [i]);
  const groups = Math.ceil(join.length / GROUP),
    edge = (g: number): number => Math.round((g * join.length) / groups);
  return [
    ...Array.from({ length: groups }, (_, g) => join.slice(edge(g), edge(g + 1))),
    ...alone.map((i) => [i]),
  ];
}

/** A change that the scenario names is made of what it is, not of what others have made of it. */
const isJoined = (relief: Member | undefined, mayJoin: (relief: Member) => boolean): boolean =>
  relief !== undefined && relief.of.kind !== 'named change' && mayJoin(relief);

/** The scenario with all of these reliefs; null: they cannot be made together. */
export function together(base: Changed, reliefs: readonly Member[]): Changed | null {
  const changed = changedOr(base, () =>
    reliefs.reduce((from: Scenario, { of }) => of.change(from), base.scenario),
  );
  return typeof changed === 'string' ? null : changed;
}

import { defined } from '../../lists.js';
import { familyLevel } from '../../statistics/difference.js';
import { boundsOf } from '../../statistics/estimate.js';
import { meanInterval } from '../../statistics/interval.js';
import type { Node } from './bifurcation.js';

/** Halves of groups that were set against the whole, and the members of the other half of those that fail. */
export interface Harm<Member> {
  readonly tested: number;
  readonly found: readonly (readonly Member[])[];
}

/**
 * That nothing takes away what others gain is tested on what was run: a half that surely gains more than the
 * whole group shows that the other half takes something away. All tests hold together at the level
 * (Bonferroni).
 */
export function harmOf<Member>(
  nodes: readonly Node[],
  level: number,
  membersOf: (node: Node) => readonly Member[],
): Harm<Member> {
  const pairs = nodes.flatMap((part) => {
    const { whole } = part,
      both = Math.min(part.gains.length, whole?.gains.length ?? 0);
    return whole === null || both < 2 ? [] : { part, whole, both };
  });
  const found = pairs.filter(({ part, whole, both }) => {
    const more = part.gains.slice(0, both).map((gain, r) => gain - defined(whole.gains[r]));
    return boundsOf(meanInterval(more, familyLevel(level, pairs.length))).low > 0;
  });
  return {
    tested: pairs.length,
    found: found.map(({ part, whole }) =>
      membersOf(whole).filter((member) => !membersOf(part).includes(member)),
    ),
  };
}

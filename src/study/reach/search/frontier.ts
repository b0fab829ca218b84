import type { Choices, Counts } from './choices.js';
import type { Pool } from './pool.js';

/** Sets that are built upon at each level; levels, and sets in all, after which the search is given up. */
const KEPT = 4,
  MOST_LEVELS = 16,
  MOST_SETS = 240;

/**
 * Looks for the best set at each sum of money: from the build as it is on, each of the sets kept is tried
 * with one change more of each kind, and those that no cheaper set matches are kept (a beam: no promise).
 * Two changes that help only together are found where one of them is kept by something else, or by the search
 * for the cheapest set, which runs into the same pool.
 * @param zone what a set must do more than a cheaper one
 */
export async function climb(choices: Choices, pool: Pool, zone: number): Promise<void> {
  await pool.run([choices.none]);
  let kept: Counts[] = [choices.none];
  const tried = new Map([[choices.none.join(), choices.none]]);
  for (let level = 0; level < MOST_LEVELS && kept.length > 0 && tried.size < MOST_SETS; level++) {
    const next = new Map(
      kept.flatMap((counts) => choices.further(counts)).map((counts) => [counts.join(), counts]),
    );
    for (const key of tried.keys()) next.delete(key);
    for (const [key, counts] of next) tried.set(key, counts);
    await pool.run([...next.values()]);
    kept = frontier(pool.ran, choices, pool, zone)
      .filter((counts) => next.has(counts.join()))
      .toSorted((a, b) => pool.score(b) - pool.score(a))
      .slice(0, KEPT);
  }
}

/** Sets that may be made and do more, by the zone, than all that are not dearer: the cheapest first. */
export function frontier(
  sets: readonly Counts[],
  choices: Choices,
  of: Pick<Pool, 'score'>,
  zone: number,
): Counts[] {
  const front: Counts[] = [];
  let best = -Infinity;
  const allowed = sets.filter((counts) => choices.isAllowed(counts));
  for (const counts of allowed.toSorted(
    (a, b) => choices.price(a) - choices.price(b) || of.score(b) - of.score(a) || choices.compare(a, b),
  ))
    if (of.score(counts) > best + (front.length === 0 ? 0 : zone)) {
      front.push(counts);
      best = of.score(counts);
    }
  return front;
}

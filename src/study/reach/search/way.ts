import { defined } from '../../lists.js';
import type { Choices, Counts } from './choices.js';
import type { Pool } from './pool.js';

/**
 * The way to a set, one change at a time, each as often as the set has it: that which brings most comes
 * first, what it requires ahead of it; of equal ones the cheaper.
 * @returns the sets on the way: the build as it is, .. the set itself
 */
export async function wayTo(target: Counts, choices: Choices, pool: Pool): Promise<Counts[]> {
  const way = [choices.none];
  for (;;) {
    const here = defined(way.at(-1)),
      next = target.flatMap((times, i) => {
        if (times === here[i]) return [];
        const set = here.map((count, j) => (j === i ? times : count));
        return choices.isAllowed(set) ? [set] : [];
      });
    if (next.length === 0) return way;
    await pool.run(next);
    way.push(
      next.reduce((best, each) =>
        pool.score(each) - pool.score(best) > 0 ||
        (pool.score(each) === pool.score(best) && choices.compare(each, best) < 0)
          ? each
          : best,
      ),
    );
  }
}

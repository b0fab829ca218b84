import { defined } from '../../lists.js';
import { cheapestOutside } from './cheapest-outside.js';
import type { Choices, Counts } from './choices.js';
import type { Pool, Standing } from './pool.js';

/** Sets that are tried one after the other before it takes too long. */
const MOST_ROUNDS = 200;

/**
 * The cheapest set that is not surely short, if no change hurts: the cheapest that is part of no set known to
 * be short is tried; if it is short it is grown into a largest short set, which rules out all of its parts
 * too. So each round either ends the search or rules out more, and whatever is cheaper than the set found is
 * known to be short (implicit hitting sets: Chandrasekaran, Karp, Moreno-Centeno & Vempala 2011, SODA,
 * 614-629; from memory).
 * @param beside sets that are not to be found, whatever is known of them, nor any part of them
 * @returns null: there is none; undefined: it took too long
 */
export async function cheapestNotShort(
  choices: Choices,
  pool: Pool,
  beside: readonly Counts[],
): Promise<{ readonly counts: Counts; readonly standing: Exclude<Standing, 'short'> } | null | undefined> {
  const clashing: Counts[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const counts = cheapestOutside(choices, [...pool.largestShort, ...clashing, ...beside]);
    if (counts === null) return null;
    // Made together they clash; all of its parts were looked at before.
    if (pool.whyNot(counts) !== null) {
      clashing.push(counts);
      continue;
    }
    const standing = await pool.standing(counts);
    if (standing !== 'short') return { counts, standing };
    await grown(counts, choices, pool);
  }
  return undefined;
}

/**
 * Makes a short set as large as it can be and still be short, by halves of what is left to add. What excludes
 * each other is added too: the set need not be one that can be bought.
 */
async function grown(short: Counts, choices: Choices, pool: Pool): Promise<void> {
  let set = short;
  const add = (items: readonly number[]): Counts => {
    const more = [...set];
    for (const i of items) more[i] = defined(more[i]) + 1;
    return more;
  };
  const grow = async (items: readonly number[]): Promise<void> => {
    if (items.length === 0) return;
    const larger = add(items);
    if (pool.mayBeShort(larger) && (await pool.standing(larger)) === 'short') {
      set = larger;
      return;
    }
    if (items.length === 1) return;
    const half = Math.ceil(items.length / 2);
    await grow(items.slice(0, half));
    await grow(items.slice(half));
  };
  const left = choices.all.flatMap((_, i) =>
    Array.from({ length: defined(choices.most[i]) - defined(short[i]) }, () => i),
  );
  await grow(left);
}

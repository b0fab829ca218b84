import { exact } from '../../study/format.js';

/** Rows of a picture that can still be looked at. */
export const MOST_ROWS = 120;

/**
 * The items of a picture, in their order: all, or of very many those with the greatest weight, and the
 * sentence that says so, with a space before it; else nothing. `weight` is any number, NaN the least.
 */
export function foremost<Item>(
  items: readonly Item[],
  weight: (item: Item) => number,
  things: string,
  why: string,
): { readonly shown: readonly Item[]; readonly note: string } {
  if (items.length <= MOST_ROWS) return { shown: items, note: '' };
  const weights = items.map((item) => {
      const each = weight(item);
      return Number.isNaN(each) ? -Infinity : each;
    }),
    chosen = new Set(
      [...weights.keys()].sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0) || a - b).slice(0, MOST_ROWS),
    );
  return {
    shown: items.filter((_, i) => chosen.has(i)),
    note: ` Of ${exact(items.length)} ${things} the ${MOST_ROWS} ${why}; results.json has all.`,
  };
}

import { exact } from '../../study/format.js';
import { LAYOUT } from '../style.js';

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
  const { mostRows } = LAYOUT;
  if (items.length <= mostRows) return { shown: items, note: '' };
  LAYOUT.isCut = true;
  const weights = items.map((item) => {
      const each = weight(item);
      return Number.isNaN(each) ? -Infinity : each;
    }),
    chosen = new Set(
      [...weights.keys()].sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0) || a - b).slice(0, mostRows),
    );
  return {
    shown: items.filter((_, i) => chosen.has(i)),
    note: ` Of ${exact(items.length)} ${things} the ${mostRows} ${why}; results.json has all.`,
  };
}

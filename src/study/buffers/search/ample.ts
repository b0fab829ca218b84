import { UNLIMITED } from '../../../flow/model/model.js';
import { defined } from '../../lists.js';
import { type Layout, placesOf, type Spot } from '../spots.js';
import type { Tried } from './tried.js';

/** So many are tried first where the most ever in use is not known. */
export const AMPLE = 64,
  /** And no more than that: places of an arrival bank take memory. */
  MOST_AMPLE = 4096;

/** No limit in any spot. */
export const unlimitedOf = (spots: readonly Spot[]): Layout => spots.map(() => UNLIMITED);

/**
 * No limit cut to the most that were ever in use, which goes just so. Where that is not known, because there
 * were very many, to so many that the layout ships as much.
 */
export async function roomEnough(trials: Tried, spots: readonly Spot[], unlimited: Layout): Promise<Layout> {
  const used = trials.used(unlimited);
  for (let size = AMPLE; ; size *= 4) {
    const layout = unlimited.map((places, s) => {
      const { least, present } = defined(spots[s]),
        most = defined(used[s]);
      return Math.min(places, Math.max(least, most < places ? most : Math.max(size, present)));
    });
    await trials.run([layout]);
    if (trials.mean(layout) >= trials.mean(unlimited) || size >= MOST_AMPLE) return layout;
  }
}

/** So many places in all, or all of `from` if these are fewer, in proportion to what is free of it. */
export function inProportion(least: Layout, from: Layout, places: number): Layout {
  const free = placesOf(from) - placesOf(least),
    part = free === 0 ? 0 : Math.max(0, Math.min(1, (places - placesOf(least)) / free)),
    exact = from.map((all, s) => part * (all - defined(least[s]))),
    rest = (s: number): number => defined(exact[s]) - Math.floor(defined(exact[s]));
  let left = Math.round(part * free) - placesOf(exact.map(Math.floor));
  // Largest remainders first.
  const more = new Set([...least.keys()].sort((a, b) => rest(b) - rest(a) || a - b).filter(() => left-- > 0));
  return exact.map((each, s) => defined(least[s]) + Math.floor(each) + Number(more.has(s)));
}

/**
 * Places taken away from above: half of those of one spot at a time, where that loses least, for as long as
 * `may` says so of what is left; then a quarter, an eighth .. of them, down to one.
 */
export async function cutBack(
  trials: Tried,
  spots: readonly Spot[],
  from: Layout,
  may: (layout: Layout) => boolean,
): Promise<Layout> {
  let layout = from;
  for (let part = 2; ; ) {
    const cuts = cutsOf(spots, layout, part),
      // Of equal ones the largest cut comes first.
      next = (await trials.best(cuts, cuts.length)).find(may);
    if (next !== undefined) layout = next;
    else if (cuts.every((cut) => placesOf(cut) === placesOf(layout) - 1)) return layout;
    else part *= 2;
  }
}

/** Places taken away from above, by halves, until there are at most so many. */
export async function cutTo(
  trials: Tried,
  spots: readonly Spot[],
  from: Layout,
  places: number,
): Promise<Layout> {
  let layout = from;
  while (placesOf(layout) > places) {
    const [next] = await trials.best(cutsOf(spots, layout, 2), 1);
    layout = defined(next);
  }
  return layout;
}

/** One spot each with a part of its places less, the largest cut first. */
const cutsOf = (spots: readonly Spot[], layout: Layout, part: number): Layout[] =>
  spots
    .map(({ least }, s) => {
      const free = defined(layout[s]) - least;
      return layout.map((places, i) =>
        i === s && free > 0 ? places - Math.max(1, Math.floor(free / part)) : places,
      );
    })
    .filter((cut) => placesOf(cut) < placesOf(layout))
    .sort((a, b) => placesOf(a) - placesOf(b));

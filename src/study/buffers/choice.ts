import { defined } from '../lists.js';
import { difference, familyLevel } from '../statistics/difference.js';
import { boundsOf } from '../statistics/estimate.js';
import type { Search } from './search/search.js';
import type { Tried } from './search/tried.js';
import { type Selected, selectBest } from './select.js';
import { distinct, isSameLayout, type Layout, placesOf, unevenness } from './spots.js';

/** So many layouts come into a selection. */
const CANDIDATES = 5;

/**
 * Takes places away for as long as `reaches` says of what is left that it is enough: one at a time, with
 * moves that may make it enough. Of many spots first a quarter of what can be taken, then by halves, without
 * moves: they would cost more than all else where what is left is far too little.
 */
export async function fewest(
  search: Search,
  from: Layout,
  least: number,
  reaches: (layout: Layout) => boolean,
): Promise<Layout> {
  let layout = from,
    step = search.hasMany ? Math.max(1, Math.floor((placesOf(from) - least) / 4)) : 1;
  while (step > 0 && placesOf(layout) > least) {
    const walked = await search.walk(layout, Math.max(least, placesOf(layout) - step)),
      fewer = step > 1 ? walked : await search.exchange(walked, reaches);
    if (reaches(fewer)) layout = fewer;
    else step = Math.floor(step / 2);
  }
  return layout;
}

/** Of the layouts of the search that reach it the one with the fewest places, the most even, the best. */
export const leanest = (trials: Tried, reaches: (layout: Layout) => boolean): Layout | undefined =>
  trials
    .ranked()
    .filter(reaches)
    .sort((a, b) => placesOf(a) - placesOf(b) || unevenness(a) - unevenness(b))[0];

/** What the choice among the layouts of the search hangs on. */
interface Setting {
  /** The search, and replications that it has not seen. */
  readonly trials: Tried;
  readonly fresh: Tried;
  readonly present: Layout;
  /** Relative difference that does not matter. */
  readonly zone: number;
  readonly level: number;
  /** Fresh replications that each of those compared gets at least. */
  readonly replications: number;
  readonly onStage?: ((text: string) => void) | undefined;
}

/** Chooses among the best layouts of the search on replications that it has not seen. */
export class Choice {
  constructor(private readonly setting: Setting) {}

  /**
   * One within the zone of the best of those with so many places, and of `besides`, which come first. Of
   * those that are surely less than the zone behind the best, by the whole interval, the layout as it is
   * stays; otherwise the most even one is taken.
   * @param floor that the mean of the fresh replications must reach if it is not that of the best
   */
  async among(places: number, besides: readonly Layout[], floor: Floor): Promise<Selected> {
    const { trials, fresh, zone, level, replications, onStage } = this.setting;
    const found = trials.ranked().filter((layout) => placesOf(layout) === places),
      candidates = distinct([...besides, ...found.slice(0, CANDIDATES)]);
    onStage?.(`selecting among ${candidates.length} layouts with ${places} places`);
    const selected = await selectBest(fresh, candidates, zone * trials.mean(defined(found[0])), level),
      n = Math.max(replications, selected.rounds);
    await fresh.run(candidates, n);
    return this.evenest(selected, n, await floor(n));
  }

  private evenest(selected: Selected, n: number, floor: number): Selected {
    const { fresh, present, zone, level } = this.setting,
      { layout: best, others } = selected;
    const values = (layout: Layout): readonly number[] => fresh.values(layout).slice(0, n),
      matters = zone * fresh.mean(best, n),
      together = familyLevel(level, others.length);
    const isAsGood = (layout: Layout): boolean =>
      placesOf(layout) <= placesOf(best) &&
      fresh.mean(layout, n) >= floor &&
      boundsOf(difference(values(layout), values(best), together).difference).high <= matters;
    const rank = (layout: Layout): number => (isSameLayout(layout, present) ? -1 : unevenness(layout)),
      layout = others
        .filter(isAsGood)
        .reduce((least, each) => (rank(each) < rank(least) ? each : least), best);
    return { ...selected, layout, others: [best, ...others].filter((each) => each !== layout) };
  }
}

/** The least that matters, of the first n fresh replications. */
type Floor = (n: number) => number | Promise<number>;

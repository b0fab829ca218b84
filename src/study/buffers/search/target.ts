import { defined } from '../../lists.js';
import { leanest } from '../choice.js';
import { type Layout, placesOf } from '../spots.js';
import { cutBack, inProportion, roomEnough } from './ample.js';
import type { Bar } from './bar.js';
import { everyLayout } from './every.js';
import { fewerTried, fewestFor, withMore } from './fewest.js';
import type { Found, Hunt } from './hunt.js';

/** Where fresh replications fall short of the target, places are added so often. */
const MOST_MORE = 3;

/** The fewest places for a rate, from below and, of a few spots, from above. */
export async function forTarget(hunt: Hunt, bar: Bar): Promise<Found> {
  const { search, choice, trials, fresh, present, onStage } = hunt,
    none = { best: null, within: null, bar };
  onStage?.(`looking for the fewest places over ${present.length} spots`);
  const enough = await anyThatReaches(hunt, bar);
  if (enough === null) {
    const most = trials.mean(defined(trials.ranked()[0])),
      layout = defined(leanest(trials, (each) => trials.mean(each) >= most)),
      chosen = { layout, others: [], settled: true, rounds: 0 };
    return { ...none, chosen, isReached: false, rounds: 0, fewer: null };
  }
  const fewest = await fewestFor(hunt, bar, enough);
  let layout = await search.climb(fewest, placesOf(fewest));
  for (let more = 0; ; more++) {
    const even = await search.evened(layout, bar.reaches),
      chosen = await choice.among(placesOf(layout), [even], bar.floor),
      n = Math.max(hunt.replications, chosen.rounds);
    await fresh.run([chosen.layout], n);
    if (fresh.mean(chosen.layout, n) >= (await bar.floor(n)) || more === MOST_MORE)
      return {
        ...none,
        chosen,
        isReached: true,
        rounds: chosen.rounds,
        fewer: fewerTried(hunt, chosen.layout),
      };
    layout = await withMore(hunt, bar, chosen.layout);
  }
}

/** A layout that reaches the bar, with few places if it can be; null: none was found. */
async function anyThatReaches(hunt: Hunt, { reaches, rate }: Bar): Promise<Layout | null> {
  const { search, trials, spots, present, least, unlimited, ceiling } = hunt;
  if (rate > ceiling) return null;
  const used = await roomEnough(trials, spots, unlimited);
  if (reaches(used) || reaches(unlimited)) {
    const start = hunt.start ?? (await coarsest(hunt, used, reaches)),
      most = Math.max(placesOf(used), placesOf(start)),
      walked = await search.walk(start, Infinity, (each) => reaches(each) || placesOf(each) >= most),
      isFew = everyLayout(least, placesOf(walked) - 1) !== null;
    if (reaches(walked) && (search.hasMany || isFew)) return walked;
    if (!search.hasMany) await cutBack(trials, spots, used, reaches);
    return defined(leanest(trials, reaches));
  }
  // More room is not always better: what has less of it may reach what no limit does not.
  const parts = [2, 4, 8, 16].map((part) =>
    used.map((places, s) => defined(least[s]) + Math.floor((places - defined(least[s])) / part)),
  );
  await trials.run([present, ...parts]);
  if (!search.hasMany) {
    let most = trials.mean(used);
    const gains = (layout: Layout): boolean => {
      const isMore = trials.mean(layout) > (1 + search.worth) * most;
      if (isMore) most = trials.mean(layout);
      return isMore;
    };
    await cutBack(trials, spots, used, gains);
  }
  return leanest(trials, reaches) ?? null;
}

/**
 * Of the layout as it is and of parts of what is used without limits, in proportion, the one with the fewest
 * places that reaches the bar; the largest where none does.
 */
async function coarsest(
  { trials, present, least }: Hunt,
  used: Layout,
  reaches: Bar['reaches'],
): Promise<Layout> {
  const free = placesOf(used) - placesOf(least),
    parts = [1, 2, 4, 8].map((part) => inProportion(least, used, placesOf(least) + Math.floor(free / part)));
  await trials.run([present, ...parts]);
  const [first] = [present, ...parts].filter(reaches).sort((a, b) => placesOf(a) - placesOf(b));
  return first ?? used;
}

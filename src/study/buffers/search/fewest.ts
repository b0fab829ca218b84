import { fewest, leanest } from '../choice.js';
import { type Layout, placesOf } from '../spots.js';
import { inProportion } from './ample.js';
import type { Bar } from './bar.js';
import { everyLayout, keeping, tryEvery } from './every.js';
import type { Hunt } from './hunt.js';

/** Of many spots, one that is known to reach the bar is taken if it has so many times the places at most. */
const NEAR = 1.15;

/**
 * A layout with as few places as can be found that reaches the bar, from one that does. Places are taken away
 * until there are so few layouts with fewer that all of them can be tried.
 */
export async function fewestFor(hunt: Hunt, bar: Bar, from: Layout): Promise<Layout> {
  const { search, trials, least } = hunt;
  if (search.hasMany) await partsOf(hunt, from, bar.reaches);
  for (let layout = leanest(trials, bar.reaches) ?? from; ; ) {
    if (await triedFewer(hunt, bar, placesOf(layout))) return leanest(trials, bar.reaches) ?? layout;
    layout = await fewest(search, layout, placesOf(least), bar.reaches);
    if (await triedFewer(hunt, bar, placesOf(layout))) return leanest(trials, bar.reaches) ?? layout;
    const next = await search.fewerByLeap(layout, placesOf(layout) - 1, bar.reaches);
    if (next === null) return layout;
    layout = next;
  }
}

/** Of many spots tries a half, a quarter .. of the places, in proportion, for as long as that reaches. */
async function partsOf({ trials, least }: Hunt, from: Layout, reaches: Bar['reaches']): Promise<void> {
  const free = placesOf(from) - placesOf(least);
  for (let part = 2; part <= free; part *= 2) {
    const layout = inProportion(least, from, placesOf(least) + Math.floor(free / part));
    await trials.run([layout]);
    if (!reaches(layout)) return;
  }
}

/** Tries all layouts with fewer places that may reach the bar; false: there are too many. */
async function triedFewer({ trials, least }: Hunt, bar: Bar, places: number): Promise<boolean> {
  const all = everyLayout(least, places - 1);
  if (all === null) return false;
  await tryEvery(trials, all, (left, n) => keeping(trials, left, n, bar.mayReach));
  return true;
}

/** How many layouts have fewer places, if these are so few that all were tried. */
export const fewerTried = ({ least }: Hunt, layout: Layout): number | null =>
  everyLayout(least, placesOf(layout) - 1)?.length ?? null;

/**
 * Where a layout did not reach the bar on fresh replications: the leanest with more places, of those tried or
 * found for it.
 */
export async function withMore(hunt: Hunt, bar: Bar, layout: Layout): Promise<Layout> {
  const { search, trials } = hunt,
    places = placesOf(layout) + 1,
    known = (): Layout | undefined =>
      leanest(trials, (each) => placesOf(each) >= places && bar.reaches(each)),
    near = known();
  if (search.hasMany && near !== undefined && placesOf(near) <= NEAR * places) return near;
  const walked = await search.climb(await search.walk(layout, places), places);
  const next = (): Layout => known() ?? walked;
  await triedFewer(hunt, bar, placesOf(next()));
  return next();
}

import { number } from '../../format.js';
import { fewest, leanest } from '../choice.js';
import { type Layout, placesOf } from '../spots.js';
import type { Found, Hunt } from './hunt.js';

/**
 * The fewest places that come within the zone of the best layout found for a budget: first the best for all
 * of them, then places are taken away from the leanest layout on the way there that comes within the zone.
 */
export async function forBudget(hunt: Hunt, places: number): Promise<Found> {
  const { search, choice, trials, fresh, present, start, least, zone, replications, onStage } = hunt;
  onStage?.(`sharing out ${places} places over ${present.length} spots`);
  const full = await search.evened(await search.exchange(await search.walk(start, places)));
  // What is there already is not given up for something worse.
  const kept = placesOf(present) <= places ? [present] : [],
    best = await choice.among(places, [...kept, full], () => 0),
    found = { best: best.layout, ample: null, rounds: best.rounds };
  const floor = (1 - zone) * trials.mean(best.layout),
    reaches = (layout: Layout): boolean => trials.mean(layout) >= floor;
  const freshFloor = async (n: number): Promise<number> => {
    await fresh.run([best.layout], n);
    return (1 - zone) * fresh.mean(best.layout, n);
  };
  onStage?.(`looking for the fewest places within ${number(100 * zone)} % of the best found`);
  let lean = await fewest(search, leanest(trials, reaches) ?? best.layout, placesOf(least), reaches);
  while (placesOf(lean) < placesOf(best.layout)) {
    const even = await search.evened(lean, reaches),
      chosen = await choice.among(placesOf(lean), [even], freshFloor),
      rounds = Math.max(replications, chosen.rounds, best.rounds);
    await fresh.run([chosen.layout], rounds);
    if (fresh.mean(chosen.layout, rounds) >= (await freshFloor(rounds))) return { ...found, chosen, rounds };
    lean = await search.exchange(await search.walk(chosen.layout, placesOf(lean) + 1));
  }
  return { ...found, chosen: best };
}

import { number } from '../../format.js';
import { defined } from '../../lists.js';
import { type Layout, placesOf } from '../spots.js';
import { cutTo, inProportion, roomEnough } from './ample.js';
import { Bar } from './bar.js';
import { everyLayout, nearTheBest, tryEvery } from './every.js';
import { fewerTried, fewestFor, withMore } from './fewest.js';
import type { Found, Hunt } from './hunt.js';
import type { Tried } from './tried.js';

/**
 * The fewest places that come within the zone of the best layout found for a budget: first the best with at
 * most so many, then places are taken away from the leanest layout on the way there that comes within the
 * zone.
 */
export async function forBudget(hunt: Hunt, places: number): Promise<Found> {
  const { search, choice, trials, fresh, present, least, zone, replications, onStage } = hunt;
  onStage?.(`sharing out ${places} places over ${present.length} spots`);
  const all = everyLayout(least, places);
  if (all === null) await climbs(hunt, places);
  else await tryEvery(trials, all, nearTheBest(trials, zone));
  const top = bestWithin(trials, places, search.worth),
    full = await search.evened(top);
  // What is there already is not given up for something worse.
  const kept = placesOf(present) <= places ? [present] : [],
    best = await choice.among(placesOf(top), [...kept, full], () => 0),
    within = all?.length ?? null,
    found = { best: best.layout, bar: null, isReached: true, rounds: best.rounds, within },
    floor = new Bar(trials, fresh, 1 - zone, best.layout);
  onStage?.(`looking for the fewest places within ${number(100 * zone)} % of the best found`);
  let lean = await fewestFor(hunt, floor, best.layout);
  while (placesOf(lean) < placesOf(best.layout)) {
    const even = await search.evened(lean, floor.reaches),
      chosen = await choice.among(placesOf(lean), [even], floor.floor),
      rounds = Math.max(replications, chosen.rounds, best.rounds);
    await fresh.run([chosen.layout], rounds);
    if (fresh.mean(chosen.layout, rounds) >= (await floor.floor(rounds)))
      return { ...found, chosen, rounds, fewer: fewerTried(hunt, chosen.layout) };
    lean = await withMore(hunt, floor, chosen.layout);
  }
  return { ...found, chosen: best, fewer: fewerTried(hunt, best.layout) };
}

/** From where the search is to begin; with a few spots also from the other end and from above. */
export async function climbs(
  { search, trials, spots, present, least, start, unlimited }: Omit<Hunt, 'choice' | 'fresh'>,
  places: number,
): Promise<void> {
  const above = (): Promise<Layout> => roomEnough(trials, spots, unlimited);
  let starts: readonly Layout[];
  if (!search.hasMany)
    starts = [
      ...(start === null || start === least ? [least, present] : [start, least]),
      await cutTo(trials, spots, await above(), places),
    ];
  else if (start !== null) starts = [start];
  else {
    const within = [inProportion(least, await above(), places), present];
    starts = await trials.leading(
      within.filter((layout) => placesOf(layout) <= places),
      1,
    );
  }
  for (const from of starts) await search.climb(await search.walk(from, places), places);
}

/** The best with all places of the budget, unless one with fewer is better by more than chance. */
export function bestWithin(trials: Tried, places: number, worth: number): Layout {
  const within = trials.ranked().filter((layout) => placesOf(layout) <= places),
    top = defined(within[0]),
    full = within.find((layout) => placesOf(layout) === places);
  return full !== undefined && trials.mean(full) * (1 + worth) >= trials.mean(top) ? full : top;
}

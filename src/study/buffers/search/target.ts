import { fewest } from '../choice.js';
import { type Layout, placesOf } from '../spots.js';
import type { Found, Hunt } from './hunt.js';

/** Places in every spot, at least, that stand for as many as one likes. */
const AMPLE = 64;
/** Where fresh replications fall short of the target, places are added so often. */
const MOST_MORE = 3;

/** The fewest places for a rate: places are added until it is reached, then taken away until it is not. */
export async function forTarget(hunt: Hunt, rate: number): Promise<Found> {
  const { search, choice, trials, fresh, present, start, least, onStage } = hunt,
    ample = present.map((places) => Math.max(AMPLE, places));
  const reaches = (layout: Layout): boolean => trials.mean(layout) >= rate;
  await trials.run([ample]);
  if (!reaches(ample)) {
    const chosen = { layout: ample, others: [], settled: true, rounds: 0 };
    return { chosen, best: null, ample, rounds: 0 };
  }
  onStage?.(`looking for the fewest places over ${present.length} spots`);
  const enough = await search.walk(
    start,
    Infinity,
    (each) => reaches(each) || placesOf(each) >= placesOf(ample),
  );
  let layout = await search.exchange(await fewest(search, enough, placesOf(least), reaches));
  for (let more = 0; ; more++) {
    const even = await search.evened(layout, reaches),
      chosen = await choice.among(placesOf(layout), [even], () => rate);
    await fresh.run([chosen.layout]);
    if (fresh.mean(chosen.layout) >= rate || more === MOST_MORE)
      return { chosen, best: null, ample, rounds: chosen.rounds };
    layout = await search.exchange(await search.walk(chosen.layout, placesOf(layout) + 1));
  }
}

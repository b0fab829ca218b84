import { type Layout, placesOf, unevenness } from '../spots.js';
import { mayReach } from './bar.js';
import type { Tried } from './tried.js';

/** Up to so many layouts are all tried. */
export const MOST_LAYOUTS = 300;

/**
 * All layouts with at most so many places, those with the most first, of them the most even; null: more than
 * `MOST_LAYOUTS`.
 */
export function everyLayout(least: Layout, places: number): Layout[] | null {
  const free = places - placesOf(least);
  // n over k, of free + spots over spots.
  let count = 1;
  for (const s of least.keys()) if ((count = (count * (free + s + 1)) / (s + 1)) > MOST_LAYOUTS) return null;
  const all: Layout[] = [];
  const share = (left: number, begun: Layout): void => {
    const next = least[begun.length];
    if (next === undefined) all.push(begun);
    else for (let more = 0; more <= left; more++) share(left - more, [...begun, next + more]);
  };
  share(free, []);
  return all.sort((a, b) => placesOf(b) - placesOf(a) || unevenness(a) - unevenness(b));
}

/**
 * Tries all of these layouts: each gets a quarter of the replications; those that may matter by what they
 * ship in these get twice as many, and so on. Those with more places come first, as fewer may go just as they
 * did.
 * @param mattering of the layouts that are left, after so many replications of each: which ones may matter
 */
export async function tryEvery(
  trials: Tried,
  layouts: readonly Layout[],
  mattering: (left: readonly Layout[], n: number) => readonly Layout[],
): Promise<void> {
  let left = layouts;
  for (let n = trials.few; ; n = Math.min(trials.most, 2 * n)) {
    for (const group of byPlaces(left)) await trials.run(group, n);
    if (n === trials.most) return;
    left = mattering(left, n);
  }
}

/** Which layouts may come within the zone of the best, and the best so far of each number of places. */
export const nearTheBest =
  (trials: Tried, zone: number) =>
  (left: readonly Layout[], n: number): Layout[] => {
    const best = bestOf(trials, left, n),
      floor = best === undefined ? [] : trials.values(best).map((value) => (1 - zone) * value);
    return keeping(trials, left, n, (each) => mayReach(trials.values(each).slice(0, n), floor));
  };

/** Which layouts may matter, and the best so far of each number of places, for the curve. */
export function keeping(
  trials: Tried,
  left: readonly Layout[],
  n: number,
  mayMatter: (layout: Layout) => boolean,
): Layout[] {
  const ofTheirNumber = new Set(byPlaces(left).map((group) => bestOf(trials, group, n)));
  return left.filter((each) => ofTheirNumber.has(each) || mayMatter(each));
}

/** The first of equal ones. */
const bestOf = (trials: Tried, layouts: readonly Layout[], n: number): Layout | undefined =>
  layouts.reduce<Layout | undefined>(
    (best, each) => (best === undefined || trials.mean(each, n) > trials.mean(best, n) ? each : best),
    undefined,
  );

function byPlaces(layouts: readonly Layout[]): Layout[][] {
  const groups = new Map<number, Layout[]>();
  for (const layout of layouts) {
    const places = placesOf(layout);
    groups.set(places, [...(groups.get(places) ?? []), layout]);
  }
  return [...groups.values()];
}

import { bounds, count, exact, intervalAndCount, mean, number, signed } from '../../format.js';
import { defined } from '../../lists.js';
import { boundsOf, type Estimate, negated } from '../../statistics/estimate.js';
import type { BufferResults } from '../results.js';
import type { PlaceByPlace, PlacePoint, PlacesAt } from './results.js';

type Results = Pick<
  BufferResults,
  'placeByPlace' | 'cheapest' | 'spots' | 'chosen' | 'unit' | 'zone' | 'level' | 'goal'
>;

/** More spots that differ are counted, not named. */
const MOST_NAMED = 6;

/** The chosen layout with one place more or fewer at one spot, those that stand at a cliff. */
export const cliffsOf = ({ spots }: PlaceByPlace): { readonly at: PlacesAt; readonly point: PlacePoint }[] =>
  spots.flatMap((at) =>
    at.points
      .filter(({ by, standing }) => Math.abs(by) === 1 && standing === 'cliff')
      .map((point) => ({ at, point })),
  );

/** One place more or fewer that loses much, by name; or that none surely does. */
export function cliffsSentence({ placeByPlace, unit, zone }: Results): string | null {
  if (placeByPlace === null || placeByPlace.spots.every(({ points }) => points.length === 0)) return null;
  const cliffs = cliffsOf(placeByPlace),
    much = `${number(300 * zone)} %`,
    looked = placeByPlace.leftOut === null ? 'spot' : 'of the spots looked at';
  if (cliffs.length === 0)
    return `No cliff: one place more or fewer at any one ${looked} does not surely lose ${much} or more.`;
  const texts = cliffs
    .sort((a, b) => a.point.more.mean - b.point.more.mean)
    .map(
      ({ at, point }) =>
        `one ${point.by < 0 ? 'fewer' : 'more'} at ${at.name} ` +
        (point.nothingIn > 0
          ? `ships nothing in ${exact(point.nothingIn)} of ${count(placeByPlace.replications, 'replication')}`
          : `loses ${loss(point.more)} of ${number(placeByPlace.rate)}`),
    );
  return `${cliffs.length === 1 ? 'A cliff' : 'Cliffs'} (${unit}): ${texts.join('; ')}.`;
}

/**
 * A number of places at one spot that surely ships more than the zone beyond the chosen layout: within the
 * budget, or with no more places than were found for a target. Null: none of those looked at.
 */
export function gainsSentence({ placeByPlace, unit, zone, goal, chosen }: Results): string | null {
  if (placeByPlace === null) return null;
  const room = goal.kind === 'budget' ? goal.places - chosen.total : 0,
    matters = zone * placeByPlace.rate;
  const gains = placeByPlace.spots
    .flatMap((at) => at.points.map((point) => ({ at, point })))
    .filter(({ point: { by, more } }) => by <= room && boundsOf(more).low > matters)
    .sort((a, b) => b.point.more.mean - a.point.more.mean);
  const [most] = gains;
  if (most === undefined) return null;
  const { at, point } = most;
  return (
    `More is to be had beside the chosen layout: with ${exact(point.places)} places at ${at.name} in place ` +
    `of ${exact(at.chosen)} it ships ${signed(point.more)} (${bounds(point.more)}) ${unit}.`
  );
}

const loss = (more: Estimate): string => `${mean(negated(more))} (${bounds(negated(more))})`;

/** Which layout costs least, against the chosen one. */
export function cheapestSentence({ cheapest, spots, chosen, unit, zone, goal }: Results): string | null {
  if (cheapest === null) return null;
  const { currency, verdict, cheapest: least } = cheapest,
    cost =
      least.cost === null
        ? 'it has no cost, as replications stood still'
        : `${mean(least.cost)} ${currency} a unit (${intervalAndCount(least.cost)})`,
    among =
      goal.kind === 'target'
        ? 'the layouts tried that reach the target'
        : cheapest.within === null
          ? 'the layouts tried'
          : `all ${exact(cheapest.within)} layouts with up to ${count(goal.places, 'place')}`;
  if (verdict === 'chosen') return `Of ${among} the chosen one costs least by the mean: ${cost}.`;
  const { dearer, more } = least,
    what = `${count(least.total, 'place')}${differing(spots, chosen.places, least.places)}`;
  if (dearer === null || more === null)
    return `Cheapest found of ${among}: ${what}: ${cost}; the chosen one stood still at times.`;
  const saved = negated(dearer),
    figures =
      `${cost}, ${mean(saved)} (${bounds(saved)}) less than in the chosen layout; it ships ` +
      `${signed(more)} (${bounds(more)}) ${unit}`;
  switch (verdict) {
    case 'as cheap':
      return (
        `The chosen layout costs as little, to within ${number(100 * zone)} %, as the cheapest found of ` +
        `${among}: ${what}: ${figures}.`
      );
    case 'cheaper':
      return `Cheapest found of ${among}: ${what}: ${figures}.`;
    default:
      return (
        `Cheapest by the means alone of ${among}: ${what}: ${figures}; more replications would tell ` +
        'whether it is cheaper than the chosen one.'
      );
  }
}

/** How a layout differs from the chosen one: `, second 3 instead of 2`. */
function differing(spots: Results['spots'], chosen: readonly number[], other: readonly number[]): string {
  const different = spots.flatMap(({ name }, s) => {
    const [from, to] = [defined(chosen[s]), defined(other[s])];
    return from === to ? [] : [`${name} ${exact(to)} instead of ${exact(from)}`];
  });
  return different.length > MOST_NAMED
    ? `, other numbers at ${different.length} spots`
    : ` (${different.join(', ')})`;
}

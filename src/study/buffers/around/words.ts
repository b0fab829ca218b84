import { bounds, count, exact, intervalAndCount, mean, number, signed } from '../../format.js';
import { defined } from '../../lists.js';
import { type Estimate, negated } from '../../statistics/estimate.js';
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
    looked = placeByPlace.leftOut === null ? '' : ' of the spots looked at';
  if (cliffs.length === 0)
    return `No cliff: one place more or fewer at any one${looked} does not surely lose ${much} or more.`;
  const texts = cliffs
    .sort((a, b) => a.point.more.mean - b.point.more.mean)
    .map(
      ({ at, point }) =>
        `one ${point.by < 0 ? 'fewer' : 'more'} at ${at.name} loses ${loss(point.more)} of ` +
        number(placeByPlace.rate),
    );
  return `${cliffs.length === 1 ? 'A cliff' : 'Cliffs'} (${unit}): ${texts.join('; ')}.`;
}

const loss = (more: Estimate): string => `${mean(negated(more))} (${bounds(negated(more))})`;

/** Which layout costs least, against the chosen one. */
export function cheapestSentence({ cheapest, spots, chosen, unit, zone, goal }: Results): string | null {
  if (cheapest === null) return null;
  const { currency, verdict, cheapest: least } = cheapest,
    cost = `${mean(least.cost)} ${currency} a unit (${intervalAndCount(least.cost)})`,
    asked = goal.kind === 'budget' ? '' : ' that reach the target';
  if (verdict === 'chosen') return `Of the layouts tried${asked} the chosen one costs least: ${cost}.`;
  const { dearer, more } = least,
    saved = negated(defined(dearer ?? undefined)),
    ships = defined(more ?? undefined),
    what = `${count(least.total, 'place')}${differing(spots, chosen.places, least.places)}`,
    figures =
      `${cost}, ${mean(saved)} (${bounds(saved)}) less than in the chosen layout; it ships ` +
      `${signed(ships)} (${bounds(ships)}) ${unit}`;
  switch (verdict) {
    case 'as cheap':
      return (
        `The chosen layout costs as little, to within ${number(100 * zone)} %, as the cheapest found` +
        `${asked}: ${what}: ${figures}.`
      );
    case 'cheaper':
      return `Cheapest of the layouts tried${asked}: ${what}: ${figures}.`;
    default:
      return (
        `Cheapest by the means alone${asked}: ${what}: ${figures}; more replications would tell whether ` +
        'it is cheaper than the chosen one.'
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

import { count, exact, number } from '../../../study/format.js';
import type { RatePoint, RateResults } from '../../../study/rate/results.js';
import { type Estimate, isSame } from '../../../study/statistics/estimate.js';

/** What the bars of a picture by rate look like, and how far its axis reaches. */
export interface RateScale {
  readonly low: number;
  readonly high: number;
  /** Its interval is wider than what matters: it is drawn thin. */
  readonly isLoose: (point: RatePoint) => boolean;
  /** What a reader has to know of the bars; empty: nothing. */
  readonly words: string;
}

/** Thin bars may stretch the axis by such a share of it, at each end. */
const STRETCH = 0.25;

/**
 * The axis from the lowest to the highest of the means and of the intervals narrow enough to tell what
 * matters; wider ones, of rates tried with few builds, stretch it by a quarter at most and run out of the
 * picture beyond. What matters is the share of units that may be missing where a rate holds.
 */
export function rateScale(
  { points, shortfallAllowed }: RateResults,
  of: (point: RatePoint) => Estimate,
): RateScale {
  const isLoose = (point: RatePoint): boolean => {
    const { mean, low, high } = of(point);
    return (
      low !== null && high !== null && Math.max(high - mean, mean - low) > shortfallAllowed * Math.abs(mean)
    );
  };
  const loose = points.filter(isLoose),
    firm = points.flatMap((point) => (isLoose(point) ? [of(point).mean] : endsOf(of(point)))),
    [from, to] = [Math.min(...firm), Math.max(...firm)],
    stretch = STRETCH * (to - from || shortfallAllowed * Math.abs(to) || 1),
    ends = loose.flatMap((point) => endsOf(of(point))),
    low = Math.max(from - stretch, Math.min(from, ...ends)),
    high = Math.min(to + stretch, Math.max(to, ...ends));
  const isCut = ends.some((end) => end < low || end > high),
    isBare = points.map(of).some((each) => each.low === null && each.n > 0 && !isSame(each)),
    unsure = `mean unsure by over ${number(100 * shortfallAllowed)} %`,
    thin =
      loose.length === 0 ? [] : [`Thin: ${buildsOf(loose)}, ${unsure}${isCut ? '; arrow: runs on' : ''}.`];
  return {
    low,
    high,
    isLoose,
    words: [...thin, ...(isBare ? ['No bar: too few builds.'] : [])].join(' '),
  };
}

/** `5 builds`, `5 to 30 builds`: how many a rate was tried with. */
export function buildsOf(points: readonly RatePoint[]): string {
  const all = points.map(({ replications }) => replications),
    [least, most] = [Math.min(...all), Math.max(...all)];
  return least === most ? count(most, 'build') : `${exact(least)} to ${count(most, 'build')}`;
}

const endsOf = ({ mean, low, high }: Estimate): number[] => [low ?? mean, mean, high ?? mean];

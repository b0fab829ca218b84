import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { median } from 'simple-statistics';
import { log } from '../../../random/elementary.js';
import { power } from '../../../random/power.js';
import { count, number } from '../../format.js';
import type { Warning } from './warning.js';

/** Of fewer there are no others to be far from. */
const FEWEST = 8;
/** Of the distances on one side so many are shorter than so many sd, where they are normal. */
const SCALES = [
  { share: 0.5, sd: 0.6744897501960817 },
  { share: 0.8, sd: 1.2815515655446004 },
];
/** Chance that one of all times of a lognormal lies so far out; and how many sd it must be at least. */
const ERROR = 0.001,
  FEWEST_SD = 4.5;

/**
 * Which times lie far from all others, by index: further from the median than one of n normal values would
 * with a chance of a thousandth, and than 4.5 sd. Long ones are judged on the logarithm, short ones on the
 * cube root, on which a gamma is nearly normal (E. B. Wilson & M. M. Hilferty, Proceedings of the National
 * Academy of Sciences 17, 1931, 684-688; from memory): on the logarithm an exponential has a long tail of
 * short times. The sd is that of the same side, by the median distance from the median (1 / 0.6745 of it: F.
 * R. Hampel, Journal of the American Statistical Association 69, 1974, 383-393; from memory) or by that which
 * four in five do not reach, whichever is greater, since rounded times crowd about the median. The bounds are
 * our own.
 */
export function farOut(times: readonly number[]): number[] {
  const n = times.length;
  if (n < FEWEST) return [];
  const middle = median(times),
    bound = Math.max(FEWEST_SD, -normalQuantile(ERROR / n, 0, 1));
  if (!(middle > 0)) return [];
  const above = (time: number): number => log(time / middle),
    below = (time: number): number => 1 - power(time / middle, 1 / 3),
    longest = bound * sdOf(times.filter((time) => time >= middle).map(above)),
    shortest = bound * sdOf(times.filter((time) => time <= middle).map(below));
  // Where most of a side are at the median there is no scale to measure by.
  const isFar = (time: number): boolean =>
    time > middle ? longest > 0 && above(time) > longest : shortest > 0 && below(time) > shortest;
  return times.flatMap((time, i) => (isFar(time) ? [i] : []));
}

/** Of distances from the median of all, on one side of it. */
function sdOf(distances: number[]): number {
  distances.sort((a, b) => a - b);
  return Math.max(
    ...SCALES.map(({ share, sd }) => distances[Math.floor(share * (distances.length - 1))] / sd),
  );
}

/** @param clocked the same times before the effect of options was taken out, which are those told */
export function warningOfOutliers(times: readonly number[], clocked: readonly number[] = times): Warning[] {
  const which = farOut(times);
  if (which.length === 0) return [];
  const shown = which.slice(0, 3).map((i) => `${number(clocked[i])} min`),
    more = which.length > 3 ? ' and others' : '';
  return [
    {
      kind: 'far from all others',
      which,
      told:
        `${count(which.length, 'time')} ${which.length === 1 ? 'lies' : 'lie'} far from all others: ` +
        `${shown.join(', ')}${more} (median ${number(median(clocked))} min). ` +
        `${which.length === 1 ? 'It is' : 'They are'} used all the same; look whether ` +
        `${which.length === 1 ? 'it is' : 'they are'} right.`,
    },
  ];
}

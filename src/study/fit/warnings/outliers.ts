import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { log } from '../../../random/elementary.js';
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
 * Which times lie far from all others, by index: further from the median, on the logarithm, than one of n
 * normal values would with a chance of a thousandth, and than 4.5 sd. The sd is that of the same side, as
 * times are skewed: by the median distance from the median (1 / 0.6745 of it: F. R. Hampel, Journal of the
 * American Statistical Association 69, 1974, 383-393; from memory) or by that which four in five do not
 * reach, whichever is greater, since rounded times crowd about the median. The bounds are our own.
 */
export function farOut(times: readonly number[]): number[] {
  const logs = times.map((time) => log(time)),
    known = logs.filter((value) => value > -Infinity);
  if (known.length < FEWEST) return [];
  const middle = median(known),
    bound = Math.max(FEWEST_SD, -normalQuantile(ERROR / known.length, 0, 1)),
    sdOf = (side: readonly number[]): number => {
      const away = side.map((value) => Math.abs(value - middle)).sort((a, b) => a - b);
      return Math.max(...SCALES.map(({ share, sd }) => away[Math.floor(share * (away.length - 1))] / sd));
    },
    below = bound * sdOf(known.filter((value) => value <= middle)),
    above = bound * sdOf(known.filter((value) => value >= middle));
  return logs.flatMap((value, i) => {
    const away = value - middle,
      limit = away > 0 ? above : below;
    // Where half of the times are the same there is no scale to measure by.
    return value > -Infinity && limit > 0 && Math.abs(away) > limit ? [i] : [];
  });
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b),
    n = sorted.length;
  return (sorted[Math.floor((n - 1) / 2)] + sorted[Math.ceil((n - 1) / 2)]) / 2;
}

export function warningOfOutliers(times: readonly number[]): Warning[] {
  const which = farOut(times);
  if (which.length === 0) return [];
  const shown = which.slice(0, 3).map((i) => `${number(times[i])} min`),
    more = which.length > 3 ? ' and others' : '';
  return [
    {
      kind: 'far from all others',
      which,
      told:
        `${count(which.length, 'time')} ${which.length === 1 ? 'lies' : 'lie'} far from all others: ` +
        `${shown.join(', ')}${more} (median ${number(median(times))} min). ` +
        `${which.length === 1 ? 'It is' : 'They are'} used all the same; look whether ` +
        `${which.length === 1 ? 'it is' : 'they are'} right.`,
    },
  ];
}

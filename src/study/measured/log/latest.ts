import type { NumberedTimes } from '../../../records/table/numbered.js';

/**
 * So many times of a step are fitted at most: tests of fit take time in proportion, and by then a mean is
 * known to 3 % of the standard deviation.
 */
export const MOST_FITTED = 1000;

/** The latest times of a step. */
export function latest<Times extends NumberedTimes>(times: Times, most = MOST_FITTED): Times {
  const { length } = times.minutes;
  if (length <= most) return times;
  const last = <Each>(list: readonly Each[]): Each[] => list.slice(-most);
  return {
    ...times,
    minutes: last(times.minutes),
    lines: last(times.lines),
    at: last(times.at),
    units: last(times.units),
    numbers: last(times.numbers),
    by: Object.fromEntries(Object.entries(times.by).map(([option, list]) => [option, last(list)])),
  };
}

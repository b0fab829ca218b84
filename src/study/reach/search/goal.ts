import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { momentsOf } from '../../statistics/interval.js';
import { normalQuantile } from '../../statistics/proportion.js';
import { type Side, sideOf, sideOfShare } from '../../statistics/standard.js';
import { mean } from '../../statistics/sums.js';

/** What a set of changes is to reach, judged by one value of each replication. */
export interface Goal {
  /** What one value is worth, the greater the better: a rate itself, of a day the opposite. */
  readonly worth: (value: number) => number;
  /** By which sets are ordered, the greater the better. */
  readonly score: (values: readonly number[]) => number;
  /** A difference of scores that does not matter, above 0. */
  readonly zone: number;
  /** Whether a set surely reaches it, or surely does not, by its first replications. */
  readonly look: (values: readonly number[]) => Side;
  /** The same by replications that had no part in finding it, with a chance of an error within the zone. */
  readonly decide: (values: readonly number[], error: number) => Side;
  /** Units a working day below which it is missed, whatever the chance; 0: that is not known. */
  readonly leastPerDay: number;
}

/** One-sided confidence at which a set is left in the search. */
const SURELY = 0.99;
/** Replications before anything is decided with a guarantee. */
const FIRST = 10;

/**
 * A standard that what is shipped is to meet on average, units a working day.
 * @param perDay the rate by which the zone is measured
 */
export function rateGoal(standard: number, perDay: number): Goal {
  const zone = RATE_ZONE * perDay;
  return {
    worth: (value) => value,
    score: mean,
    zone,
    leastPerDay: standard,
    look: (values) => {
      const { n, mean: middle, variance } = momentsOf(values),
        half = tQuantile(SURELY, n - 1) * Math.sqrt(variance / n);
      return middle - half >= standard ? 'above' : middle + half < standard ? 'below' : null;
    },
    decide: (values, error) => sideOf(values, standard, { first: FIRST, zone, error }),
  };
}
/** A share of the rate that does not matter: a quarter of what may be missing of it. Our own convention. */
const RATE_ZONE = 0.005;

/**
 * A day by which the last unit is out, in a share of the builds. Values are days since the start, Infinity
 * where the programme was not finished.
 * @param latest the last moment of that day, days since the start
 */
export function dateGoal(latest: number, share: number): Goal {
  const z = normalQuantile(share);
  // The quantile as that of normal values, with its standard error; see docs/reach.md.
  const quantile = (values: readonly number[]) => {
    const { n, mean: middle, variance } = momentsOf(values),
      spread = Math.sqrt(variance);
    return {
      middle: middle + z * spread,
      half: tQuantile(SURELY, n - 1) * spread * Math.sqrt(1 / n + (z * z) / (2 * (n - 1))),
    };
  };
  return {
    worth: (day) => -day,
    score: (values) => (values.every(Number.isFinite) ? -quantile(values).middle : -Infinity),
    zone: DATE_ZONE,
    leastPerDay: 0,
    look: (values) => {
      const late = values.filter((day) => day > latest).length;
      if (!values.every(Number.isFinite))
        return late > values.length * (1 - share) + LATE_AT_MOST ? 'below' : null;
      const { middle, half } = quantile(values);
      return middle + half <= latest ? 'above' : middle - half > latest ? 'below' : null;
    },
    decide: (values, error) =>
      sideOfShare(
        values.map((day) => day <= latest),
        share,
        { zone: SHARE_ZONE, error },
      ),
  };
}
/** Days, and a share of builds, that do not matter; late ones beyond what is expected that tell. Our own. */
const DATE_ZONE = 1,
  SHARE_ZONE = 0.05,
  LATE_AT_MOST = 3;

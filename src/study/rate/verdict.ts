import { defined } from '../lists.js';
import type { Counting } from '../loads/counting.js';
import { allowedUnits } from '../programme/shortfall.js';
import type { Reading } from '../sample/reading.js';
import { meanInterval } from '../statistics/interval.js';
import { proportion } from '../statistics/proportion.js';
import { sum } from '../statistics/sums.js';
import type { RatePoint, RateVerdict } from './results.js';

/** What a replication is judged by. */
export type RateReading = Pick<
  Reading,
  'outcome' | 'enteredIn' | 'shippedIn' | 'shippedOn' | 'scrapped' | 'wipIn'
>;

/** The weeks watched and what is asked in them. */
export interface Watched {
  readonly first: number;
  readonly end: number;
  /** Units released by plan, week by week from `first` on. */
  readonly released: readonly number[];
  /** Orders of scrapped units are built again, beyond the plan. */
  readonly isBuiltAgain: boolean;
  /** How units shipped in these weeks are counted. */
  readonly counting: Pick<Counting, 'loads' | 'isWhole' | 'upset' | 'shipped'>;
}

export type Judged = Pick<RatePoint, 'verdict' | 'why' | 'keptUp' | 'drift' | 'gridlocks'>;

/** Units that it makes where in its cycle of whole units a window ends. Loads make more beside it. */
const WHOLE_UNITS = 1,
  ROUNDING = 1e-9;

/**
 * A rate holds where enough replications keep up and open units, released and not yet out, do not become
 * more.
 *
 * - A replication keeps up when no more is missing of what is shipped in the window than 2 % of the units
 *   released by plan in it, or one and what loads alone can make. The lower end of the Wilson interval of
 *   their share is to be at least `sure`; where the upper end is below, the rate does not hold.
 * - The growth of open units is the slope of the least squares line through their weekly means, in each
 *   replication; where units come in loads, what is released less what is shipped, counted over whole loads.
 *   They grow where the whole Student-t interval of the mean growth lies above 0, by a unit and what loads
 *   alone can make, or more, over the window.
 * - A single gridlock is enough not to hold. Where two cycles of its loads do not go into the window, a rate
 *   is not seen to hold.
 */
export function judge(
  readings: readonly RateReading[],
  watched: Watched,
  sure: number,
  level: number,
): Judged {
  const { first, end, released, counting } = watched,
    asked = sum(released),
    slack = WHOLE_UNITS + counting.upset,
    allowed = Math.max(allowedUnits(asked), slack) + ROUNDING;
  const keeps = (reading: RateReading): boolean =>
    reading.outcome !== 'gridlock' && asked - counting.shipped(reading) <= allowed;
  const keptUp = proportion(readings.filter(keeps).length, readings.length, level);
  const running = readings.filter(({ outcome }) => outcome !== 'gridlock'),
    gridlocks = readings.length - running.length;
  const drift = meanInterval(
    running.map((reading) => growth(reading, watched)),
    level,
  );
  const drifts = drift.low !== null && drift.low * (end - first) >= slack;
  const found = (verdict: RateVerdict, why: string): Judged => ({ verdict, why, keptUp, drift, gridlocks });
  if (gridlocks > 0) return found('does not hold', `gridlock in ${gridlocks} of ${readings.length}`);
  if (keptUp.high < sure)
    return found('does not hold', drifts ? 'too few keep up, and open units grow' : 'too few keep up');
  if (drifts) return found('does not hold', 'open units grow');
  if (!counting.isWhole) return found('not settled', 'its loads come too seldom for these weeks');
  if (keptUp.low < sure || drift.low === null)
    return found('not settled', 'too few replications to tell how many keep up');
  return found('holds', 'enough keep up, and open units do not grow');
}

/** Growth of open units a week, counted over whole cycles where there are loads. */
function growth(reading: RateReading, watched: Watched): number {
  const { first, end, released, isBuiltAgain, counting } = watched;
  if (counting.loads.length === 0) return slope(openByWeek(reading, watched));
  // A scrapped unit is missing, but not open; unless its order is built again.
  const gone = isBuiltAgain ? 0 : reading.scrapped;
  return (sum(released) - counting.shipped(reading) - gone) / (end - first);
}

/**
 * Mean of open units by week, but for those that waited at the first door when the window began: WIP, and
 * units released by plan that wait to be let in, which are not WIP yet. Orders built again are taken out
 * evenly.
 */
function openByWeek(
  { wipIn, enteredIn, scrapped }: RateReading,
  { first, end, released, isBuiltAgain }: Watched,
): number[] {
  const again = isBuiltAgain ? scrapped / (end - first) : 0;
  let waiting = 0;
  return released.map((units, week) => {
    const before = waiting;
    waiting += units + again - defined(enteredIn[first + week]);
    return defined(wipIn[first + week]) + (before + waiting) / 2;
  });
}

/** Least squares slope of values one step apart; 0 of fewer than two. */
export function slope(values: readonly number[]): number {
  const n = values.length,
    middle = (n - 1) / 2;
  let products = 0,
    squares = 0;
  for (const [i, value] of values.entries()) {
    products += (i - middle) * value;
    squares += (i - middle) ** 2;
  }
  return squares === 0 ? 0 : products / squares;
}

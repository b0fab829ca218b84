import type { Model } from '../../flow/model/model.js';
import type { Observation } from '../../measure/observe.js';
import type { Counting, ShippedBy } from '../loads/counting.js';
import { type Proportion, proportion } from '../statistics/proportion.js';
import { allowedUnits } from './shortfall.js';

/** What is asked in the weeks judged, and how units shipped in them are counted. */
export interface AskedIn {
  readonly asked: number;
  readonly counting: Pick<Counting, 'upset' | 'isWhole' | 'shipped'>;
}

/** A replication of which it can be told whether it keeps up. */
export type Kept = Pick<Observation, 'outcome'> & ShippedBy;

/** Units that it makes where in its cycle of whole units a window ends; loads make more beside it. */
const WHOLE_UNIT = 1,
  ROUNDING = 1e-9;

/** Units by which a count may be off though nothing is left to chance. */
export const wholeUnits = ({ upset }: Pick<Counting, 'upset'>): number => WHOLE_UNIT + upset;

/**
 * Units that a build may miss and still keep up: 2 % of those asked, or one and what loads alone can make of
 * the count, if that is more.
 */
export const allowedIn = (asked: number, counting: Pick<Counting, 'upset'>): number =>
  Math.max(allowedUnits(asked), wholeUnits(counting)) + ROUNDING;

/** A build that stands still does not keep up, whatever it had shipped. */
export const keepsUp = (build: Kept, weeks: AskedIn): boolean =>
  build.outcome !== 'gridlock' &&
  weeks.asked - weeks.counting.shipped(build) <= allowedIn(weeks.asked, weeks.counting);

/**
 * Units out in the weeks judged, of a model: those shipped, and those scrapped unless their order is built
 * again. NaN of a build that stands still, which has nothing to say of what it could ship.
 */
export function unitsOut(
  { programme }: Pick<Model, 'programme'>,
  { shipped }: Pick<Counting, 'shipped'>,
): (build: Kept & Pick<Observation, 'scrapped'>) => number {
  const { replaceScrapped } = programme.orders;
  return (build) =>
    build.outcome === 'gridlock' ? NaN : shipped(build) + (replaceScrapped ? 0 : build.scrapped);
}

/** Whether enough builds keep up. */
export type Enough = 'yes' | 'no' | 'open';

export interface KeptUp {
  readonly keptUp: Proportion;
  readonly enough: Enough;
}

export const keptUpIn = (builds: readonly Kept[], weeks: AskedIn): number =>
  builds.filter((each) => keepsUp(each, weeks)).length;

/**
 * Enough builds keep up if the lower end of the interval of their share is at least `sure`, not enough if the
 * upper end is below it. Where two cycles of its loads do not go into the weeks, too many can seem to keep
 * up, never too few.
 */
export function enoughOf(keptUp: Proportion, { counting }: AskedIn, sure: number): KeptUp {
  if (keptUp.high < sure) return { keptUp, enough: 'no' };
  return { keptUp, enough: keptUp.low >= sure && counting.isWhole ? 'yes' : 'open' };
}

/**
 * The same by the Wilson interval of the share.
 * @param builds replications, at least one
 */
export const keptUpBy = (builds: readonly Kept[], weeks: AskedIn, sure: number, level: number): KeptUp =>
  enoughOf(proportion(keptUpIn(builds, weeks), builds.length, level), weeks, sure);

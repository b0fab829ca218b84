import type { ConstraintResult } from '../constraint/results.js';
import type { ResultsHead } from '../head.js';
import type { Shippable } from '../held/evidence.js';
import type { CountingResult } from '../loads/words.js';
import type { DateQuantile } from '../programme/dates.js';
import type { UnusualWeek } from '../programme/unusual-weeks.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';
import type { Spread } from './spread.js';

/** What became of a rate: see docs/rate.md. */
export type RateVerdict = 'holds' | 'does not hold' | 'not settled';

/**
 * The shape of `results.json` of `rateproof rate`. Rates are units released a working day of the first
 * station's site; sentences tell them in `rateUnit`.
 */
export interface RateResults extends ResultsHead<'rate'> {
  /** Replications of a rate at first, and at most where it is not settled. */
  readonly replications: number;
  readonly mostReplications: number;
  /** Share of builds that has to keep up, and what may be missing of the units of the window in one. */
  readonly sure: number;
  readonly shortfallAllowed: number;
  readonly grid: { readonly from: number; readonly to: number; readonly step: number };
  /** The weeks in which every rate is watched, and those before for the floor to fill. */
  readonly window: {
    readonly from: string;
    readonly to: string;
    readonly weeks: number;
    readonly settleWeeks: number;
    /** Weeks of it that are short or hit by an outage. */
    readonly unusual: readonly UnusualWeek[];
    /** It is longer than usual, as loads or a low rate take it. */
    readonly isLonger: boolean;
  };
  /** How units shipped are counted at the lowest rate, where loads are fewest. */
  readonly counting: CountingResult;
  /** The highest rate of the scenario as it is. */
  readonly plannedPerDay: number;
  /** Capacity by arithmetic; null where nothing limits. */
  readonly arithmetic: { readonly perDay: number; readonly name: string; readonly kind: string } | null;
  readonly answer: RateAnswer;
  /** By rate. */
  readonly points: readonly RatePoint[];
  /** Where what is used most changes as the rate rises. */
  readonly changes: readonly {
    readonly fromPerDay: number;
    readonly toPerDay: number;
    readonly before: string;
    readonly after: string;
  }[];
  /**
   * What stops the build, by trial at a tenth above the lowest rate that was not seen to hold, where a gain
   * can show; null where all rates hold.
   */
  readonly constraint: (ConstraintResult & { readonly perDay: number }) | null;
  /** The guess or estimate that what is shipped at that rate hangs on most; null where none was tried. */
  readonly weakest: WeakestResult | null;
  /** When the last unit is out if the plan asks for no more than the highest rate that holds. */
  readonly lastUnit: readonly DateQuantile[];
  /** The day by which the plan has all units shipped, ISO; null where it does not say. */
  readonly plannedEnd: string | null;
  readonly ramp: RampResult;
}

export interface RateAnswer {
  readonly sentence: string;
  /** Up to here all rates looked at hold; null: not even the lowest of the grid. */
  readonly highestPerDay: number | null;
  /** The lowest rate looked at that was not seen to hold; null: all hold. */
  readonly abovePerDay: number | null;
  /** Rates above that one that hold none the less: a line that is monotone has none. */
  readonly contradictions: readonly number[];
  /** Between which rates the answers of other such studies lie; null where no lowest or highest is known. */
  readonly spread: Spread;
}

export interface RatePoint {
  readonly perDay: number;
  readonly verdict: RateVerdict;
  /** In words, what the verdict rests on. */
  readonly why: string;
  readonly replications: number;
  /** Units released by plan in the window. */
  readonly asked: number;
  readonly keptUp: Proportion;
  /** When more than this rate is asked; both null where no higher rate was run. */
  readonly canShip: Shippable;
  readonly gridlocks: number;
  readonly shippedPerDay: Estimate;
  readonly wip: Estimate;
  readonly leadDays: Estimate;
  /**
   * The station, crew, lane, carriers or supply with the highest utilisation, by share of replications, the
   * likeliest first: a hint.
   */
  readonly stops: readonly {
    readonly name: string;
    readonly kind: string;
    readonly site: string;
    readonly share: Proportion;
  }[];
}

/** From which week on the last phase may begin. */
export interface RampResult {
  readonly outcome: 'from the start' | 'from a week on' | 'not within a year' | 'no ramp' | 'no rate';
  readonly sentence: string;
  readonly perDay: number | null;
  /**
   * First day of the last phase, and whole weeks from the start of the programme to it; null where there is
   * none.
   */
  readonly begins: string | null;
  readonly week: number | null;
  readonly settleWeeks: number;
  readonly tried: readonly ({ readonly week: number; readonly begins: string } & Pick<
    RatePoint,
    'verdict' | 'why' | 'replications' | 'keptUp'
  >)[];
}

import type { ResultsHead } from '../head.js';
import type { Difference } from '../statistics/difference.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Spot } from './spots.js';

export type RateUnit = 'units a working day' | 'units a week' | 'units an hour';

/** A layout with what it ships. `places` are by spot, in the order of `spots`. */
export interface LayoutResult {
  readonly places: readonly number[];
  readonly total: number;
  readonly rate: Estimate;
  /** Floor a day; null where `costs` give a place no price. */
  readonly costPerDay: number | null;
}

/** The results of `rateproof buffers`. Places are numbers of units that can wait; rates are in `unit`. */
export interface BufferResults extends ResultsHead<'buffers'> {
  /** Of each layout in the search. */
  readonly replications: number;
  /**
   * Further ones, used by nothing before, from which the best was selected and all rates but those of the
   * curve are told.
   */
  readonly freshReplications: number;
  /** Relative difference that does not matter. */
  readonly zone: number;
  readonly currency: string | null;
  readonly unit: RateUnit;
  readonly over: string;
  readonly goal:
    | { readonly kind: 'budget'; readonly places: number }
    | { readonly kind: 'target'; readonly rate: number };
  readonly answer: {
    /**
     * Of a target: reached or not by the whole interval, not settled where it lies across; out of reach where
     * no places would do.
     */
    readonly verdict: 'found' | 'reached' | 'not settled' | 'not reached' | 'out of reach';
    readonly sentence: string;
  };
  readonly spots: readonly (Omit<Spot, 'of'> & { readonly chosen: number })[];
  readonly chosen: LayoutResult;
  readonly present: LayoutResult;
  /** Chosen minus present, paired. */
  readonly gain: Difference;
  /** The selection among the best few of the search. */
  readonly selection: {
    /**
     * Whether the procedure came to its end; if so, the one chosen is within the zone of the best of these
     * with at least `level`.
     */
    readonly settled: boolean;
    readonly rounds: number;
    /**
     * The others, the best first. `behind`: chosen minus this one, all intervals together at `level`. Equal:
     * less than the zone apart by the whole interval; not told apart: it holds 0.
     */
    readonly others: readonly (LayoutResult & {
      readonly behind: Difference;
      readonly standing: 'equal' | 'not told apart' | 'behind' | 'ahead';
    })[];
  };
  /**
   * Best found by number of places, from the least on the way to the chosen layout; from the search, so a
   * little on the high side.
   */
  readonly curve: readonly LayoutResult[];
  /**
   * Places of the first layout of the curve whose mean is within the zone of that of the last; null if that
   * is the last.
   */
  readonly enough: number | null;
  /** Rate with room to spare in every spot, from the search; only for a target. */
  readonly ample: { readonly placesEach: number; readonly rate: Estimate } | null;
  readonly layoutsTried: number;
}

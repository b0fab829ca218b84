import type { ConstraintResult } from '../constraint/results.js';
import type { ResultsHead } from '../head.js';
import type { DateQuantile } from '../programme/dates.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Difference } from '../statistics/difference.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Around } from './around/results.js';
import type { Bound } from './bound.js';
import type { CasesResult } from './cases/results.js';
import type { ShareOf } from './goal.js';
import type { RateUnit } from './search/trial.js';
import type { Spot } from './spots.js';

/** A layout with what it ships. `places` are by spot, in the order of `spots`. */
export interface LayoutResult {
  readonly places: readonly number[];
  readonly total: number;
  readonly rate: Estimate;
  /** Floor a day; null where `costs` give a place no price. */
  readonly costPerDay: number | null;
}

/**
 * A layout against the chosen one. `behind`: chosen minus this one, paired. Equal: within the zone by the
 * whole interval; not told apart: it holds 0.
 */
export interface ComparedLayout extends LayoutResult {
  readonly behind: Difference;
  readonly standing: 'chosen' | 'equal' | 'not told apart' | 'behind' | 'ahead';
}

/** `behind`: by how much its mean is below the highest of the curve, as a share of that; 0.01 for 1 %. */
export interface CurvePoint extends LayoutResult {
  readonly behind: number;
}

export interface BestMore extends Difference {
  readonly places: number;
  /** Whether the whole interval is within the zone, a share of the best's mean; or else only the mean. */
  readonly isSettled: boolean;
}

/** The results of `rateproof buffers`. Places are numbers of units that can wait; rates are in `unit`. */
export interface BufferResults extends ResultsHead<'buffers'>, Around {
  /** Of each layout in the search. */
  readonly replications: number;
  /**
   * Further ones, used by nothing before, from which the best was selected and all rates but those of the
   * curve are told.
   */
  readonly freshReplications: number;
  /**
   * Level of the intervals of the chosen layout and of those set against it, so that its rate and all that
   * they ship more or less hold together with `level` (Bonferroni), and with them all that the answer says.
   */
  readonly eachLevel: number;
  /** Relative difference that does not matter. */
  readonly zone: number;
  readonly currency: string | null;
  readonly unit: RateUnit;
  readonly over: string;
  readonly goal:
    | { readonly kind: 'budget'; readonly places: number }
    /** `relative`: the rate is such a share of what that layout ships in the fresh replications. */
    | {
        readonly kind: 'target';
        readonly rate: number;
        readonly relative: { readonly share: number; readonly of: ShareOf } | null;
      };
  readonly answer: {
    /**
     * Of a target: reached or not by the whole interval (of a relative one in pairs), not settled where it
     * lies across; out of reach where arithmetic does not allow it.
     */
    readonly verdict: 'found' | 'reached' | 'not settled' | 'not reached' | 'out of reach';
    readonly sentence: string;
    /** What the answer rests on, in sentences: how much was tried, and what no places can exceed. */
    readonly notes: readonly string[];
    /** Replications by which it would probably be settled; null where it is, or none would. */
    readonly toSettle: number | null;
  };
  /** The chosen layout minus what a relative target asks, paired; null for another goal. */
  readonly aboveAsked: Difference | null;
  readonly search: {
    /** How many layouts there are within the budget, where all were tried; null: they were not. */
    readonly within: number | null;
    /** How many layouts have fewer places than the chosen one, where all were tried; null: they were not. */
    readonly fewer: number | null;
  };
  /** What no places can exceed, by arithmetic; null where it does not tell. */
  readonly bound: Bound | null;
  /**
   * Without a limit in any of the spots; `behind`: chosen minus this one,
   * paired. `exceeded`: by a layout with limits, by the whole interval; null: none was seen.
   */
  readonly unlimited: {
    readonly rate: Estimate;
    readonly behind: Difference;
    readonly exceeded: (LayoutResult & { readonly more: Difference }) | null;
  };
  /** `best`: in the best layout for the budget; null for a target. */
  readonly spots: readonly (Omit<Spot, 'of'> & { readonly chosen: number; readonly best: number | null })[];
  /** The answer: for a budget the fewest places within the zone of `best`; for a target the fewest for it. */
  readonly chosen: LayoutResult;
  readonly present: ComparedLayout;
  /** Chosen minus present, paired. */
  readonly gain: Difference;
  /** The best layout found for the whole budget; null for a target. */
  readonly best: ComparedLayout | null;
  /** What `best` brings more than `chosen`, paired; null for a target, and where they are one. */
  readonly more: BestMore | null;
  /** The selection among the best few of the search that have as many places as the chosen layout. */
  readonly selection: {
    /**
     * Whether the procedure came to its end; if so, the one that ships most is within the zone of the best
     * of these with at least `level`.
     */
    readonly settled: boolean;
    readonly rounds: number;
    /** The best first. */
    readonly others: readonly ComparedLayout[];
  };
  /**
   * Best found by number of places, up to the budget, or to those of `chosen` for a target; from the search,
   * so a little on the high side.
   */
  readonly curve: readonly CurvePoint[];
  readonly layoutsTried: number;
  /** What stops the build with the layout chosen; null where that was not looked at. */
  readonly constraint: ConstraintResult | null;
  /** The guess or estimate that what it ships with that layout hangs on most; null where none was tried. */
  readonly weakest: WeakestResult | null;
  /** The day by which the plan has all units shipped, ISO; null where it does not say. */
  readonly plannedEnd: string | null;
  /**
   * Only where one layout is asked for several cases: it is the chosen one then, all other fields tell it in
   * the scenario as it is, and the curve is what was found for that alone.
   */
  readonly cases?: CasesResult;
  /** When the last unit is out; none without a quantity. */
  readonly lastUnit: { readonly chosen: readonly DateQuantile[]; readonly present: readonly DateQuantile[] };
}

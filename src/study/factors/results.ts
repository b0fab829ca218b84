import type { Factor, Factors } from '../../scenario/changes/factors.js';
import type { ScenarioData } from '../../scenario/data.js';
import type {
  ComparedInWeeks,
  ComparedMeasure,
  CompareResults,
  MeasureId,
  StandResult,
} from '../compare/results.js';
import type { Zones } from '../compare/zones.js';
import type { ConstraintResult } from '../constraint/results.js';
import type { Origin, ResultsHead } from '../head.js';
import type { Offer } from '../priced/offer.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Estimate } from '../statistics/estimate.js';

/** Which combinations were run, and what cannot be told from what therefore. */
export interface DesignResult {
  readonly name: 'full' | 'half' | 'quarter';
  /** Combinations that were run, of how many. */
  readonly run: number;
  readonly of: number;
  /** `2^(5-1)`, or the numbers of levels, `2 x 2 x 3`. */
  readonly notation: string;
  /** Null where all were run. */
  readonly resolution: 'III' | 'IV' | 'V' | null;
  /** `D = ABC`, letters as in `factors`; none where all were run. */
  readonly generators: readonly string[];
  /** Words that are + in all combinations run, `I = ABCD`; '' where all were run. */
  readonly defining: string;
  /** `A + BCD`: what is seen as one, of one factor or of two together; none where all were run. */
  readonly confounded: readonly string[];
}

/** What one measure shows of an effect. */
export type EffectMeasure = Omit<ComparedMeasure, 'value'>;

/**
 * What a factor does from one level to another, on average over the levels of all others; or what two do
 * together beyond the sum of both, each from its first level: (both - only the second) - (only the first -
 * none of them), on average over the levels of all others. For two levels that is twice what textbooks call
 * the interaction effect.
 */
export interface EffectResult {
  readonly kind: 'alone' | 'together';
  /** Numbers of one factor or two, from 0. */
  readonly factors: readonly number[];
  /** Numbers of the levels, one a factor. */
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** `colour booths from 1 to 2`, `colour booths with painters`. */
  readonly name: string;
  /** Its letters. */
  readonly word: string;
  /** Words of letters that this design does not tell from it. */
  readonly mixedWith: readonly string[];
  readonly measures: readonly EffectMeasure[];
}

/** One combination of levels, with each measure beside the scenario as it is. */
export interface CombinationResult extends StandResult {
  /** Numbers of its levels, one a factor. */
  readonly levels: readonly number[];
  /** It is the scenario as it is. */
  readonly isBase: boolean;
  readonly compared: readonly ComparedMeasure[];
  /** Of one that is a change with a name under `costs: changes`. */
  readonly offer?: Offer | undefined;
}

/** Means over all combinations with two levels of two factors. */
export interface PairResult {
  readonly factors: readonly [number, number];
  /** By measure: rows are levels of the first, columns of the second; null where there is no value. */
  readonly means: readonly {
    readonly measure: MeasureId;
    readonly values: readonly (readonly (number | null)[])[];
  }[];
}

/** What `factors` is asked, as plain JSON. Of the names of files the folders are left out of the results. */
export interface FactorsAsked extends Origin, Factors {
  /** The scenario as data, where it has guesses or estimates. */
  readonly data?: ScenarioData | undefined;
  readonly factorsFile: string;
  readonly replications: number;
  /** Of combinations that are changes with a name, by the digest of the changed scenario. */
  readonly offers?: Readonly<Record<string, Offer>> | undefined;
  /** Beyond which a difference matters, default `USUAL_ZONE` of each measure. */
  readonly zones?: Zones | undefined;
}

/** `results.json` of `rateproof factors`. */
export interface FactorsResults extends ResultsHead<'factors'> {
  readonly factorsFile: string;
  readonly replications: number;
  /**
   * Level of each interval, so that all effects and all differences to the scenario as it is, in every
   * measure, hold together with `level` (Bonferroni), and with them all that the answer says.
   */
  readonly eachLevel: number;
  /** How many those are. */
  readonly intervals: number;
  readonly answer: string;
  readonly window: CompareResults['window'];
  readonly measures: CompareResults['measures'];
  readonly design: DesignResult;
  readonly factors: readonly (Factor & { readonly letter: string })[];
  readonly effects: readonly EffectResult[];
  readonly pairs: readonly PairResult[];
  readonly base: StandResult & {
    readonly values: readonly { readonly measure: MeasureId; readonly value: Estimate }[];
  };
  readonly combinations: readonly CombinationResult[];
  readonly best: {
    /** Number of the combination that ships most, from 0. */
    readonly combination: number;
    /** Those that do not surely ship less than it, by numbers. */
    readonly notBehind: readonly number[];
    /**
     * Of these the one in which the fewest factors are other than in the scenario as it is, where these are
     * fewer than in the one that ships most; null where it is not, or where the scenario as it is is none of
     * the combinations.
     */
    readonly nearest: number | null;
  };
  /** The day by which the plan has all units shipped, ISO; null where it does not say. */
  readonly plannedEnd: string | null;
  /** What stops the combination that is told; null where that was not looked at. */
  readonly constraint: ConstraintResult | null;
  /** The guess or estimate that what the scenario ships hangs on most; null where none was tried. */
  readonly weakest: WeakestResult | null;
  readonly findings: readonly string[];
  /** Values by replication, in the order of `measures`; `combination` is null for the scenario as it is. */
  readonly runs: readonly {
    readonly combination: number | null;
    readonly replication: number;
    readonly outcome: string;
    readonly values: readonly (number | null)[];
  }[];
}

/** What was found, and the weeks in which the base is judged. */
export interface FactorsInWeeks extends Pick<ComparedInWeeks, 'judged'> {
  readonly results: FactorsResults;
}

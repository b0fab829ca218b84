import type { Change } from '../../scenario/what-ifs.js';
import type { StandstillResult } from '../answer/gridlock.js';
import type { ConstraintResult } from '../constraint/results.js';
import type { ResultsHead } from '../head.js';
import type { RateJudged } from '../held/rate-held.js';
import type { CountingResult } from '../loads/words.js';
import type { Offer } from '../priced/offer.js';
import type { DateQuantile } from '../programme/dates.js';
import type { Window } from '../programme/judged-window.js';
import type { SeriesResult } from '../programme/series.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Estimate } from '../statistics/estimate.js';

export type MeasureId = 'throughput' | 'lead mean' | 'lead p90' | 'wip' | 'last unit' | 'cost';

/** What the variants are compared by. */
export interface MeasureResult {
  readonly id: MeasureId;
  readonly name: string;
  readonly unit: string;
  readonly better: 'more' | 'less';
}

/** A difference up to this does not matter: a share of the base's mean, and the same in its unit. */
export interface ZoneResult {
  readonly share: number;
  readonly amount: number;
}

/**
 * By the whole interval of the difference: better or worse beyond the zone; better or worse, but perhaps
 * within the zone; within the zone; or none of these.
 */
export type ComparedVerdict =
  | 'better'
  | 'at least a little better'
  | 'no difference that matters'
  | 'not settled'
  | 'at least a little worse'
  | 'worse';

/** A what-if against the base in one measure. */
export interface ComparedMeasure {
  readonly measure: MeasureId;
  readonly value: Estimate;
  /** What-if minus base, paired by replication. */
  readonly difference: Estimate;
  /** The same over the base's mean, 0.1 for ten per cent; null where that is 0. */
  readonly relative: Estimate | null;
  /**
   * So many times as many replications would be needed without common random numbers; null where that cannot
   * be told.
   */
  readonly pairingGain: number | null;
  readonly verdict: ComparedVerdict;
  /** The verdict as it is shown, or why it is so: `the same in every replication`. */
  readonly words: string;
}

/** A variant without its measures. */
export interface StandResult {
  readonly name: string;
  readonly note: string | null;
  readonly changes: readonly Change[];
  readonly digest: string;
  /** Highest rate of its plan, units a working day; null where none is asked. */
  readonly askedPerDay: number | null;
  /** Replications that ended in gridlock, and those of a programme that were not finished. */
  readonly gridlocks: number;
  /** Null where none did. */
  readonly standstill: StandstillResult | null;
  readonly unfinished: number;
  /** When its last unit is out; none without a quantity. */
  readonly lastUnit: readonly DateQuantile[];
}

export interface VariantResult extends StandResult {
  /** By week or part, as `series.labels`; n is 0 where nothing was observed. */
  readonly shippedPerDay: readonly Estimate[];
  /** The same over whole cycles of its loads; null where weeks are even enough. */
  readonly shippedOverLoads: readonly Estimate[] | null;
  readonly wip: readonly Estimate[];
}

/** `results.json` of `rateproof compare`. */
export interface CompareResults extends ResultsHead<'compare'> {
  readonly whatIfsFile: string;
  readonly replications: number;
  /**
   * Level of each difference, so that all of them, every what-if in every measure, hold together with `level`
   * (Bonferroni); and of the values beside them. There are four measures at least, so all that the answer
   * tells, the base's throughput and two differences a what-if, is no more than that many intervals.
   */
  readonly differenceLevel: number;
  /** The answer in a sentence or two. */
  readonly answer: string;
  /** Weeks over which the throughput is taken; null: over the whole run. */
  readonly window:
    | (Pick<Window, 'from' | 'to' | 'workingDays'> & {
        /** How units of the base are counted in them; those of a what-if over its own loads. */
        readonly counting: CountingResult;
      })
    | null;
  readonly measures: readonly (MeasureResult & { readonly zone: ZoneResult })[];
  readonly base: VariantResult & {
    readonly values: readonly { readonly measure: MeasureId; readonly value: Estimate }[];
  };
  readonly whatIfs: readonly (VariantResult & {
    readonly compared: readonly ComparedMeasure[];
    /** Of one that is a change with a name under `costs: changes`. */
    readonly offer?: Offer | undefined;
  })[];
  readonly series: Pick<SeriesResult, 'unit' | 'labels' | 'starts' | 'workingDays'>;
  /** The day by which the plan has all units shipped, ISO; null where it does not say. */
  readonly plannedEnd: string | null;
  /**
   * What stops the what-if that ships most, or, of `null`, the scenario, where none surely ships more; null
   * where that was not looked at.
   */
  readonly constraint: (ConstraintResult & { readonly of: string | null }) | null;
  /** The guess or estimate that what the scenario ships hangs on most; null where none was tried. */
  readonly weakest: WeakestResult | null;
  readonly findings: readonly string[];
  /**
   * Values by replication, in the order of `measures`; null where there is none. The base first, then the
   * what-ifs.
   */
  readonly runs: readonly {
    readonly variant: string;
    readonly replication: number;
    readonly outcome: string;
    readonly values: readonly (number | null)[];
  }[];
}

/** What was found, and the weeks in which the base is judged. */
export interface ComparedInWeeks {
  readonly results: CompareResults;
  readonly judged: Pick<RateJudged, 'window' | 'askedPerDay' | 'heldIn'>;
}

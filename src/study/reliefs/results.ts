import type { Thing } from '../../scenario/reliefs/thing.js';
import type { Basis } from '../../scenario/types/scenario.js';
import type { ResultsHead } from '../head.js';
import type { CountingResult } from '../loads/words.js';
import type { Offer } from '../priced/offer.js';
import type { DateQuantile } from '../programme/dates.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';
import type { Relief } from './relief.js';
import type { Out } from './screen.js';

/**
 * The answer of `reliefs`, and the shape of its `results.json`. Throughput, gains and rates are in the
 * planner's unit, see `rateUnit`.
 */
export interface ReliefsResults extends ResultsHead<'reliefs'> {
  /** Most that one relief was given, and what each, or its group, was given before the first look. */
  readonly replications: number;
  readonly firstReplications: number;
  /**
   * Confidence that all that is told holds together. What it rests on has a fifth each of what may go wrong:
   * the base, the screen, and each table of intervals, whose levels these are (Bonferroni): `reliefs`, a gain
   * and a difference to the best of every relief; `final`, the same of those with fresh replications, and the
   * value to be measured next; `assumptions`, both ends of every value.
   */
  readonly level: number;
  readonly eachLevel: { readonly reliefs: number; readonly final: number; readonly assumptions: number };
  /** Gain that does not matter. */
  readonly zone: number;
  /** Reliefs that the screen promises to keep. */
  readonly keep: number;
  /** Where throughput is counted: the weeks in which the rate is judged, or the whole run. */
  readonly counted: {
    readonly over: 'judged window' | 'whole run';
    readonly from: string | null;
    readonly to: string | null;
    /** How units of the base are counted in these weeks; null over the whole run. */
    readonly counting: CountingResult | null;
  };
  readonly rate: {
    /** By --rate. */
    readonly set: number | null;
    readonly asked: number | null;
    readonly askedPerDay: number | null;
  };
  readonly base: {
    readonly throughput: Estimate;
    readonly costPerUnit: Estimate | null;
    readonly currency: string | null;
    /** The day by which the plan has all units shipped, ISO; null where it does not say. */
    readonly plannedEnd: string | null;
    /** When the last unit is out; none without a quantity. */
    readonly lastUnit: readonly DateQuantile[];
    /** Builds that keep up with the rate asked; null without weeks to judge. */
    readonly keptUp: Proportion | null;
    readonly gridlocks: number;
  };
  readonly answer: { readonly sentence: string };
  /**
   * Those tried by themselves. Those with fresh replications first: of these those that may be the best,
   * otherwise in the order by which they were chosen. Then by gain, those compared to the end first.
   */
  readonly reliefs: readonly ReliefResult[];
  /** Reliefs that were given up together with others, the group that gains most first. */
  readonly groups: readonly GroupResult[];
  /**
   * Halves of groups that were set against the whole, and those reliefs of which by that some surely take
   * away what others gain: that nothing does is what giving up a group rests on.
   */
  readonly harm: { readonly tested: number; readonly found: readonly (readonly string[])[] };
  /**
   * The first `named` reliefs are not told apart by their fresh replications, nor are so many `others` from
   * them, which had none; null where none surely gains.
   */
  readonly best: { readonly named: number; readonly others: number } | null;
  /** By the greater effect of the two ends. */
  readonly assumptions: readonly VariedAssumption[];
  /**
   * The end that moves it most, if one surely does and by more than the zone: `value` instead of `now`, with
   * its gain in fresh replications.
   */
  readonly measureNext:
    | (Pick<VariedAssumption, 'path' | 'words' | 'basis'> & {
        readonly now: string;
        readonly value: string;
        readonly gain: Estimate;
      })
    | null;
  readonly values: {
    /** Guesses and estimates that were varied at most. */
    readonly most: number;
    /** Those that were not reached, the one that would have come next first. */
    readonly left: readonly Pick<VariedAssumption, 'path' | 'words' | 'basis' | 'value'>[];
  };
  /** What could not be changed. */
  readonly skipped: readonly { readonly what: string; readonly why: string }[];
  readonly runs: {
    /** The fresh ones of the final among them. */
    readonly run: number;
    /** If each had been given all replications. */
    readonly withoutScreen: number;
  };
}

/** Reliefs that were made all at once and gain too little together for one of them to be among the best. */
export interface GroupResult {
  /** Of all at once. */
  readonly gain: Estimate;
  readonly replications: number;
  readonly reliefs: readonly Pick<ReliefResult, 'kind' | 'text' | 'of' | 'offer'>[];
}

/** A change set against the base, replication by replication. */
export interface Effect {
  readonly gain: Estimate;
  /** Change of the cost of a unit; null without prices. */
  readonly costPerUnit: Estimate | null;
  /** Days by which the last unit is out later; null without a quantity. */
  readonly lastUnitDays: Estimate | null;
  readonly pairingGain: number | null;
  readonly replications: number;
  /** Why it was given no more replications; null: it was compared to the end. */
  readonly out: Out | null;
}
export interface ReliefResult extends Effect {
  readonly rank: number;
  readonly kind: Relief['kind'];
  readonly text: string;
  readonly of: Thing;
  /** Whether its figures are from fresh replications, which had no part in choosing it. */
  readonly isFresh: boolean;
  /** Gain over the change of the cost of a unit; null unless that surely rises. */
  readonly gainPerCost: Estimate | null;
  /**
   * Among those that surely gain and do not surely lose by cost: first those whose unit gets no dearer, then
   * by gain per cost.
   */
  readonly rankPerCost: number | null;
  /** null: the scenario does not name it. This and what follows is left out where it names no changes. */
  readonly offer?: Offer | null | undefined;
  /** The price, once, for each unit gained in the planner's unit; null unless it surely gains. */
  readonly pricePerGain?: Estimate | null | undefined;
  /** Among those that have one, the least first. */
  readonly rankPerPrice?: number | null | undefined;
}
export interface VariedAssumption {
  /** As in messages: `route[3].work`; and in a planner's words. */
  readonly path: string;
  readonly words: string;
  readonly basis: Basis;
  readonly note: string | null;
  readonly value: string;
  readonly low: VariedResult | null;
  readonly high: VariedResult | null;
  /** The greater of the two mean effects, without its sign. */
  readonly largest: number;
}
export interface VariedResult extends Effect {
  readonly value: string;
}

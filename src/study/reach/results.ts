import type { Thing } from '../../scenario/reliefs/thing.js';
import type { RatePhase } from '../../scenario/types/programme.js';
import type { ConstraintResult } from '../constraint/results.js';
import type { ResultsHead } from '../head.js';
import type { Verdict } from '../held/rate-held.js';
import type { DateQuantile } from '../programme/dates.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { Estimate } from '../statistics/estimate.js';
import type { Proportion } from '../statistics/proportion.js';

/** A rate, units a working day, or the last unit out by a day, ISO, in a share of the builds. */
export type ReachGoal =
  | { readonly kind: 'rate'; readonly perDay: number }
  | { readonly kind: 'date'; readonly date: string; readonly sure: number };

/** The shape of `results.json` of `rateproof reach`. Rates are units a working day, money in `currency`. */
export interface ReachResults extends ResultsHead<'reach'> {
  readonly goal: ReachGoal;
  /** Phases of the plan at the rate asked; null where that is the rate of the scenario. */
  readonly phases: readonly RatePhase[] | null;
  /** The day of the order, ISO; null: every change is taken to be there from the first day on. */
  readonly ordered: string | null;
  /** No week that begins before this day, ISO, is judged; null: none is asked for. */
  readonly by: string | null;
  /** Money, once, and changes, at most; null: no limit. */
  readonly budget: number | null;
  readonly atMost: number | null;
  /** Units of the programme; null where it does not say. */
  readonly quantity: number | null;
  /** Empty where the scenario has no prices. */
  readonly currency: string;
  readonly possible: readonly PossibleResult[];
  /**
   * - holds already: nothing has to be changed.
   * - reached: by the last of `steps`.
   * - not reached: no set that may be made reaches it; `steps` lead as far as it goes.
   * - not settled: it is too close to tell, or too many sets are; `steps` lead to the cheapest that may do.
   */
  readonly outcome: 'holds already' | 'reached' | 'not reached' | 'not settled';
  readonly answer: { readonly sentence: string };
  /** The weeks in which rates are counted, ISO; null: the whole run. Those of the last step. */
  readonly counted: { readonly from: string; readonly to: string } | null;
  /** The way: the build as it is first, then with one change more at each step. */
  readonly steps: readonly StepResult[];
  /** The most that was found for each sum of money, the least first; the build as it is first. */
  readonly frontier: readonly FrontierResult[];
  /** What changes without a price would be worth; empty where all have one, or none helps. */
  readonly unpriced: readonly UnpricedResult[];
  /** Whether the last step holds the rate, or has the last unit out in time. */
  readonly verdict: Verdict;
  /** Share of the builds that keep up with it; null where a day is asked, or there are no weeks of a rate. */
  readonly keptUp: Proportion | null;
  /** What stops the build at the end of the way, and which guess what it ships hangs on most. */
  readonly constraint: ConstraintResult & Pick<StoppedResult, 'askedPerDay'>;
  readonly weakest: WeakestResult | null;
  /** The day by which the plan has all units shipped, ISO; null where it does not say. */
  readonly plannedEnd: string | null;
  readonly search: SearchResult;
  /** Fresh replications by which the steps and the frontier are told. */
  readonly replications: number;
  /** Level of each interval of a gain, so that all of them hold together. */
  readonly eachLevel: number;
  readonly skipped: readonly { readonly what: string; readonly why: string }[];
}

/** A change that the scenario names. */
export interface PossibleResult {
  readonly name: string;
  /** What it does, in words: `one place more at colour booth`, or its edits. */
  readonly what: string;
  /** What it touches, as far as it can be pointed at on the route. */
  readonly things: readonly Thing[];
  /** Money, once; null: not given. And a day, beside wages, trucks, carriers and floor. */
  readonly price: number | null;
  readonly day: number;
  /** `5 months`; null: at once. */
  readonly readyAfter: string | null;
  readonly atMost: number | null;
  readonly excludes: readonly string[];
  readonly requires: readonly string[];
}

/** A change made on the way, so many times. */
export interface MadeResult {
  readonly name: string;
  readonly times: number;
  /** ISO; the day from which on it is there, if it was ordered on `ordered`; null: from the first day on. */
  readonly from: string | null;
  /** The last day to order it to have it from the programme's start on, ISO; null where it takes no time. */
  readonly orderBy: string | null;
}

/** A build on the way, or on the frontier, as fresh replications tell it. */
export interface BuildResult {
  /** Money, once, of all that is made; null: the price of one is not given. */
  readonly money: number | null;
  /** Money a day of the calendar of all that is made. */
  readonly day: number;
  readonly throughput: Estimate;
  /** null without prices. What changes cost once is not in it. */
  readonly costPerUnit: Estimate | null;
  readonly lastUnit: readonly DateQuantile[];
  /** Builds with the last unit out by the day asked; null where a rate is. */
  readonly byDate: Proportion | null;
}

export interface StepResult extends BuildResult {
  /** What this step adds; null: the build as it is. */
  readonly made: MadeResult | null;
  /** Money, once, for this step; null: not given, or the build as it is. */
  readonly price: number | null;
  /** Over the step before, units a working day; null for the build as it is. */
  readonly gain: Estimate | null;
  /** What stops it then. */
  readonly stopped: StoppedResult;
}

/** What stops a build, by trial: of the last step that holds the rate, at a tenth more. */
export interface StoppedResult extends Pick<ConstraintResult, 'outcome' | 'culprit' | 'sentence'> {
  /** Asked where it was tried, units a working day; null: no rate is. */
  readonly askedPerDay: number | null;
}

export interface FrontierResult extends BuildResult {
  readonly made: readonly MadeResult[];
  /** It is the set that was chosen. */
  readonly isChosen: boolean;
}

/** With changes whose price is not given a cheaper set would do. */
export interface UnpricedResult {
  readonly names: readonly string[];
  /** The set that would do with them, and the money for all else in it. */
  readonly made: readonly MadeResult[];
  readonly money: number;
  /** What they are worth at most; null: without them it cannot be reached. */
  readonly worth: number | null;
}

export interface SearchResult {
  /** Sets that were run; that arithmetic ruled out without a run. */
  readonly sets: number;
  readonly byArithmetic: number;
  /** Every cheaper set was tried, or is part of one that was, and falls short; if no change hurts. */
  readonly isProven: boolean;
  /** Pairs of sets that were run in which the larger one surely does less: changes that hurt. */
  readonly hurts: readonly { readonly with: readonly string[]; readonly without: readonly string[] }[];
  /** Of the last few, by money: decided by fresh replications. */
  readonly finalists: readonly {
    readonly made: readonly MadeResult[];
    readonly money: number;
    readonly replications: number;
    readonly side: 'above' | 'below' | null;
  }[];
  /** Chance at least that all of them are told rightly, but for a difference that does not matter. */
  readonly level: number;
  readonly zone: number;
  /** Replications run in all. */
  readonly replications: number;
}

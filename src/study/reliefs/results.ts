import type { Basis } from '../../scenario/types/scenario.js';
import { count, number, withInterval } from '../format.js';
import type { ResultsHead } from '../head.js';
import type { Verdict } from '../held/rate-held.js';
import type { CountingResult } from '../loads/words.js';
import { each, unitsEach } from '../planners-unit.js';
import type { Estimate } from '../statistics/estimate.js';
import type { ReliefKind } from './relief.js';
import type { Out } from './screen.js';
import type { Thing } from './thing.js';

/**
 * The answer of `reliefs`, and the shape of its `results.json`. Throughput, gains and rates are in the
 * planner's unit, see `rateUnit`.
 */
export interface ReliefsResults extends ResultsHead<'reliefs'> {
  /** Most that one relief was given, and what each was given before the first look. */
  readonly replications: number;
  readonly firstReplications: number;
  /**
   * Confidence that all intervals of a table hold together, and that of each of them (Bonferroni over those
   * compared to the end).
   */
  readonly level: number;
  readonly eachLevel: { readonly reliefs: number; readonly assumptions: number };
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
    readonly verdict: Verdict;
    readonly gridlocks: number;
  };
  readonly answer: { readonly sentence: string };
  /** By gain; those compared to the end first. */
  readonly reliefs: readonly ReliefResult[];
  /** By the greater effect of the two ends. */
  readonly assumptions: readonly VariedAssumption[];
  readonly values: {
    /** Guesses and estimates that were varied at most. */
    readonly most: number;
    /** Those that were not reached, the one that would have come next first. */
    readonly left: readonly Pick<VariedAssumption, 'path' | 'words' | 'basis' | 'value'>[];
  };
  /** What could not be changed. */
  readonly skipped: readonly { readonly what: string; readonly why: string }[];
  readonly runs: {
    readonly run: number /** If each had been given all replications. */;
    readonly withoutScreen: number;
  };
}

/** A change set against the base, replication by replication. */
export interface Effect {
  readonly gain: Estimate;
  /** Change of the cost of a unit; null without prices. */
  readonly costPerUnit: Estimate | null;
  readonly pairingGain: number | null;
  readonly replications: number;
  /** Why it was given no more replications; null: it was compared to the end. */
  readonly out: Out | null;
}
export interface ReliefResult extends Effect {
  readonly rank: number;
  readonly kind: ReliefKind;
  readonly text: string;
  readonly of: Thing;
  /** Gain over the change of the cost of a unit; null unless that surely rises. */
  readonly gainPerCost: Estimate | null;
  /**
   * Among those that surely gain and do not surely lose by cost: first those whose unit gets no dearer, then
   * by gain per cost.
   */
  readonly rankPerCost: number | null;
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

/** The answer in two or three sentences: what gains most, and which number to measure next. */
export function reliefsSentence({
  base,
  reliefs,
  assumptions,
  values: { left },
  zone,
  rate,
  rateUnit,
}: Omit<ReliefsResults, 'answer'>): string {
  const sure = reliefs.filter(({ gain, out }) => out === null && gain.low !== null && gain.low > 0),
    [best] = sure;
  const from = `${withInterval(base.throughput)} ${unitsEach(rateUnit)}`;
  const first =
    best === undefined
      ? `Of ${count(reliefs.length, 'relief')} none surely ships more than ${from}.`
      : `The best single relief is ${best.text}: ${withInterval(best.gain)} ${unitsEach(rateUnit)} more ` +
        `than ${from}; ${count(sure.length, 'relief')} of ${reliefs.length} surely ` +
        `ship${sure.length === 1 ? 's' : ''} more.`;
  const held =
    base.verdict !== 'holds'
      ? []
      : [
          `The scenario holds the ${number(rate.asked ?? 0)} ${each(rateUnit)} it asks for, so little can ` +
            'be gained; --rate asks for more.',
        ];
  const [next] = assumptions;
  const measure =
    next === undefined
      ? []
      : next.largest <= zone
        ? [
            left.length === 0
              ? `No guess or estimate moves it by more than ${number(zone)} within its range.`
              : `None of the ${assumptions.length} guesses and estimates that were varied moves it by more ` +
                `than ${number(zone)} within its range; ${left.length} were not.`,
          ]
        : [
            `Measure next: ${next.words} (${next.basis}, ${next.value}), which moves it by up to ` +
              `${number(next.largest)} within its range.`,
          ];
  return [first, ...held, ...measure].join(' ');
}

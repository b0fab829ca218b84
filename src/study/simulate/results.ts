import type { PrecisionResult } from '../answer/precision.js';
import type { WarmUpResult } from '../answer/warm-up.js';
import type { AssumptionResult } from '../answer/assumptions.js';
import type { CarriersResult, TeamResult } from '../sections/carriers.js';
import type { CostResult } from '../sections/costs.js';
import type { SupplyResult } from '../sections/supplies.js';
import type { ChangeoverResult } from '../sections/changeovers.js';
import type { QualityResults } from '../sections/defects.js';
import type { CrewResult, OvertimeResult, ShutdownResult } from '../sections/crews.js';
import type { DueResult, Journey, PlanResult } from '../programme/activities.js';
import type { FailureResult, OutageResult } from '../sections/failures.js';
import type { PulseLineResult } from '../sections/pulse-lines.js';

/**
 * The shape of `results.json`, version 2 (1: trucks waiting for room counted as busy). Every number shown
 * anywhere (terminal, picture, page) is in here. Durations say their unit in the name; shares are 0..1; dates
 * are ISO strings in the programme's zone.
 */
export const RESULTS_VERSION = 2;

/**
 * A mean over replications with its Student-t interval. `n` counts the replications that have a value;
 * `low`/`high` are null below two, and of none the mean is 0.
 */
export interface Estimate {
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
  readonly n: number;
}
/** A share of replications with its Wilson interval. */
export interface Proportion {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly count: number;
  readonly n: number;
}
/**
 * A quantile over replications with its order-statistic interval; null where the replications are too few,
 * `why` then says so.
 */
export interface DateQuantile {
  readonly p: number;
  readonly date: string | null;
  readonly low: string | null;
  readonly high: string | null;
  readonly why: string | null;
}

export interface Results extends QualityResults {
  readonly format: 'rateproof results';
  readonly version: number;
  readonly program: string;
  readonly study: 'simulate';
  readonly scenario: {
    readonly name: string;
    readonly note: string | null;
    readonly file: string;
    readonly digest: string;
  };
  readonly seed: string;
  readonly replications: number;
  readonly level: number;
  readonly programme: {
    readonly kind: 'programme' | 'steady state';
    readonly start: string;
    readonly zone: string;
    readonly quantity: number | null;
    readonly phases: readonly { readonly from: string; readonly perDay: number }[];
    readonly observedDays: number;
  };
  /**
   * Values of which the scenario says where they come from, in the order of the file; empty where it says
   * nothing.
   */
  readonly assumptions: readonly AssumptionResult[];
  readonly answer: Answer;
  /** Buckets of the time series: ISO weeks for a programme, equal parts for a steady-state run. */
  readonly series: {
    readonly unit: 'week' | 'part';
    readonly labels: readonly string[];
    readonly starts: readonly string[];
    readonly workingDays: readonly number[];
    /** Units per working day asked; null for steady state without a rate. */
    readonly asked: readonly (number | null)[];
    readonly released: readonly Estimate[];
    readonly shipped: readonly Estimate[];
    readonly shippedPerDay: readonly Estimate[];
  };
  readonly wip: {
    readonly total: Estimate;
    readonly places: readonly {
      readonly name: string;
      readonly kind: 'site' | 'lane';
      readonly mean: Estimate;
      readonly series: readonly Estimate[];
    }[];
  };
  readonly leadTime: {
    readonly unit: 'days';
    readonly mean: Estimate;
    readonly p50: Estimate;
    readonly p90: Estimate;
    /** Pooled over replications: counts between edges (edges.length = counts.length + 1). */
    readonly edges: readonly number[];
    readonly counts: readonly number[];
  };
  /**
   * Shipped over the whole time observed, per working day of the first station's site and per hour of the
   * clock.
   */
  readonly throughput: { readonly perDay: Estimate; readonly perHour: Estimate };
  readonly stations: readonly StationResult[];
  /** Stations with changeovers, the one with the highest utilisation first. */
  readonly changeovers: readonly ChangeoverResult[];
  readonly buffers: readonly BufferResult[];
  readonly crews: readonly CrewResult[];
  readonly overtime: readonly OvertimeResult[];
  readonly shutdowns: readonly ShutdownResult[];
  readonly inspections: readonly InspectionResult[];
  readonly rty: Estimate | null;
  readonly lanes: readonly {
    readonly name: string;
    readonly trips: Estimate;
    readonly fill: Estimate;
    readonly waitHours: Estimate;
    readonly truckBusy: Estimate;
    readonly truckBlocked: Estimate;
    readonly truckFree: Estimate;
  }[];
  readonly feeders: readonly {
    readonly name: string;
    readonly target: number;
    readonly stock: Estimate;
    readonly out: Estimate;
  }[];
  readonly supplies: readonly SupplyResult[];
  /** Stations that fail or that an outage closes, and dated outages. */
  readonly failures: readonly FailureResult[];
  readonly outages: readonly OutageResult[];
  readonly pulseLines: readonly PulseLineResult[];
  readonly carriers: readonly CarriersResult[];
  readonly teams: readonly TeamResult[];
  /** Null where no precision was asked. */
  readonly precision: PrecisionResult | null;
  /** Null for a programme, which really starts empty. */
  readonly warmUp: WarmUpResult | null;
  /** What limits the rate by arithmetic, see `check`; null: nothing. */
  readonly bottleneckByArithmetic: string | null;
  /** Sorted, the likeliest first. */
  readonly bottlenecks: readonly BottleneckResult[];
  readonly lastUnit: readonly DateQuantile[];
  /** By build number; empty for a run without a quantity. */
  readonly units: readonly UnitResult[];
  /** Due dates kept; null where nothing is due. */
  readonly due: DueResult | null;
  /** Null without a quantity. */
  readonly plan: PlanResult | null;
  /** Null where none was asked for or there is none to tell. */
  readonly journey: Journey | null;
  readonly scrapped: Estimate;
  /** null: the scenario has no prices. */
  readonly costs: CostResult | null;
  readonly findings: readonly Finding[];
  /** One row a replication, for readers who want to do their own statistics. */
  readonly runs: readonly RunRow[];
}

export type Verdict = 'holds' | 'falls short' | 'not settled' | 'no rate asked';
export interface Answer {
  readonly verdict: Verdict;
  readonly sentence: string;
  /**
   * The rate asked at its highest, units per working day, and what was shipped per working day while it was
   * asked for.
   */
  readonly askedPerDay: number | null;
  readonly heldPerDay: Estimate | null;
  readonly window: { readonly from: string; readonly to: string } | null;
}

export const PLACE_STATES = [
  'working',
  'changeover',
  'unattended',
  'short of crew',
  'short of parts',
  'short of carrier',
  'blocked',
  'starved',
  'down',
  'off shift',
] as const;
export type PlaceState = (typeof PLACE_STATES)[number];

/** States of a place that is on shift. */
export type ShiftState = Exclude<PlaceState, 'off shift'>;
export const SHIFT_STATES = PLACE_STATES.filter((state): state is ShiftState => state !== 'off shift');

export interface StationResult {
  readonly name: string;
  readonly site: string;
  readonly places: number;
  /** Shares of place time, they add to 1. */
  readonly share: Readonly<Record<PlaceState, Estimate>>;
  /** Shares of the place time that is not off shift, they add to 1. */
  readonly shareOnShift: Readonly<Record<ShiftState, Estimate>>;
  readonly visitsPerUnit: Estimate;
}
export interface BufferResult {
  readonly name: string;
  readonly kind: 'buffer' | 'bank';
  readonly site: string;
  /** null: unlimited. */
  readonly spaces: number | null;
  readonly mean: Estimate;
  /**
   * Share of time with no space free; null where unlimited, or where it is not known: more than 63 spaces, an
   * arrival bank of several.
   */
  readonly full: Estimate | null;
  /**
   * Share of time at each level 0, 1, 2 .. (the last one: that and above), mean over replications; empty
   * where it is not known.
   */
  readonly levels: readonly number[];
}
export interface InspectionResult {
  readonly name: string;
  readonly site: string;
  /** Right first time over inspected, first visits only. */
  readonly ftt: Estimate;
  readonly inspectedPerUnit: Estimate;
  readonly sentBackPer100: Estimate;
  readonly repairedPer100: Estimate;
  readonly scrappedPer100: Estimate;
  /** Items present and missed here, per 100 visits. */
  readonly escapedPer100: Estimate;
}
export interface BottleneckResult {
  readonly name: string;
  readonly kind: 'station' | 'crew' | 'lane' | 'carrier';
  readonly site: string;
  /** Share of replications in which it was the bottleneck: had the highest utilisation. */
  readonly share: Proportion;
  /** Mean uninterrupted active period, hours. */
  readonly activePeriodHours: Estimate;
  /** Utilisation: active time over time on shift. */
  readonly active: Estimate;
  /**
   * Share of the time observed in which it was the sole momentary bottleneck, and a shifting one; `n` 0 where
   * that was not followed.
   */
  readonly sole: Estimate;
  readonly shifting: Estimate;
}
export interface UnitResult {
  readonly number: number;
  /** What the planner calls it; else its number. */
  readonly build: string;
  /**
   * Last day on which it is not late; null where it is not due, or not on the same day in all replications.
   */
  readonly due: string | null;
  /** Chance to be shipped after it; null where it is not due. */
  readonly late: Proportion | null;
  /**
   * P50, P80 and P95 of the date of shipping; null where the replications are too few or too many did not
   * ship it.
   */
  readonly shipped: readonly {
    readonly p: number;
    readonly date: string | null;
    readonly low: string | null;
    readonly high: string | null;
  }[];
  /** From entry to shipping, of the replications that shipped it. */
  readonly leadDays: Estimate;
}
export interface Finding {
  readonly kind:
    | 'gridlock'
    | 'loop limit'
    | 'not finished'
    | 'rate not held'
    | 'calendar end'
    | 'shipped open'
    | 'precision'
    | 'warm-up';
  readonly text: string;
  readonly replications: number;
}
export interface RunRow {
  readonly replication: number;
  readonly shipped: number;
  readonly scrapped: number;
  readonly heldPerDay: number | null;
  readonly wip: number;
  readonly leadMeanDays: number | null;
  readonly leadP50Days: number | null;
  readonly leadP90Days: number | null;
  readonly lastShipped: string | null;
  readonly bottleneck: string | null;
}

import type { Lever } from '../../scenario/types/levers.js';
import type { Basis, Measured } from '../../scenario/types/scenario.js';
import type { Answer } from '../answer/answer.js';
import type { Finding } from '../answer/findings.js';
import type { PrecisionResult } from '../answer/precision.js';
import type { RunRow } from '../answer/runs.js';
import type { WarmUpResult } from '../answer/warm-up.js';
import type { ConstraintResult } from '../constraint/results.js';
import type { ResultsHead } from '../head.js';
import type { DateQuantile, UnitResult } from '../programme/dates.js';
import type { DueResult } from '../programme/due-dates.js';
import type { Journey } from '../programme/journey.js';
import type { LeadTimeResult } from '../programme/lead-time.js';
import type { PlanResult } from '../programme/plan.js';
import type { SeriesResult, ThroughputResult, WipResult } from '../programme/series.js';
import type { WeakestResult } from '../reliefs/values/weakest.js';
import type { BottleneckResult } from '../sections/bottlenecks.js';
import type { BufferResult } from '../sections/buffers.js';
import type { CarriersResult, TeamResult } from '../sections/carriers.js';
import type { ChangeoverResult } from '../sections/changeovers.js';
import type { CostResult } from '../sections/costs.js';
import type { CrewResult, OvertimeResult, ReworkResult, ShutdownResult } from '../sections/crews.js';
import type { DefectResult, EscapeResult } from '../sections/defects.js';
import type { EquipmentResult } from '../sections/equipment.js';
import type { FailureResult } from '../sections/failures.js';
import type { ComparisonResult, HoldResult, InspectionResult } from '../sections/inspections.js';
import type { LaneResult } from '../sections/lanes.js';
import type { OutageResult, RecoveryResult } from '../sections/outages.js';
import type { PulseLineResult } from '../sections/pulse-lines.js';
import type { StationResult } from '../sections/stations.js';
import type { FeederResult, SupplyResult } from '../sections/supplies.js';
import type { StandstillTold } from '../standstill/results.js';
import type { Estimate } from '../statistics/estimate.js';

/**
 * The shape of the `results.json` of `simulate`. Every number shown anywhere (terminal, picture, page) is in
 * here. Durations say their unit in the name; shares are 0..1; dates are ISO strings in the programme's zone.
 */
export interface Results extends ResultsHead<'simulate'> {
  readonly replications: number;
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
  /** What readers of the report may try, as written. */
  readonly levers: readonly Lever[];
  readonly answer: Answer;
  readonly series: SeriesResult;
  readonly wip: WipResult;
  readonly leadTime: LeadTimeResult;
  readonly throughput: ThroughputResult;
  readonly stations: readonly StationResult[];
  /** Stations with changeovers, the one with the highest utilisation first. */
  readonly changeovers: readonly ChangeoverResult[];
  readonly buffers: readonly BufferResult[];
  readonly crews: readonly CrewResult[];
  /** Shared by stations of a site; undefined where there is none. */
  readonly equipment?: readonly EquipmentResult[] | undefined;
  readonly overtime: readonly OvertimeResult[];
  readonly shutdowns: readonly ShutdownResult[];
  readonly inspections: readonly InspectionResult[];
  readonly rty: Estimate | null;
  /**
   * A row a kind of defect and the step that makes it, in the order of the routes; those that were never made
   * are left out.
   */
  readonly defects: readonly DefectResult[];
  /** A row a site where items are made. */
  readonly escapes: readonly EscapeResult[];
  readonly holds: readonly HoldResult[];
  readonly comparisons: readonly ComparisonResult[];
  readonly rework: readonly ReworkResult[];
  readonly lanes: readonly LaneResult[];
  readonly feeders: readonly FeederResult[];
  readonly supplies: readonly SupplyResult[];
  /** Stations that fail or that an outage closes, and dated outages. */
  readonly failures: readonly FailureResult[];
  readonly outages: readonly OutageResult[];
  /**
   * The build against the same build without an outage that begins in the run: the five longest one by one,
   * then the others together.
   */
  readonly recoveries: readonly RecoveryResult[];
  readonly pulseLines: readonly PulseLineResult[];
  readonly carriers: readonly CarriersResult[];
  readonly teams: readonly TeamResult[];
  /** Null where no precision was asked. */
  readonly precision: PrecisionResult | null;
  /** Null for a programme, which really starts empty. */
  readonly warmUp: WarmUpResult | null;
  /** What limits the rate by arithmetic, see `check`; null: nothing. */
  readonly bottleneckByArithmetic: string | null;
  /** What stops the build, by trial; null where that was not looked at. */
  readonly constraint: ConstraintResult | null;
  /** The guess or estimate that it hangs on most; null where none was tried. */
  readonly weakest: WeakestResult | null;
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
  /** Null where no replication stood still. */
  readonly standstill: StandstillTold | null;
  /** null: the scenario has no prices. */
  readonly costs: CostResult | null;
  readonly findings: readonly Finding[];
  /** One row a replication, for readers who want to do their own statistics. */
  readonly runs: readonly RunRow[];
}

/** A value of the scenario of which the planner says where it comes from. */
export interface AssumptionResult {
  /** As in messages: `route[3].work`; and in a planner's words. */
  readonly path: string;
  readonly words: string;
  /** As written, on one line. */
  readonly value: string;
  readonly basis: Basis;
  readonly note: string | null;
  /** How many values stand behind it; left out where its basis does not say. */
  readonly measured?: Measured | undefined;
}

import type { Thing } from '../../scenario/reliefs/thing.js';
import type { Offer } from '../priced/offer.js';
import type { BottleneckResult } from '../sections/bottlenecks.js';
import type { CarriersResult, TeamResult } from '../sections/carriers.js';
import type { CrewResult } from '../sections/crews.js';
import type { EquipmentResult } from '../sections/equipment.js';
import type { LaneResult } from '../sections/lanes.js';
import type { StationResult } from '../sections/stations.js';
import type { FeederResult, SupplyResult } from '../sections/supplies.js';
import type { Estimate } from '../statistics/estimate.js';

/** What stops a build, by trial: one more of each of the likeliest, under the same chance. */
export interface ConstraintResult {
  /**
   * - proven: more of it surely brings units, and it brings most.
   * - none helps: no single one of those tried does.
   * - rate asked: the rate is held, or units arrive by chance and nothing that was tried brings more, so that
   *   what is asked is what limits the build.
   * - not settled: too few replications to tell.
   */
  readonly outcome: 'proven' | 'none helps' | 'rate asked' | 'not settled';
  readonly culprit: Tried | null;
  readonly sentence: string;
  /** Replications of each trial, and a gain that does not matter, units a working day. */
  readonly replications: number;
  readonly zone: number;
  /** Units shipped a working day in these replications of the build as it is. */
  readonly shippedPerDay: Estimate;
  /** By gain. */
  readonly tried: readonly Tried[];
  /** What units wait for in the end, on average: the index by which trials are chosen. The highest first. */
  readonly waiting: readonly { readonly thing: Thing; readonly units: number }[];
  readonly ladder: LadderResult | null;
  /** What was seen in the weeks that are judged; null where none are: then the whole run is. */
  readonly judged: JudgedResult | null;
}

export interface Tried {
  readonly thing: Thing;
  /** As a planner reads it: `one place more at colour booth`. */
  readonly what: string;
  /** Units a working day more, paired; at the level at which all trials hold together. */
  readonly gain: Estimate;
  /** null: the scenario does not name it; left out where it names no changes of one thing. */
  readonly offer?: Offer | null | undefined;
}

/** From the rate that arithmetic allows a constraint to the rate shipped, units a working day. */
export interface LadderResult {
  readonly of: Thing;
  readonly allowedPerDay: number;
  /**
   * Units a working day lost to each cause (below 0: won). `allowedPerDay` less all of them is what is
   * shipped.
   */
  readonly losses: readonly { readonly cause: string; readonly perDay: Estimate }[];
  readonly shippedPerDay: Estimate;
}

/** The sections of the results, over the weeks that are judged. */
export interface JudgedResult {
  readonly from: string;
  readonly to: string;
  readonly replications: number;
  readonly stations: readonly StationResult[];
  readonly crews: readonly Pick<CrewResult, 'name' | 'site' | 'busy'>[];
  readonly equipment?: readonly EquipmentResult[] | undefined;
  readonly lanes: readonly LaneResult[];
  readonly carriers: readonly CarriersResult[];
  readonly teams: readonly TeamResult[];
  readonly feeders: readonly FeederResult[];
  readonly supplies: readonly SupplyResult[];
  readonly bottlenecks: readonly BottleneckResult[];
}

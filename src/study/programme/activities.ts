import type { Estimate } from '../simulate/results.js';

/**
 * Due dates kept and missed. A unit not shipped in the run is late if its due date had passed, or if it could
 * not be shipped any more.
 */
export interface DueResult {
  /** Units with a due date of which it is known, a replication. */
  readonly units: Estimate;
  /** Share of them that was late. */
  readonly late: Estimate;
  /** How late those were that were shipped after their due date, mean, days. */
  readonly daysLate: Estimate;
}

/** Units released by plan, due and shipped, counted up to the end of each day or ISO week. */
export interface PlanResult {
  readonly unit: 'day' | 'week';
  /** First day of each, and the first day after it. */
  readonly starts: readonly string[];
  readonly ends: readonly string[];
  /** By the plan; null where releases are not planned by date. */
  readonly released: readonly number[] | null;
  /** Null where nothing is due by date. */
  readonly due: readonly number[] | null;
  /**
   * Quantiles over replications of the units shipped (rank ceil(n p) of n replications): the spread of single
   * builds, no interval of a mean.
   */
  readonly shipped: {
    readonly p10: readonly number[];
    readonly p50: readonly number[];
    readonly p90: readonly number[];
  };
}

export const JOURNEY_ACTIVITIES = [
  'work',
  'repair',
  'changeover',
  'settling',
  'process',
  'loading',
  'driving',
  'unloading',
  'waiting for a place',
  'no room ahead',
  'short of crew',
  'short of parts',
  'short of carrier',
  'gathering a lot',
  'waiting for a truck',
  'waiting for a dock',
  'waiting in the truck',
  'down',
  'off shift',
] as const;
export type JourneyActivity = (typeof JOURNEY_ACTIVITIES)[number];
/** Of these: something is done to the unit, or it is on the road. */
export const ACTIVE: readonly JourneyActivity[] = JOURNEY_ACTIVITIES.slice(0, 8);

/** The way of one unit in one replication, from its entry to its shipping. */
export interface Journey {
  readonly build: string;
  readonly number: number;
  readonly replication: number;
  /** Why this unit. */
  readonly chosen: 'by name' | 'median lead time';
  readonly entered: string;
  /** Null: it was not shipped, and the journey ends with the run. */
  readonly shipped: string | null;
  readonly leadDays: number;
  /** One after the other without a gap: each begins where the one before ends. */
  readonly parts: readonly JourneyPart[];
  /** Days by activity, the longest first. */
  readonly totals: readonly { readonly what: JourneyActivity; readonly days: number }[];
  /**
   * By step in the order in which it came to them, all visits together: hours from the wait for it to its
   * end, and those in which something was done to the unit or it was on the road.
   */
  readonly steps: readonly {
    readonly step: string;
    readonly site: string;
    readonly hours: number;
    readonly activeHours: number;
  }[];
}
export interface JourneyPart {
  /** Minutes since the programme's start, and local dates and times. */
  readonly fromMin: number;
  readonly toMin: number;
  readonly from: string;
  readonly to: string;
  /** Step done, or waited for. */
  readonly step: string;
  /** Station or lane where it is; a unit in a buffer is ahead of the station. */
  readonly at: string;
  /** Null on a lane. */
  readonly site: string | null;
  readonly what: JourneyActivity;
}

import type { CrewShiftColumns } from './crews.js';

/**
 * What is claimed in numbers: people of a crew; sub-assemblies of a feeder; bought-in parts; carts, dollies
 * and fixtures; hoists, cranes and rigs that stations share.
 */
export const CREW = 0,
  STOCK = 1,
  SUPPLY = 2,
  CARRIER = 3,
  EQUIPMENT = 4;

/**
 * All that is claimed: crews first, then stocks of interchangeable sub-assemblies, supplies, carriers, shared
 * equipment.
 */
export interface ResourceColumns {
  readonly count: number;
  /** The first `crews` resources are crews. */
  readonly crews: number;
  /** CREW, STOCK, SUPPLY, CARRIER or EQUIPMENT. */
  readonly kind: Uint8Array;
  readonly names: readonly string[];
  readonly site: Int32Array;
  /** Headcount of a crew; stock at the start of a run. */
  readonly amount: Int32Array;
  /** Calendar of a crew or of equipment, -1 always; -1 for others. */
  readonly calendar: Int32Array;
  /** By crew: its shifts, where they differ; null where there is always the same number. */
  readonly shifts: readonly (CrewShiftColumns | null)[];
}

/** Resources that are equipment, in order. */
export const equipmentOf = ({ kind }: ResourceColumns): number[] =>
  [...kind.keys()].filter((resource) => kind[resource] === EQUIPMENT);

/** Bought-in parts (rule 12), in the order of the scenario. */
export interface SupplyColumns {
  readonly count: number;
  /** Resource id of the stock. */
  readonly resource: Int32Array;
  /**
   * A lot is ordered whenever stock and orders less the demand that waits are at or below this level, safety
   * stock included; -1: deliveries come by a plan.
   */
  readonly level: Int32Array;
  readonly lot: Int32Array;
  /** From order to arrival, minutes of the clock; -1 none. */
  readonly leadDraw: Int32Array;
  /**
   * Chance that a lot is late, the uniform draw that decides (-1: never late), and the draw of by how much.
   */
  readonly lateChance: Float64Array;
  readonly lateDraw: Int32Array;
  readonly lateByDraw: Int32Array;
  /** Delivery plans: times, sorted, and the units that come then; empty for a supply that is ordered. */
  readonly planTimes: readonly Float64Array[];
  readonly planLots: readonly Int32Array[];
}

/**
 * What stays with a unit over several steps of one route: carriers first, then teams. The unit claims it at
 * the first of the steps `from` .. `to` that it does and gives it back when it has gone on to a step beyond
 * `to`. Sent back from there it claims it again where it does the step again at which it claimed it, or at
 * the first of the steps that it does (`again`).
 */
export interface CompanionColumns {
  /** 31 at most: a unit keeps them as bits. */
  readonly count: number;
  readonly names: readonly string[];
  /** The carriers, or the crew of a team. */
  readonly resource: Int32Array;
  /** Of the resource, for one unit: 1 carrier, the people of a team. */
  readonly amount: Int32Array;
  /** Steps of one route, both included. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** 1 or 0. */
  readonly again: Uint8Array;
  /** The way back of a carrier, and the calendar in which it goes on (-1 always); draw -1: free at once. */
  readonly returnDraw: Int32Array;
  readonly returnCalendar: Int32Array;
}

import type { CrewShiftColumns } from './crews.js';

/**
 * What is claimed in numbers: people of a crew; sub-assemblies of a feeder; bought-in parts; carts, dollies
 * and fixtures.
 */
export const CREW = 0,
  STOCK = 1,
  SUPPLY = 2,
  CARRIER = 3;

/** All that is claimed: crews first, then stocks of interchangeable sub-assemblies, supplies, carriers. */
export interface ResourceColumns {
  readonly count: number;
  /** The first `crews` resources are crews. */
  readonly crews: number;
  /** CREW, STOCK, SUPPLY or CARRIER. */
  readonly kind: Uint8Array;
  readonly names: readonly string[];
  readonly site: Int32Array;
  /** Headcount of a crew; stock at the start of a run. */
  readonly amount: Int32Array;
  /** Calendar of a crew, -1 always; -1 for others. */
  readonly calendar: Int32Array;
  /** By crew: its shifts, where they differ; null where there is always the same number. */
  readonly shifts: readonly (CrewShiftColumns | null)[];
}

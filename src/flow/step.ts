import type { Buffer } from './buffer.js';
import type { Calendar } from './calendar.js';
import type { Lane } from './lane.js';
import type { Pool, Resource } from './resource.js';
import type { Station } from './station.js';

/** What a step has besides plain work; a step with none of it takes the short way. */
export const HAS_NEEDS = 1, HAS_QUALITY = 2, HAS_OFF = 4, HAS_PATH = 8, HAS_PASSES = 16, HAS_FACTOR = 32, IS_INSPECTION = 64, IS_TARGET = 128,
  HAS_PROCESS = 256, AT_LOT = 512, HAS_CHANGEOVER = 1024, ONE_SHIFT = 2048;

export interface Need { readonly resource: Resource; readonly amount: number }

/** A step of a route, with its station or lane. Rarer things (conditions, defects) are read from the model by `id`. */
export class Step {
  /** The step after it on its route; null at the end. */
  next: Step | null = null;
  flags = 0;
  /** See `short-way.ts`. */
  short = false;
  pool: Pool | null = null;
  needs: readonly Need[] = [];
  /** Bits of the own parts that must be back. */
  ownParts = 0;
  /** Running number among inspections; -1. */
  inspection = -1;
  /** Units and sub-assemblies that began it. */
  visits = 0;
  sampled = 0;

  constructor(
    readonly id: number, readonly name: string, readonly route: Route, readonly station: Station | null, readonly lane: Lane | null, readonly buffer: Buffer,
    readonly workCalendar: Calendar | null, readonly workDraw: number, readonly passes: number, readonly settleDraw: number, readonly processDraw: number,
  ) {}
}

/** The unit's route, or a feeder. */
export class Route {
  first: Step | null = null;
  /** The stock it feeds; null for the unit's route and for own parts. */
  stock: Resource | null = null;
  listed = false;
  /** Running number of the last one begun, and how many are in the making. */
  begun = 0;
  making = 0;

  /** @param ownBit bit that stands for its own parts; 0 for others */
  constructor(readonly id: number, readonly name: string, readonly isMain: boolean, readonly ownBit: number, readonly target: number) {}
}

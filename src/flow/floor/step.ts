import type { Buffer } from './buffer.js';
import type { Lane } from '../traffic/lane.js';
import {
  NOWHERE,
  S_BUFFER,
  S_CALENDAR,
  S_FLAGS,
  S_NEXT,
  S_VISITS,
  S_WORK_DRAW,
  STEP_SHIFT,
  type Memory,
} from './memory.js';
import type { Pool, Resource } from '../claims/resource.js';
import type { Station } from './station.js';
import type { Stay } from '../claims/carrier.js';

/** What a step has besides plain work; a step with none of it takes the short way. */
export const HAS_NEEDS = 1,
  HAS_QUALITY = 2,
  HAS_OFF = 4,
  HAS_PATH = 8,
  HAS_PASSES = 16,
  HAS_FACTOR = 32,
  IS_INSPECTION = 64,
  IS_TARGET = 128,
  HAS_PROCESS = 256,
  AT_LOT = 512,
  HAS_CHANGEOVER = 1024,
  ONE_SHIFT = 2048,
  LEARNS = 16384,
  HOLDS = 32768,
  ATTENDED_END = 1 << 24,
  IS_COUNTED = 1 << 25,
  /** At a station that may go down; at one of a pulse line. */
  CAN_FAIL = 1 << 26,
  PULSED = 1 << 27,
  /** A group of steps side by side; one of them. */
  IS_GROUP = 1 << 28,
  IS_BESIDE = 1 << 29,
  /** See `short-way.ts`. */
  BEGINS_PLAIN = 4096,
  ENDS_PLAIN = 8192;

export interface Need {
  readonly resource: Resource;
  readonly amount: number;
}

/**
 * A step of a route, with its station or lane: a view on its record. Rarer things (conditions, defects) are
 * read from the model by `id`.
 */
export class Step {
  readonly at: number;
  needs: readonly Need[] = [];
  /** What has to be with the unit; none at a station with lots, where nothing is claimed for single units. */
  stays: readonly Stay[] = [];
  /** Of a group: the steps that are done side by side. */
  beside: Step[] = [];
  /** The group in which it is done. */
  group: Step | null = null;
  pool: Pool | null = null;
  /** Those of the needs that are supplies. */
  supplies: readonly Need[] = [];
  /** Bits of the own parts that must be on the unit or back at it. */
  ownParts = 0;
  /** Running number among inspections; -1. */
  inspection = -1;
  /** Running number among hold steps; -1. */
  hold = -1;
  sampled = 0;
  /** Times begun since the start of the run; kept only for steps that learn. */
  begun = 0;
  private nextStep: Step | null = null;

  /** @param workCalendar id, -1 always */
  constructor(
    readonly id: number,
    readonly name: string,
    readonly route: Route,
    readonly station: Station | null,
    readonly lane: Lane | null,
    readonly buffer: Buffer,
    readonly workCalendar: number,
    readonly workDraw: number,
    readonly passes: number,
    readonly settleDraw: number,
    readonly processDraw: number,
    private readonly memory: Memory,
  ) {
    const at = (this.at = id << STEP_SHIFT),
      { ints } = memory;
    ints[at + S_NEXT] = NOWHERE;
    ints[at + S_BUFFER] = buffer.at;
    ints[at + S_WORK_DRAW] = workDraw;
    ints[at + S_CALENDAR] = workCalendar;
  }

  get flags(): number {
    return this.memory.ints[this.at + S_FLAGS];
  }
  set flags(flags: number) {
    this.memory.ints[this.at + S_FLAGS] = flags;
  }

  /** The step after it on its route; null at the end. */
  get next(): Step | null {
    return this.nextStep;
  }
  set next(step: Step | null) {
    this.nextStep = step;
    this.memory.ints[this.at + S_NEXT] = step === null ? NOWHERE : step.at;
  }

  /** Units and sub-assemblies that began it. */
  get visits(): number {
    return this.memory.ints[this.at + S_VISITS];
  }
  set visits(visits: number) {
    this.memory.ints[this.at + S_VISITS] = visits;
  }
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
  /** Slots whose items its sub-assemblies may bring along. */
  carriedSlots: Int32Array = new Int32Array(0);

  /** @param ownBit bit that stands for its own parts; 0 for others */
  constructor(
    readonly id: number,
    readonly name: string,
    readonly isMain: boolean,
    readonly ownBit: number,
    readonly target: number,
  ) {}
}

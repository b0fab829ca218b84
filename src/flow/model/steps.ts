import type { Model } from './model.js';

/**
 * Steps and rework loops: a step is visited always, only going forward, only while a unit is being reworked.
 */
export const REWORK_BOTH = 0,
  REWORK_SKIP = 1,
  REWORK_ONLY = 2;

/** How long equipment is needed: for the whole work, or for the first or the last minutes of it. */
export const WHOLE = 0,
  FIRST = 1,
  LAST = 2;

/**
 * Whether the parts of a step are in the full kit of its feeder: it is surely done, and by each sub-assembly
 * for itself. The parts of a sample, of rework and of a lot are claimed at their step.
 */
export const isInKit = (
  { steps, routes, stations }: Pick<Model, 'steps' | 'routes' | 'stations'>,
  step: number,
): boolean =>
  routes.fullKit[steps.route[step]] === 1 &&
  steps.sampleN[step] === 0 &&
  steps.rework[step] !== REWORK_ONLY &&
  steps.station[step] >= 0 &&
  stations.lotMost[steps.station[step]] === 0;

/** Route 0 is the unit's; the others are feeders. */
export interface RouteColumns {
  readonly count: number;
  readonly names: readonly string[];
  /** First step; the last step is firstStep[r + 1] - 1 (length count + 1). */
  readonly firstStep: Int32Array;
  /** 1: the sub-assembly belongs to one unit and rejoins it. */
  readonly own: Uint8Array;
  /** Resource id of the stock it feeds; -1 for route 0 and own parts. */
  readonly stock: Int32Array;
  /** Target of stock and sub-assemblies in the making together; 0 for route 0 and own parts. */
  readonly target: Int32Array;
  /** 1: a sub-assembly begins only when all parts that it surely takes are there. */
  readonly fullKit: Uint8Array;
}

/**
 * Steps of all routes, those of a route contiguous and in order; then those of ways back, lanes and arrival
 * banks between a step and an earlier one at another site to which it sends units.
 */
export interface StepColumns {
  readonly count: number;
  readonly names: readonly string[];
  readonly route: Int32Array;
  /** Station, or -1 for a lane step. */
  readonly station: Int32Array;
  /** Lane, or -1. */
  readonly lane: Int32Array;
  /** Of a step of a way back: the one that follows, at last the one that units are sent to; else -1. */
  readonly onTo: Int32Array;
  /** Calendar in which work goes on: station, crews and equipment all present; -1 always. */
  readonly workCalendar: Int32Array;
  readonly workDraw: Int32Array;
  /** Number of passes of work and settle; 1 for plain work. */
  readonly passes: Int32Array;
  readonly settleDraw: Int32Array;
  readonly processDraw: Int32Array;
  /**
   * Learning: exponent of the curve (0 none, otherwise negative), 1 for Wright's cumulative mean, floor,
   * times done before the run.
   */
  readonly learnExponent: Float64Array;
  readonly learnCumulative: Uint8Array;
  readonly learnFloor: Float64Array;
  readonly learnBefore: Int32Array;
  /** 1: work starts only where it can end in the same shift. */
  readonly oneShift: Uint8Array;
  /** 1: the process ends only in the hours of `workCalendar`. */
  readonly attendedEnd: Uint8Array;
  readonly rework: Uint8Array;
  /** Conditions, all must hold: option `whenOption`, its value's bit set in `whenMask`. */
  readonly whenStart: Int32Array;
  readonly whenOption: Int32Array;
  readonly whenMask: Int32Array;
  /**
   * What a place is set up for, as an index into the station's `changeoverValues`: settingTable[settingStart
   * + value of `settingOption`], without an option (-1) settingTable[settingStart]; -1: nothing.
   */
  readonly settingOption: Int32Array;
  readonly settingStart: Int32Array;
  readonly settingTable: Int32Array;
  /** Steps with the same number may share a lot. */
  readonly lotKind: Int32Array;
  /** Sampling: 0 every unit, n: one in n. */
  readonly sampleN: Int32Array;
  /** Uniform draw for sampling at random; -1: every n-th. */
  readonly sampleDraw: Int32Array;
  /** Claimed together. */
  readonly needStart: Int32Array;
  readonly needResource: Int32Array;
  readonly needAmount: Int32Array;
  /** 1: its parts, carriers and teams are claimed before the unit takes a place. */
  readonly asksAhead: Uint8Array;
  /** Of equipment: WHOLE, FIRST or LAST, and the draw of how many minutes of work; -1 none. */
  readonly needPart: Uint8Array;
  readonly needDraw: Int32Array;
  /** Own parts (feeder routes) that must be back. */
  readonly ownStart: Int32Array;
  readonly ownRoute: Int32Array;
  /** Own parts (feeder routes) taken off when the step ends. */
  readonly offStart: Int32Array;
  readonly offRoute: Int32Array;
  /** Work time factors, all that match are multiplied: factor = factorTable[factorOffset + value]. */
  readonly factorStart: Int32Array;
  readonly factorOption: Int32Array;
  readonly factorOffset: Int32Array;
  readonly factorTable: Float64Array;
  /** Defect slots the step may create. A slot is one kind of defect as made by one step. */
  readonly createStart: Int32Array;
  readonly createSlot: Int32Array;
  readonly createChance: Int32Array;
  readonly createDraw: Int32Array;
  /** What the step may find: slot, or -1 for a failed test. */
  readonly findStart: Int32Array;
  readonly findSlot: Int32Array;
  readonly findChance: Int32Array;
  readonly findDraw: Int32Array;
  readonly findThen: Int32Array;
}

import type { Distribution } from '../../random/distribution.js';
import type { BesideColumns } from './side-by-side.js';
import type { StayColumns } from './carriers.js';
import type { SupplyColumns } from './supplies.js';
import type { OrderColumns } from './orders.js';
import type { QualityColumns } from './quality.js';
import type { CrewShiftColumns, OvertimeColumns } from './crews.js';

export * from './quality.js';
export * from './crews.js';
import type { FailureColumns, OutageColumns } from './failures.js';
import type { PulseLineColumns } from './pulse-lines.js';

/**
 * The compiled model: what `scenario` hands to the engine. Integers and typed arrays; names only for reports.
 *
 * Conventions
 * - Time is minutes since the programme's start instant, a float.
 * - An id is an index into the columns of its kind; -1 says "none".
 * - `UNLIMITED` stands for a capacity without a limit.
 * - A ragged column `x` of rows is `xStart` (length rows + 1) and flat columns: row r is xStart[r] ..
 * xStart[r + 1] - 1.
 * - A draw id (`...Draw`) is an index into `draws`; each draw has a stream of its own, named for the thing
 * and purpose.
 */
export const UNLIMITED = 0x3fffffff;

/**
 * Sorted, disjoint windows of working time; `before[i]` is the working time before window i; `shiftEnd[i]`
 * the end of the shift that window i belongs to, with any overtime of it. `overtime[i]`: 1 for overtime.
 * `rules[i]`: bits of the overtime rules that all have to ask for window i; where it is 0, it is always
 * worked.
 */
export interface CalendarColumns {
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly before: Float64Array;
  readonly shiftEnd: Float64Array;
  readonly overtime: Uint8Array;
  readonly rules: Int32Array;
}

export interface NamedDraw {
  /** Stream name: `thing/purpose`, unique. */
  readonly name: string;
  readonly distribution: Distribution;
}

/** Found defects and failed tests: what then. */
export const REPAIR = 0,
  SEND_BACK = 1,
  SCRAP = 2,
  CARRY = 3;
/**
 * Steps and rework loops: a step is visited always, only going forward, only while a unit is being reworked.
 */
export const REWORK_BOTH = 0,
  REWORK_SKIP = 1,
  REWORK_ONLY = 2;
/** When trucks leave. */
export const LEAVE_FULL = 0,
  LEAVE_TIMETABLE = 1,
  LEAVE_FULL_OR_WAIT = 2;
/**
 * What is claimed in numbers: people of a crew; sub-assemblies of a feeder; bought-in parts; carts, dollies
 * and fixtures.
 */
export const CREW = 0,
  STOCK = 1,
  SUPPLY = 2,
  CARRIER = 3;
/** How units are released: at given times; by a drawn interval; whenever the first station has room. */
export const RELEASE_TIMES = 0,
  RELEASE_ARRIVALS = 1,
  RELEASE_SATURATED = 2;

export interface Model {
  /** Working calendars; calendar id -1 is "always". Complete up to `horizon`. */
  readonly calendars: readonly CalendarColumns[];
  /**
   * The time to which calendars are compiled; a run that gets there stops and says so. `Infinity` where no
   * calendar is used.
   */
  readonly horizon: number;
  readonly draws: readonly NamedDraw[];

  readonly siteNames: readonly string[];

  /** Options of a unit; each unit has one value of each option. Cumulative chances, last = 1. */
  readonly options: readonly {
    readonly name: string;
    readonly values: readonly string[];
    readonly cumulative: Float64Array;
  }[];

  readonly stations: {
    readonly count: number;
    readonly names: readonly string[];
    readonly site: Int32Array;
    readonly places: Int32Array;
    /** Spaces in the buffer ahead. */
    readonly buffer: Int32Array;
    /** Spaces ahead for units sent back; -1: they share the buffer. */
    readonly reworkBuffer: Int32Array;
    /** Calendar in which the station is on shift; -1 always. */
    readonly calendar: Int32Array;
    /**
     * 1: an arrival bank of a lane: places without equipment, in which a unit only waits for its next
     * station.
     */
    readonly isBank: Uint8Array;
    /** Option whose change between consecutive units on a place costs a changeover; -1 none. */
    readonly changeoverOption: Int32Array;
    /**
     * Draws by value before * values + value after, -1 no changeover; ragged, empty where there is no option.
     */
    readonly changeoverStart: Int32Array;
    readonly changeoverDraw: Int32Array;
    /**
     * Batches by value: most units of one value in a row, 0 = in order; longest wait of the first in order,
     * minutes, may be Infinity.
     */
    readonly batchMost: Int32Array;
    readonly batchWait: Float64Array;
    /** Lots: `lotMost` 0 = units are taken one by one. */
    readonly lotLeast: Int32Array;
    readonly lotMost: Int32Array;
    /**
     * Longest wait of the first unit of a lot before it starts with fewer than most, minutes; 0: it starts as
     * soon as the least are there.
     */
    readonly lotWait: Float64Array;
  };

  /** Rules that decide on overtime; rule r has bit 1 << r in the calendars. */
  readonly overtime: readonly OvertimeColumns[];

  /**
   * What is claimed in numbers: crews first, then stocks of interchangeable sub-assemblies, supplies,
   * carriers.
   */
  readonly resources: {
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
  };

  readonly supplies: SupplyColumns;
  /** Carriers and teams that stay with a unit over several steps. */
  readonly stays: StayColumns;

  /** Steps that are done side by side on one unit in one place. */
  readonly beside: BesideColumns;

  /** Route 0 is the unit's; the others are feeders. Steps of a route are contiguous and in order. */
  readonly routes: {
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
  };

  readonly steps: {
    readonly count: number;
    readonly names: readonly string[];
    readonly route: Int32Array;
    /** Station, or -1 for a lane step. */
    readonly station: Int32Array;
    /** Lane, or -1. */
    readonly lane: Int32Array;
    /** Calendar in which work goes on: station and crews all present; -1 always. */
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
    /** Sampling: 0 every unit, n: one in n. */
    readonly sampleN: Int32Array;
    /** Uniform draw for sampling at random; -1: every n-th. */
    readonly sampleDraw: Int32Array;
    /** Claimed together. */
    readonly needStart: Int32Array;
    readonly needResource: Int32Array;
    readonly needAmount: Int32Array;
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
  };

  /** Defect slots; those of failed tests that may be noted come last and have kind -1. */
  readonly slots: {
    readonly count: number;
    readonly names: readonly string[];
    readonly kind: Int32Array;
    readonly step: Int32Array;
    readonly kindNames: readonly string[];
  };

  /** A chance by option: `base` unless a row (option, value) matches; the first that matches counts. */
  readonly chances: {
    readonly base: Float64Array;
    readonly start: Int32Array;
    readonly option: Int32Array;
    readonly value: Int32Array;
    readonly chance: Float64Array;
  };

  /** Rules 8 to 10 beside the columns of the steps. */
  readonly quality: QualityColumns;

  /** What follows a find. */
  readonly thens: {
    readonly count: number;
    readonly kind: Int32Array;
    /** Repair there and then, or the work on a carried item at its hold. */
    readonly repairDraw: Int32Array;
    /** Step the unit is sent back to, at or before the finding step; -1 unless SEND_BACK. */
    readonly target: Int32Array;
    /** Most times one unit is sent back by this row. */
    readonly limit: Int32Array;
    /** 1: scrapped at the limit; 0: passed on with the item open. */
    readonly scrapAtLimit: Uint8Array;
  };

  readonly lanes: {
    readonly count: number;
    readonly names: readonly string[];
    readonly from: Int32Array;
    readonly to: Int32Array;
    readonly trucks: Int32Array;
    readonly capacity: Int32Array;
    readonly loadDraw: Int32Array;
    readonly driveDraw: Int32Array;
    readonly unloadDraw: Int32Array;
    readonly returnDraw: Int32Array;
    /**
     * Calendars of loading (site of departure), driving and return, unloading (site of arrival); -1 always.
     */
    readonly loadCalendar: Int32Array;
    readonly driveCalendar: Int32Array;
    readonly unloadCalendar: Int32Array;
    readonly rule: Int32Array;
    /** Longest wait of the first waiting unit, minutes; for LEAVE_FULL_OR_WAIT. */
    readonly wait: Float64Array;
    /** Sorted times at which loading begins, for LEAVE_TIMETABLE. */
    readonly timetable: readonly Float64Array[];
    /** Spaces of the bank ahead of loading. */
    readonly bank: Int32Array;
    readonly docksFrom: Int32Array;
    readonly docksTo: Int32Array;
  };

  readonly failures: FailureColumns;
  readonly outages: OutageColumns;
  readonly pulseLines: PulseLineColumns;

  readonly programme: {
    readonly release: number;
    /**
     * For RELEASE_TIMES: release time of each unit, sorted; 0 for those of the opening, which come first.
     * Units are numbered from 1 in this order.
     */
    readonly times: Float64Array;
    /** For RELEASE_ARRIVALS: the interval. */
    readonly intervalDraw: number;
    readonly orders: OrderColumns;
    /**
     * Units in all; UNLIMITED for a steady-state run. The run ends when all have been shipped or scrapped.
     */
    readonly quantity: number;
    /** Hard end of the run, minutes; may be Infinity where quantity is finite. */
    readonly end: number;
    /** Start of observation, minutes; 0 for a programme that starts empty. */
    readonly warmUp: number;
    /** Edges of the time series, sorted; the first is <= warmUp; series have edges.length - 1 entries. */
    readonly bucketEdges: Float64Array;
  };
}

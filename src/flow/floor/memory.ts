import type { PeriodWatch } from '../accounts/active-periods.js';
import type { Model } from '../model/model.js';
import type { Calendar } from './calendar.js';
import { STARVED } from './states.js';

/**
 * What the inner loop reads and writes, as records in one Int32Array and one Float64Array: a record lies in
 * one or two cache lines, and a function loads the base of an array once. Against the hand-written loop of
 * the bench, objects that point at each other reached 0.36, a column for each field 0.26, records 0.5. An
 * address is the index of a record's first field; NOWHERE stands for none. The classes Step, Place, Buffer
 * and Unit are views on these records for everything that is not the inner loop.
 */
export const NOWHERE = -1;

/**
 * Lines of units: in a buffer's spaces and without room, each apart for units sent back. Offsets in a
 * buffer's record.
 */
export const USUAL = 8,
  SHUT = 12,
  SENT_BACK = 16,
  SHUT_SENT_BACK = 20;
/** In the order of rule 1. */
export const LINES: readonly number[] = [SENT_BACK, USUAL, SHUT_SENT_BACK, SHUT];
/**
 * Fields of a line, from its offset: first and last unit, length, and how many at its end joined at the time
 * of the last joining.
 */
export const HEAD = 0,
  TAIL = 1,
  LENGTH = 2,
  TOGETHER = 3;

export const STEP_SHIFT = 3,
  S_FLAGS = 0,
  S_NEXT = 1,
  S_BUFFER = 2,
  S_WORK_DRAW = 3,
  S_CALENDAR = 4,
  S_VISITS = 5;
export const PLACE_SHIFT = 3,
  P_UNIT = 0,
  P_STATE = 1,
  P_PHASE = 2,
  P_BUFFER = 3,
  P_NEXT_FREE = 4,
  P_PASS = 5,
  P_CALENDAR = 6;
export const UNIT_SHIFT = 3,
  U_STEP = 0,
  U_PLACE = 1,
  U_NEXT = 2,
  U_NUMBER = 3,
  U_FIRST = 4,
  U_REWORK = 5,
  U_LOCATION = 6;
/** A buffer and, where it is a station's, the station. */
export const BUFFER_SHIFT = 5,
  B_WAITING = 0,
  B_SHUT_OUT = 1,
  B_SPACES = 2,
  B_REWORK_SPACES = 3,
  B_LOCATION = 4,
  B_FREE_PLACE = 5,
  B_ACTIVE = 6,
  B_PLACES = 7,
  B_CALENDAR = 24,
  B_LONG_WAY = 25;

/**
 * Floats of a buffer: start of the present level, unit-minutes; then the times of the last joining, at
 * (offset of the line >> 2).
 */
export const BF_SHIFT = 3,
  BF_SINCE = 0,
  BF_AREA = 1;
/**
 * Account of a station: minutes by state, then its active periods: start of the present one (-1 none), number
 * and minutes of those that are over.
 */
export const ACCOUNT_SHIFT = 4,
  ACTIVE_SINCE = 11,
  ACTIVE_PERIODS = 12,
  ACTIVE_MINUTES = 13;
/** Levels told apart in the account of a buffer; the last one stands for that many and more. */
export const LEVELS_SHIFT = 6,
  LEVELS = 64;

const FIRST_UNITS = 64;

export class Memory {
  /**
   * Minutes since the programme's start. Not a number at first, so that JavaScript keeps the field as a float
   * from the beginning.
   */
  now = NaN;
  /** Told of active periods of stations; null unless the replication is watched closely. */
  watch: PeriodWatch | null = null;
  ints: Int32Array;
  readonly floats: Float64Array;
  /** Addresses of the first place, buffer and unit; steps begin at 0. */
  readonly places: number;
  readonly buffers: number;
  readonly units: number;
  /**
   * Indices of the first float of buffers, accounts and levels. The floats of places begin at 0, one each:
   * the start of the present state.
   */
  readonly bufferFloats: number;
  readonly accounts: number;
  readonly levels: number;

  constructor(
    { steps, stations, lanes, sideBySide }: Model,
    readonly calendars: readonly Calendar[],
  ) {
    // Places, then the sides of those at which steps go on side by side.
    const placeCount = stations.places.reduce((sum, places, s) => sum + places * (1 + sideBySide.most[s]), 0),
      bufferCount = stations.count + lanes.count;
    this.now = 0;
    // Buffers first among what follows the steps: 32 ints are two whole cache lines where the base is a
    // multiple of 16.
    this.buffers = Math.ceil((steps.count << STEP_SHIFT) / 16) * 16;
    this.places = this.buffers + (bufferCount << BUFFER_SHIFT);
    this.units = this.places + (placeCount << PLACE_SHIFT);
    this.ints = new Int32Array(this.units + (FIRST_UNITS << UNIT_SHIFT));
    this.bufferFloats = Math.ceil(placeCount / 8) * 8;
    this.accounts = this.bufferFloats + (bufferCount << BF_SHIFT);
    this.levels = this.accounts + (stations.count << ACCOUNT_SHIFT);
    this.floats = new Float64Array(this.levels + (bufferCount << LEVELS_SHIFT));
    for (let account = this.accounts; account < this.levels; account += 1 << ACCOUNT_SHIFT)
      this.floats[account + ACTIVE_SINCE] = -1;
    for (let place = this.places; place < this.units; place += 1 << PLACE_SHIFT)
      this.ints[place + P_STATE] = STARVED;
  }

  /** Makes sure that there is a record for unit `id`. */
  reserveUnit(id: number): void {
    const needed = this.units + ((id + 1) << UNIT_SHIFT);
    if (needed <= this.ints.length) return;
    const larger = new Int32Array(this.units + 2 * (this.ints.length - this.units));
    larger.set(this.ints);
    this.ints = larger;
  }

  /** The time at which `minutes` of work in a calendar have passed from now; calendar -1 is always. */
  after(calendar: number, minutes: number): number {
    return calendar < 0 ? this.now + minutes : this.calendars[calendar].advance(this.now, minutes);
  }

  /** Minutes of a calendar from one time to another. */
  worked(calendar: number, from: number, to: number): number {
    return calendar < 0 ? to - from : this.calendars[calendar].worked(from, to);
  }
}

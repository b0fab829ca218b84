import type { Lane } from '../traffic/lane.js';
import {
  B_FREE_PLACE,
  B_LOCATION,
  B_REWORK_SPACES,
  B_SHUT_OUT,
  B_SPACES,
  B_WAITING,
  BF_AREA,
  BF_SHIFT,
  BUFFER_SHIFT,
  HEAD,
  LENGTH,
  LEVELS,
  LEVELS_SHIFT,
  NOWHERE,
  SENT_BACK,
  SHUT,
  SHUT_SENT_BACK,
  TAIL,
  U_NEXT,
  USUAL,
  type Memory,
} from './memory.js';
import type { Station } from './station.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';
import type { Units } from './units.js';
import {
  firstInSpaces,
  joinShut,
  joinSpaces,
  settleLevel,
  takeFromLine,
  takeFromSpaces,
  takesIn,
  takeShut,
  takeShutThatFits,
} from './waiting-lines.js';

export { LEVELS };

/** The room ahead of a station, or the bank of a lane: a view on its record, see `waiting.ts`. */
export class Buffer {
  readonly at: number;
  /** What it stands ahead of: a station, or a lane. */
  station: Station | null = null;
  lane: Lane | null = null;
  /** Waits to be looked at by `fill`. */
  listed = false;
  readonly location: number;
  /** Before the time observed. */
  private mostBefore = 0;

  /**
   * @param spaces most units, `UNLIMITED` for no limit
   * @param reworkSpaces spaces of their own for units sent back; -1: they share
   * @param location where its units count as work in process
   */
  constructor(
    id: number,
    readonly spaces: number,
    reworkSpaces: number,
    location: number,
    private readonly memory: Memory,
    private readonly units: Units,
  ) {
    const at = (this.at = memory.buffers + (id << BUFFER_SHIFT)),
      { ints } = memory;
    this.location = location;
    ints[at + B_SPACES] = spaces;
    ints[at + B_REWORK_SPACES] = reworkSpaces;
    ints[at + B_LOCATION] = location;
    ints[at + B_FREE_PLACE] = NOWHERE;
  }

  /** Units in the spaces. */
  get waiting(): number {
    return this.memory.ints[this.at + B_WAITING];
  }

  /** Units without room. */
  get shutOut(): number {
    return this.memory.ints[this.at + B_SHUT_OUT];
  }

  takesIn(unit: Unit): boolean {
    return takesIn(this.memory, this.at, unit.at);
  }

  join(unit: Unit): void {
    joinSpaces(this.memory, this.at, unit.at);
  }

  /** The first in order, who stays in the spaces; there must be one. */
  first(): Unit {
    return this.units.at(firstInSpaces(this.memory, this.at));
  }

  /** The first in order, out of the spaces; there must be one. */
  take(): Unit {
    return this.units.at(takeFromSpaces(this.memory, this.at));
  }

  /** The first in order that is at `step`, out of the spaces; null if there is none. */
  takeAt(step: Step): Unit | null {
    for (const line of [SENT_BACK, USUAL]) {
      for (const unit of this.line(line)) {
        if (unit.step !== step) continue;
        return this.takeOut(unit, line);
      }
    }
    return null;
  }

  /** A unit that is in a line of the spaces, out of it. */
  takeOut(unit: Unit, line: number): Unit {
    settleLevel(this.memory, this.at);
    this.memory.ints[this.at + B_WAITING]--;
    takeFromLine(this.memory, this.at, line, unit.at);
    return unit;
  }

  /** No room: the unit waits where it is. */
  joinShut(unit: Unit): void {
    joinShut(this.memory, this.at, unit.at);
  }

  /** The first of those without room; there must be one. */
  takeShut(): Unit {
    return this.units.at(takeShut(this.memory, this.at));
  }

  /** The first of those without room that is at `step`; null if there is none. */
  takeShutAt(step: Step): Unit | null {
    for (const line of [SHUT_SENT_BACK, SHUT]) {
      for (const unit of this.line(line)) {
        if (unit.step !== step) continue;
        this.memory.ints[this.at + B_SHUT_OUT]--;
        takeFromLine(this.memory, this.at, line, unit.at);
        return unit;
      }
    }
    return null;
  }

  /** The first of those without room for whom there is a space now; null if there is none. */
  takeShutThatFits(): Unit | null {
    const unit = takeShutThatFits(this.memory, this.at);
    return unit === NOWHERE ? null : this.units.at(unit);
  }

  /** When the longest waiting unit in the spaces joined; Infinity when there is none. For banks of lanes. */
  oldest(): number {
    return Math.min(
      ...[SENT_BACK, USUAL].map((line) =>
        this.memory.ints[this.at + line + LENGTH] > 0
          ? this.units.at(this.memory.ints[this.at + line + HEAD]).queuedAt
          : Infinity,
      ),
    );
  }

  /** Whether the unit is in the spaces. */
  holds(unit: Unit): boolean {
    return [...this.line(SENT_BACK), ...this.line(USUAL)].includes(unit);
  }

  /** Unit-minutes in the spaces. */
  get area(): number {
    return this.memory.floats[this.floatsAt + BF_AREA];
  }

  /** Minutes by units in the spaces. */
  get levelTime(): Float64Array {
    const first = this.memory.levels + ((this.at - this.memory.buffers) << (LEVELS_SHIFT - BUFFER_SHIFT));
    return this.memory.floats.subarray(first, first + LEVELS);
  }

  /**
   * Whether a unit has ever found no room here; the last of a line stays noted in it when the line is empty
   * again.
   */
  get everShutOut(): boolean {
    return (
      this.memory.ints[this.at + SHUT + TAIL] !== 0 || this.memory.ints[this.at + SHUT_SENT_BACK + TAIL] !== 0
    );
  }

  /**
   * Most units that were in the spaces for any time, since the start of the run; Infinity for `LEVELS` - 1
   * and more.
   */
  get most(): number {
    const most = Math.max(
      this.mostBefore,
      this.levelTime.findLastIndex((time) => time > 0),
    );
    return most < LEVELS - 1 ? most : Infinity;
  }

  settle(): void {
    settleLevel(this.memory, this.at);
  }

  clear(): void {
    this.mostBefore = this.most;
    this.levelTime.fill(0);
    this.memory.floats[this.floatsAt + BF_AREA] = 0;
  }

  private get floatsAt(): number {
    return this.memory.bufferFloats + ((this.at - this.memory.buffers) >> (BUFFER_SHIFT - BF_SHIFT));
  }

  private line(line: number): Unit[] {
    const { ints } = this.memory,
      found: Unit[] = [];
    let unit = ints[this.at + line + HEAD];
    for (let k = ints[this.at + line + LENGTH]; k > 0; k--, unit = ints[unit + U_NEXT])
      found.push(this.units.at(unit));
    return found;
  }
}

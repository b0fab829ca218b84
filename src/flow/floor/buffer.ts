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
  LINES,
  type Memory,
  NOWHERE,
  SENT_BACK,
  SHUT,
  SHUT_SENT_BACK,
  TAIL,
  U_NEXT,
  USUAL,
} from './memory.js';
import type { Station } from './station.js';
import type { Unit } from './unit.js';
import type { Units } from './units.js';
import * as lines from './waiting-lines.js';

/** The room ahead of a station, or the bank of a lane: a view on its record, see `waiting-lines.ts`. */
export class Buffer {
  readonly at: number;
  /** What it stands ahead of: a station, or a lane. */
  station: Station | null = null;
  lane: Lane | null = null;
  /** Waits to be looked at by `fill`. */
  listed = false;
  private mostInWarmUp = 0;

  /**
   * @param spaces most units, `UNLIMITED` for no limit
   * @param reworkSpaces spaces of their own for units sent back; -1: they share
   * @param location where its units count as work in process
   */
  constructor(
    id: number,
    spaces: number,
    reworkSpaces: number,
    readonly location: number,
    private readonly memory: Memory,
    private readonly units: Units,
  ) {
    const at = (this.at = memory.buffers + (id << BUFFER_SHIFT)),
      { ints } = memory;
    this.resize(spaces, reworkSpaces);
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

  /** It has another number of spaces; whoever stands there stays. As in the constructor. */
  resize(spaces: number, reworkSpaces: number): void {
    const { ints } = this.memory;
    ints[this.at + B_SPACES] = spaces;
    ints[this.at + B_REWORK_SPACES] = reworkSpaces;
  }

  takesIn(unit: Unit): boolean {
    return lines.takesIn(this.memory, this.at, unit.at);
  }

  join(unit: Unit): void {
    lines.joinSpaces(this.memory, this.at, unit.at);
  }

  /** The first in order, who stays in the spaces; there must be one. */
  first(): Unit {
    return this.units.at(lines.firstInSpaces(this.memory, this.at));
  }

  /** The first in order, out of the spaces; there must be one. */
  take(): Unit {
    return this.units.at(lines.takeFromSpaces(this.memory, this.at));
  }

  /** The first in order that is `wanted`, in the spaces or without room, out of its line; null: none. */
  takeFirst(wanted: (unit: Unit) => boolean): Unit | null {
    for (const line of LINES) {
      const unit = this.line(line).find(wanted);
      if (unit !== undefined) return this.takeOut(unit, line);
    }
    return null;
  }

  /** A unit that is in a line, out of it. */
  takeOut(unit: Unit, line: number): Unit {
    lines.takeOut(this.memory, this.at, line, unit.at);
    return unit;
  }

  /** No room: the unit waits where it is. */
  joinShut(unit: Unit): void {
    lines.joinShut(this.memory, this.at, unit.at);
  }

  /** The first of those without room; there must be one. */
  takeShut(): Unit {
    return this.units.at(lines.takeShut(this.memory, this.at, lines.firstShut(this.memory, this.at)));
  }

  /** The first of those without room for whom there is a space now; null if there is none. */
  takeShutThatFits(): Unit | null {
    const unit = lines.firstShutThatFits(this.memory, this.at);
    return unit === NOWHERE ? null : this.units.at(lines.takeShut(this.memory, this.at, unit));
  }

  /** When the longest waiting unit in the spaces joined; Infinity when there is none. For banks of lanes. */
  oldest(): number {
    return Math.min(this.headJoinedAt(SENT_BACK), this.headJoinedAt(USUAL));
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

  /** Whether a unit has ever found no room here; a line that is empty again still has its last one noted. */
  get everShutOut(): boolean {
    const { ints } = this.memory;
    return ints[this.at + SHUT + TAIL] !== 0 || ints[this.at + SHUT_SENT_BACK + TAIL] !== 0;
  }

  /** Whether a unit has ever come and not found a place at once. */
  get everWaitedFor(): boolean {
    const { ints } = this.memory;
    return LINES.some((line) => ints[this.at + line + TAIL] !== 0);
  }

  /**
   * Most units that were in the spaces for any time, since the start of the run; Infinity for `LEVELS` - 1
   * and more.
   */
  get most(): number {
    const last = this.levelTime.findLastIndex((time) => time > 0),
      most = Math.max(this.mostInWarmUp, last);
    return most < LEVELS - 1 ? most : Infinity;
  }

  settle(): void {
    lines.settleLevel(this.memory, this.at);
  }

  clear(): void {
    this.mostInWarmUp = this.most;
    this.levelTime.fill(0);
    this.memory.floats[this.floatsAt + BF_AREA] = 0;
  }

  private get floatsAt(): number {
    return this.memory.bufferFloats + ((this.at - this.memory.buffers) >> (BUFFER_SHIFT - BF_SHIFT));
  }

  private headJoinedAt(line: number): number {
    const { ints } = this.memory,
      at = this.at + line;
    return ints[at + LENGTH] > 0 ? this.units.at(ints[at + HEAD]).queuedAt : Infinity;
  }

  /** The units of a line, in order. */
  line(line: number): Unit[] {
    const { ints } = this.memory,
      found: Unit[] = [];
    let unit = ints[this.at + line + HEAD];
    for (let k = ints[this.at + line + LENGTH]; k > 0; k--, unit = ints[unit + U_NEXT])
      found.push(this.units.at(unit));
    return found;
  }
}

import type { Clock } from './clock.js';
import type { Plan } from './plan.js';
import type { Units } from './units.js';

/** Levels told apart in the account of a queue; the last one stands for that many and more. */
export const LEVELS = 64;

/** Lists of a destination: its buffer, and those without room, who stay where they are; units sent back apart, and first. */
const QUEUE = 0, REWORK_QUEUE = 1, SHUT = 2, SHUT_REWORK = 3, LISTS = 4;

/**
 * What waits for a station or a lane: its buffer, and the units that found it full and block their places (blocking
 * after service). Lists are linked through `Units.next` in the order of rule 1: first come first served, at one instant
 * the lower build number ahead.
 */
export class Destinations {
  readonly count: number;
  /** Head, tail and length by list * destinations + destination; -1 is nobody. */
  private readonly heads: Int32Array;
  private readonly tails: Int32Array;
  private readonly lengths: Int32Array;
  /** Minutes by destination * LEVELS + units in the buffer. */
  readonly levelTime: Float64Array;
  /** Unit-minutes in the buffer. */
  readonly area: Float64Array;
  private readonly since: Float64Array;
  private readonly buffer: Int32Array;
  private readonly reworkBuffer: Int32Array;

  constructor(plan: Plan, private readonly units: Units, private readonly clock: Clock) {
    const n = (this.count = plan.destinationCount);
    this.heads = new Int32Array(n * LISTS).fill(-1);
    this.tails = new Int32Array(n * LISTS).fill(-1);
    this.lengths = new Int32Array(n * LISTS);
    this.levelTime = new Float64Array(n * LEVELS);
    this.area = new Float64Array(n);
    this.since = new Float64Array(n);
    this.buffer = plan.destinationBuffer;
    this.reworkBuffer = plan.destinationReworkBuffer;
  }

  /** Units in the buffer. */
  waiting(id: number): number {
    return this.lengths[id] + this.lengths[this.count + id];
  }

  /** Whether anybody waits without room. */
  anyShut(id: number): boolean {
    return this.lengths[SHUT * this.count + id] + this.lengths[SHUT_REWORK * this.count + id] > 0;
  }

  /** Whether a unit that comes now may take a space (`rework` 1: it was sent back): there is one, and nobody waits for it already. */
  takesIn(id: number, rework: number): boolean {
    if (!this.hasSpace(id, rework)) return false;
    return this.reworkBuffer[id] < 0 ? !this.anyShut(id) : this.lengths[(SHUT + rework) * this.count + id] === 0;
  }

  /** Into the buffer. */
  join(id: number, unit: number): void {
    this.settle(id);
    this.append((QUEUE + this.units.first[unit]) * this.count + id, unit);
  }

  /** Out of the buffer: the first in order; -1 if it is empty. */
  take(id: number): number {
    const list = this.lengths[this.count + id] > 0 ? this.count + id : id;
    if (this.lengths[list] === 0) return -1;
    this.settle(id);
    return this.takeAfter(list, -1);
  }

  /** Out of the buffer: the first unit in order that is at `step`; -1 if there is none. */
  takeAtStep(id: number, step: number): number {
    let unit = this.takeFrom(REWORK_QUEUE * this.count + id, step, id);
    if (unit < 0) unit = this.takeFrom(QUEUE * this.count + id, step, id);
    return unit;
  }

  /** No room: the unit waits where it is. */
  joinShut(id: number, unit: number): void {
    this.append((SHUT + this.units.first[unit]) * this.count + id, unit);
  }

  /** The first of those without room (at `step` only, unless -1); it is taken out. -1 if there is none. */
  takeShut(id: number, step: number): number {
    const unit = this.takeFrom(SHUT_REWORK * this.count + id, step, -1);
    return unit >= 0 ? unit : this.takeFrom(SHUT * this.count + id, step, -1);
  }

  /** The first of those without room for whom the buffer now has a space; it is taken out. -1 if there is none. */
  takeShutThatFits(id: number): number {
    const rework = SHUT_REWORK * this.count + id, other = SHUT * this.count + id;
    if (this.lengths[rework] > 0 && this.hasSpace(id, 1)) return this.takeAfter(rework, -1);
    if (this.lengths[other] > 0 && this.hasSpace(id, 0)) return this.takeAfter(other, -1);
    return -1;
  }

  /** When the longest waiting unit in the buffer joined it; Infinity when it is empty. */
  oldest(id: number): number {
    const head = this.heads[id], rework = this.heads[this.count + id], { queuedAt } = this.units;
    return Math.min(head < 0 ? Infinity : queuedAt[head], rework < 0 ? Infinity : queuedAt[rework]);
  }

  /** Whether the unit is in the buffer of `id`. */
  holds(id: number, unit: number): boolean {
    for (const list of [QUEUE, REWORK_QUEUE]) for (let u = this.heads[list * this.count + id]; u >= 0; u = this.units.next[u]) if (u === unit) return true;
    return false;
  }

  settleAll(): void {
    for (let id = 0; id < this.count; id++) this.settle(id);
  }

  clear(): void {
    this.levelTime.fill(0);
    this.area.fill(0);
  }

  private hasSpace(id: number, rework: number): boolean {
    if (this.reworkBuffer[id] < 0) return this.lengths[id] + this.lengths[this.count + id] < this.buffer[id];
    return rework === 1 ? this.lengths[this.count + id] < this.reworkBuffer[id] : this.lengths[id] < this.buffer[id];
  }

  private append(list: number, unit: number): void {
    const { next, queuedAt, number } = this.units, tail = this.tails[list], now = this.clock.now;
    queuedAt[unit] = now;
    this.lengths[list]++;
    if (tail >= 0 && queuedAt[tail] === now && number[tail] > number[unit]) { this.insert(list, unit); return; }
    next[unit] = -1;
    this.tails[list] = unit;
    if (tail < 0) this.heads[list] = unit; else next[tail] = unit;
  }

  /** Ahead of those who came at this same instant and have a higher number. */
  private insert(list: number, unit: number): void {
    const { next, queuedAt, number } = this.units, now = queuedAt[unit];
    let before = -1, after = this.heads[list];
    while (queuedAt[after] < now || number[after] <= number[unit]) { before = after; after = next[after]; }
    next[unit] = after;
    if (before < 0) this.heads[list] = unit; else next[before] = unit;
  }

  private takeFrom(list: number, step: number, settled: number): number {
    const { next, step: stepOf } = this.units;
    for (let before = -1, unit = this.heads[list]; unit >= 0; before = unit, unit = next[unit]) {
      if (step >= 0 && stepOf[unit] !== step) continue;
      if (settled >= 0) this.settle(settled);
      return this.takeAfter(list, before);
    }
    return -1;
  }

  /** Takes out the unit that stands behind `before` (-1: the head). */
  private takeAfter(list: number, before: number): number {
    const { next } = this.units, unit = before < 0 ? this.heads[list] : next[before], after = next[unit];
    if (before < 0) this.heads[list] = after; else next[before] = after;
    if (after < 0) this.tails[list] = before;
    this.lengths[list]--;
    return unit;
  }

  private settle(id: number): void {
    const now = this.clock.now, elapsed = now - this.since[id], level = this.lengths[id] + this.lengths[this.count + id];
    if (elapsed === 0) return;
    this.since[id] = now;
    this.levelTime[id * LEVELS + (level < LEVELS ? level : LEVELS - 1)] += elapsed;
    if (level > 0) this.area[id] += level * elapsed;
  }
}

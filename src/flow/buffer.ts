import { UNLIMITED } from './model.js';
import type { Lane } from './lane.js';
import type { Station } from './station.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';

/** Levels told apart in the account of a buffer; the last one stands for that many and more. */
export const LEVELS = 64;

/** A list of units linked through `next`: first come first served, at one instant the lower build number ahead. */
export class Line {
  head: Unit | null = null;
  tail: Unit | null = null;
  length = 0;

  join(unit: Unit, now: number): void {
    const { tail } = this;
    unit.queuedAt = now;
    this.length++;
    if (tail !== null && tail.queuedAt === now && tail.number > unit.number) { this.insert(unit); return; }
    unit.next = null;
    this.tail = unit;
    if (tail === null) this.head = unit; else tail.next = unit;
  }

  take(): Unit {
    const unit = this.head!, { next } = unit;
    this.head = next;
    if (next === null) this.tail = null;
    this.length--;
    return unit;
  }

  /** The first unit at `step`; null if there is none. */
  takeAt(step: Step): Unit | null {
    for (let before: Unit | null = null, unit = this.head; unit !== null; before = unit, unit = unit.next) {
      if (unit.step !== step) continue;
      if (before === null) return this.take();
      before.next = unit.next;
      if (unit.next === null) this.tail = before;
      this.length--;
      return unit;
    }
    return null;
  }

  has(unit: Unit): boolean {
    for (let u = this.head; u !== null; u = u.next) if (u === unit) return true;
    return false;
  }

  /** Ahead of those who came at this same instant and have a higher number; there is one. */
  private insert(unit: Unit): void {
    let before: Unit | null = null, after = this.head!;
    while (after.queuedAt < unit.queuedAt || after.number <= unit.number) { before = after; after = after.next!; }
    unit.next = after;
    if (before === null) this.head = unit; else before.next = unit;
  }
}

/**
 * The room ahead of a station, or the bank of a lane: units in its spaces, and those that found no room and stay where
 * they are (blocking after service). Units sent back stand apart, and go first.
 */
export class Buffer {
  /** What it stands ahead of: a station, or a lane. */
  station: Station | null = null;
  lane: Lane | null = null;
  /** Waits to be looked at by `fill`. */
  listed = false;
  private readonly usual = new Line();
  private readonly sentBack = new Line();
  private readonly shut = new Line();
  private readonly shutSentBack = new Line();
  /** Units in the spaces. */
  waiting = 0;
  /** Units without room. */
  shutOut = 0;
  /** Minutes by units in the spaces, and unit-minutes. */
  readonly levelTime = new Float64Array(LEVELS);
  area = Number.NaN;
  private since = Number.NaN;

  /**
   * @param spaces most units, `UNLIMITED` for no limit
   * @param reworkSpaces spaces of their own for units sent back; -1: they share
   * @param location where its units count as work in process
   */
  constructor(readonly spaces: number, private readonly reworkSpaces: number, readonly location: number) {
    this.area = 0;
    this.since = 0;
  }

  /** Units sent back have no spaces of their own. */
  get isShared(): boolean {
    return this.reworkSpaces < 0;
  }

  get isUnlimited(): boolean {
    return this.spaces >= UNLIMITED;
  }

  /** Whether a unit that comes now may take a space: there is one, and nobody waits for it already. */
  takesIn(unit: Unit): boolean {
    if (this.reworkSpaces < 0) return this.waiting < this.spaces && this.shutOut === 0;
    return unit.first === 1 ? this.sentBack.length < this.reworkSpaces && this.shutSentBack.length === 0 : this.usual.length < this.spaces && this.shut.length === 0;
  }

  join(unit: Unit, now: number): void {
    this.settle(now);
    this.waiting++;
    if (unit.first === 1) this.sentBack.join(unit, now); else this.usual.join(unit, now);
  }

  /** The first in order; null if there is none. */
  first(): Unit | null {
    return this.sentBack.length > 0 ? this.sentBack.head : this.usual.head;
  }

  /** The first in order, out of the spaces; there must be one. */
  take(now: number): Unit {
    this.settle(now);
    this.waiting--;
    return this.sentBack.length > 0 ? this.sentBack.take() : this.usual.take();
  }

  /** The first in order that is at `step`, out of the spaces; null if there is none. */
  takeAt(step: Step, now: number): Unit | null {
    const unit = this.sentBack.takeAt(step) ?? this.usual.takeAt(step);
    if (unit === null) return null;
    this.settle(now);
    this.waiting--;
    return unit;
  }

  /** No room: the unit waits where it is. */
  joinShut(unit: Unit, now: number): void {
    this.shutOut++;
    if (unit.first === 1) this.shutSentBack.join(unit, now); else this.shut.join(unit, now);
  }

  /** The first of those without room; there must be one. */
  takeShut(): Unit {
    this.shutOut--;
    return this.shutSentBack.length > 0 ? this.shutSentBack.take() : this.shut.take();
  }

  /** The first of those without room that is at `step`; null if there is none. */
  takeShutAt(step: Step): Unit | null {
    const unit = this.shutSentBack.takeAt(step) ?? this.shut.takeAt(step);
    if (unit !== null) this.shutOut--;
    return unit;
  }

  /** The first of those without room for whom there is a space now; null if there is none. */
  takeShutThatFits(): Unit | null {
    if (this.shutOut === 0) return null;
    const shared = this.reworkSpaces < 0, room = shared ? this.waiting < this.spaces : this.usual.length < this.spaces;
    if (this.shutSentBack.length > 0 && (shared ? room : this.sentBack.length < this.reworkSpaces)) { this.shutOut--; return this.shutSentBack.take(); }
    if (this.shut.length > 0 && room) { this.shutOut--; return this.shut.take(); }
    return null;
  }

  /** When the longest waiting unit in the spaces joined; Infinity when there is none. */
  oldest(): number {
    return Math.min(this.usual.head?.queuedAt ?? Infinity, this.sentBack.head?.queuedAt ?? Infinity);
  }

  /** Whether the unit is in the spaces. */
  holds(unit: Unit): boolean {
    return this.usual.has(unit) || this.sentBack.has(unit);
  }

  settle(now: number): void {
    const elapsed = now - this.since, level = this.waiting;
    if (elapsed === 0) return;
    this.since = now;
    this.levelTime[level < LEVELS ? level : LEVELS - 1] += elapsed;
    this.area += level * elapsed;
  }

  clear(): void {
    this.levelTime.fill(0);
    this.area = 0;
  }
}

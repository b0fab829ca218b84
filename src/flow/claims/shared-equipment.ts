import type { Equipment } from '../floor/equipment.js';

/** What is kept of shared equipment beside the amount that is free. */
export class SharedEquipment {
  /** Those that can fail; empty where none does. */
  pieces: readonly Equipment[] = [];
  /** Requests that lack it now. */
  short = 0;
  /** Over the time observed: waits begun for want of it; minutes that requests lacked it. */
  waits = 0;
  waitMinutes = NaN;
  private since = NaN;

  constructor() {
    this.since = 0;
    this.clear();
  }

  /** A request begins to lack it (1), or does no longer (-1). */
  changeLacking(change: number, now: number): void {
    this.settle(now);
    this.short += change;
    if (change > 0) this.waits++;
  }

  settle(now: number): void {
    this.waitMinutes += this.short * (now - this.since);
    this.since = now;
  }

  clear(): void {
    this.waits = 0;
    this.waitMinutes = 0;
  }
}

import { ActivePeriods } from './active.js';
import type { Buffer } from './buffer.js';
import type { Calendar } from './calendar.js';
import { AT_BASE } from './states.js';
import type { Unit } from './unit.js';

export class Truck {
  phase = AT_BASE;
  /** Units loaded, in order; and how many are on board still: at the end of a trip those without room stay. */
  units: Unit[] = [];
  load = 0;
  askedDockAt = Number.NaN;
  constructor(readonly id: number, readonly lane: Lane) {}
}

/** Trucks between two sites, and the bank ahead of them. Its fixed columns are read from the model by `id`. */
export class Lane extends ActivePeriods {
  readonly trucks: Truck[] = [];
  ready: number;
  docksUsedFrom = 0;
  docksUsedTo = 0;
  /** A timer of it is in the event queue; when it comes, the next is set. */
  timerSet = false;
  /** A departure of the timetable is due now. */
  due = false;
  listed = false;
  /** Outages that keep trucks from departing. */
  closed = 0;
  /** Truck-minutes away from base. */
  busy = Number.NaN;
  private since = Number.NaN;
  trips = 0;
  carried = 0;
  waitMinutes = Number.NaN;

  constructor(readonly id: number, readonly name: string, readonly bank: Buffer, truckCount: number, calendar: Calendar | null, /** Work-in-process location of units in its trucks. */ readonly location: number) {
    super(calendar);
    this.ready = truckCount;
    this.since = 0;
    this.clear();
  }

  changeReady(change: number, now: number): void {
    this.settle(now);
    const before = this.ready;
    this.ready += change;
    if (this.ready === 0) this.beginActive(now);
    else if (before === 0) this.finishActive(now);
  }

  settle(now: number): void {
    this.busy += (this.trucks.length - this.ready) * (now - this.since);
    this.since = now;
  }

  clear(): void {
    this.busy = 0;
    this.trips = 0;
    this.carried = 0;
    this.waitMinutes = 0;
  }
}

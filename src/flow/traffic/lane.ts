import { ActivePeriods } from '../accounts/active-periods.js';
import { Buffer } from '../floor/buffer.js';
import { type Calendar, calendarAt } from '../floor/calendar.js';
import type { Memory } from '../floor/memory.js';
import { AT_BASE, DRIVING, LOADING, RETURNING, UNLOADING } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import type { Units } from '../floor/units.js';
import { type LaneColumns } from '../model/lanes.js';
import type { Model } from '../model/model.js';

export class Truck {
  phase = AT_BASE;
  /**
   * Units loaded, in order; and how many are on board still: at the end of a trip those without room stay.
   */
  units: Unit[] = [];
  load = 0;
  askedDockAt = NaN;
  constructor(
    readonly id: number,
    readonly lane: Lane,
  ) {}
}

/** Calendar in which a truck does what it does; -1 for none, or where it waits. */
export function calendarOf(
  { phase, lane: { id } }: Truck,
  { loadCalendar, driveCalendar, unloadCalendar }: LaneColumns,
): number {
  switch (phase) {
    case LOADING:
      return loadCalendar[id];
    case DRIVING:
    case RETURNING:
      return driveCalendar[id];
    case UNLOADING:
      return unloadCalendar[id];
    default:
      return -1;
  }
}

/**
 * Trucks between two sites, and the bank ahead of them. Its fixed columns are read from the model by `id`.
 */
export class Lane extends ActivePeriods {
  readonly trucks: Truck[] = [];
  /** Those that are there only from some day on, in order. */
  private comingTrucks: Truck[] = [];
  ready: number;
  docksUsedFrom = 0;
  docksUsedTo = 0;
  /** A timer of it is in the event queue; when it comes, the next is set. */
  timerSet = false;
  /** A departure of the timetable is due now. */
  isDepartureDue = false;
  listed = false;
  /** Outages that keep trucks from departing. */
  closed = 0;
  /** Trucks at the other end: at the gate, and those at a dock whose units wait for room. */
  private atGate = 0;
  private withoutRoom = 0;
  /** Truck-minutes: away and not blocked; blocked, that is away and waiting for room ahead; at base. */
  busy = NaN;
  blocked = NaN;
  atBase = NaN;
  private since = NaN;
  trips = 0;
  carried = 0;
  /** Of these in rework: sent back, or on their way again to the inspection that sent them. */
  carriedAgain = 0;
  waitMinutes = NaN;
  /** Most units in the bank at once, be it for no time: a full load is gone the moment it is there. */
  mostInBank = 0;
  /** Since the start of the run: a load was to go and no truck was there. */
  everLackedTruck = false;
  /** Units in an arrival bank without a limit, and their unit-minutes. */
  private arrived = 0;
  arrivedArea = NaN;

  constructor(
    readonly id: number,
    readonly name: string,
    readonly bank: Buffer,
    truckCount: number,
    calendar: Calendar | null,
    /** Work-in-process location of units in its trucks. */ readonly location: number,
    /** And of those that have arrived. */ readonly locationTo: number,
  ) {
    super(calendar);
    this.ready = truckCount;
    this.since = 0;
    this.clear(0);
  }

  /** Trucks come to base or leave it, the same at the gate, begin or end to wait for room at a dock. */
  change(ready: number, atGate: number, withoutRoom: number, now: number): void {
    this.settle(now);
    const before = this.waiting;
    this.ready += ready;
    this.atGate += atGate;
    this.withoutRoom += withoutRoom;
    const { waiting } = this;
    if (waiting === 0 && before > 0) this.beginActive(now);
    else if (waiting > 0 && before === 0) this.finishActive(now);
  }

  /** At the start of a run: only so many trucks are there. All must be at base. */
  withhold(count: number): void {
    this.comingTrucks = this.trucks.splice(count);
    this.ready = count;
  }

  /** Trucks to come are there, at base, so that the number is `count`. */
  bring(count: number, now: number): void {
    this.settle(now);
    const brought = this.comingTrucks.splice(0, count - this.trucks.length);
    this.trucks.push(...brought);
    this.change(brought.length, 0, 0, now);
  }

  /** Units come to stand in the arrival bank without a limit, or leave it. */
  changeArrived(by: number, now: number): void {
    this.settle(now);
    this.arrived += by;
  }

  /** Trucks that wait for room ahead: those at a dock, and as many at the gate as would have these docks. */
  get blockedNow(): number {
    return this.withoutRoom + Math.min(this.atGate, this.withoutRoom);
  }

  settle(now: number): void {
    const elapsed = now - this.since,
      blocked = this.blockedNow;
    this.busy += (this.trucks.length - this.ready - blocked) * elapsed;
    this.blocked += blocked * elapsed;
    this.atBase += this.ready * elapsed;
    this.arrivedArea += this.arrived * elapsed;
    this.since = now;
  }

  /** Trucks that wait, for a load or for room: while there is none the lane is active. */
  private get waiting(): number {
    return this.ready + this.blockedNow;
  }

  /** Observation starts afresh. */
  clear(now: number): void {
    this.clearActive(now);
    this.bank.clear();
    this.busy = 0;
    this.blocked = 0;
    this.atBase = 0;
    this.trips = 0;
    this.carried = 0;
    this.carriedAgain = 0;
    this.waitMinutes = 0;
    this.arrivedArea = 0;
  }
}

/** Builds all lanes with their banks and trucks; trucks are numbered through in `trucks`. */
export function buildLanes(
  { lanes: columns, siteNames, stations }: Model,
  calendars: readonly Calendar[],
  trucks: Truck[],
  memory: Memory,
  units: Units,
): Lane[] {
  return columns.names.map((name, l) => {
    const bank = new Buffer(stations.count + l, columns.bank[l], -1, columns.from[l], memory, units),
      calendar = calendarAt(calendars, columns.driveCalendar[l]),
      lane = new Lane(l, name, bank, columns.trucks[l], calendar, siteNames.length + l, columns.to[l]);
    bank.lane = lane;
    for (let n = 0; n < columns.trucks[l]; n++) {
      const truck = new Truck(trucks.length, lane);
      trucks.push(truck);
      lane.trucks.push(truck);
    }
    return lane;
  });
}

import { Sampler } from '../random/sampler.js';
import { ActivePeriods } from './active.js';
import { Clock } from './clock.js';
import { Destinations } from './destinations.js';
import { Locations } from './locations.js';
import { Places } from './places.js';
import { prepare, type Plan } from './plan.js';
import { EventQueue } from './queue.js';
import { Tally } from './tally.js';
import { Units } from './units.js';
import { Attention, Worklist } from './worklist.js';
import { RELEASE_TIMES, UNLIMITED, type Model } from './model.js';

/** Everything one replication changes. The rooms beside this file each hold one rule that works on it. */
export class Run {
  readonly model: Model;
  readonly clock = new Clock();
  readonly queue = new EventQueue(256);
  readonly sampler: Sampler;
  readonly units: Units;
  readonly places: Places;
  readonly destinations: Destinations;
  readonly locations: Locations;
  tally: Tally;
  /** Start of observation; present bucket of the series, -1 before the first; units shipped or scrapped since the start of the run. */
  observedFrom = Number.NaN;
  bucket = -1;
  bucketSince = Number.NaN;
  readonly areaAtBucket: Float64Array;
  gone = 0;
  /** How it ended, see `engine.ts`. */
  outcome = 0;

  /** Head of the list of free places of a station. */
  readonly freePlace: Int32Array;

  // Resources: free amount; head and size of the list of places that wait, by pool; a crew's engaged person-minutes.
  readonly free: Int32Array;
  readonly poolHead: Int32Array;
  readonly poolWaiting: Int32Array;
  /** Scan number at which an earlier request lacked the resource. */
  readonly scarce: Int32Array;
  scan = 0;
  readonly engaged: Float64Array;
  readonly engagedSince: Float64Array;
  readonly crewActive: ActivePeriods;
  /** Stock of a feeder: time integral and minutes without stock. */
  readonly stockArea: Float64Array;
  readonly stockOut: Float64Array;

  // Lots, by station.
  readonly lotOpen: Uint8Array;
  /** Units that gather; units of a started lot not yet gone. */
  readonly lotGathered: Int32Array;
  readonly lotInside: Int32Array;
  readonly lotStep: Int32Array;
  readonly lotLead: Int32Array;
  readonly lotDue: Float64Array;
  /** The due time for which a timer is in the event queue. */
  readonly lotTimer: Float64Array;

  // Trucks: one id over all lanes.
  readonly firstTruck: Int32Array;
  readonly truckLane: Int32Array;
  readonly truckPhase: Int8Array;
  readonly truckLoad: Int32Array;
  /** First unit on board and link by truck while under way. */
  readonly truckHead: Int32Array;
  readonly truckAskedDock: Float64Array;
  readonly readyTrucks: Int32Array;
  readonly docksUsedFrom: Int32Array;
  readonly docksUsedTo: Int32Array;
  /** Timetable: next departure to look at, and whether one is due; a departure already in the event queue. */
  readonly laneTimer: Float64Array;
  readonly laneDue: Uint8Array;
  readonly laneActive: ActivePeriods;
  /** Truck-minutes away from base. */
  readonly truckBusy: Float64Array;
  readonly truckBusySince: Float64Array;

  // Sampling counters by step, build numbers by route.
  readonly sampleCount: Int32Array;
  readonly built: Int32Array;
  /** Sub-assemblies in the making, by route. */
  readonly making: Int32Array;
  /** Time of shipping by build number - 1, NaN before; empty for a run without a quantity. */
  readonly shippedAt: Float64Array;
  readonly enteredAt: Float64Array;
  /** Options by build number - 1. */
  readonly optionsOf: Uint8Array;

  // What has to be looked at before the next event.
  readonly attention = new Attention();
  readonly toFill: Worklist;
  readonly toStartLot: Worklist;
  readonly toServeLane: Worklist;
  readonly toMatch: Worklist;
  readonly toFeed: Worklist;
  /** Places whose needs were met, last in first out. */
  readonly granted: Int32Array;
  grantedCount = 0;
  /** 1: the unit that stood outside for the saturated source has entered, the next one is to be made. */
  sourceEntered = 0;

  constructor(readonly plan: Plan, seed: string, replication: number) {
    const model = (this.model = plan.model), { stations, resources, lanes } = model;
    this.observedFrom = 0;
    this.bucketSince = 0;
    this.sampler = new Sampler(model.draws, seed, replication);
    this.units = Units.for(plan);
    this.places = new Places(plan, this.clock);
    this.destinations = new Destinations(plan, this.units, this.clock);
    this.locations = new Locations(plan, this.clock);
    this.tally = new Tally(plan);
    this.areaAtBucket = new Float64Array(plan.locationCount);

    this.freePlace = new Int32Array(stations.count).fill(-1);
    for (let s = 0; s < stations.count; s++) {
      for (let p = plan.firstPlace[s + 1] - 1; p >= plan.firstPlace[s]; p--) { this.places.nextFree[p] = this.freePlace[s]; this.freePlace[s] = p; }
    }
    this.free = Int32Array.from(resources.amount);
    this.poolHead = new Int32Array(plan.poolCount).fill(-1);
    this.poolWaiting = new Int32Array(plan.poolCount);
    this.scarce = new Int32Array(resources.count);
    this.engaged = new Float64Array(resources.crews);
    this.engagedSince = new Float64Array(resources.count);
    this.crewActive = new ActivePeriods(resources.crews, plan.calendars, resources.calendar, this.clock);
    this.stockArea = new Float64Array(resources.count);
    this.stockOut = new Float64Array(resources.count);

    this.lotOpen = new Uint8Array(stations.count).fill(1);
    this.lotGathered = new Int32Array(stations.count);
    this.lotInside = new Int32Array(stations.count);
    this.lotStep = new Int32Array(stations.count).fill(-1);
    this.lotLead = new Int32Array(stations.count).fill(-1);
    this.lotTimer = new Float64Array(stations.count).fill(-1);
    this.lotDue = new Float64Array(stations.count);

    this.firstTruck = new Int32Array(lanes.count + 1);
    for (let l = 0; l < lanes.count; l++) this.firstTruck[l + 1] = this.firstTruck[l] + lanes.trucks[l];
    const trucks = this.firstTruck[lanes.count];
    this.truckLane = new Int32Array(trucks);
    for (let l = 0; l < lanes.count; l++) this.truckLane.fill(l, this.firstTruck[l], this.firstTruck[l + 1]);
    this.truckPhase = new Int8Array(trucks);
    this.truckLoad = new Int32Array(trucks);
    this.truckHead = new Int32Array(trucks).fill(-1);
    this.truckAskedDock = new Float64Array(trucks);
    this.readyTrucks = Int32Array.from(lanes.trucks);
    this.docksUsedFrom = new Int32Array(lanes.count);
    this.docksUsedTo = new Int32Array(lanes.count);
    this.laneTimer = new Float64Array(lanes.count).fill(-1);
    this.laneDue = new Uint8Array(lanes.count);
    this.laneActive = new ActivePeriods(lanes.count, plan.calendars, lanes.driveCalendar, this.clock);
    this.truckBusy = new Float64Array(lanes.count);
    this.truckBusySince = new Float64Array(lanes.count);

    this.sampleCount = new Int32Array(model.steps.count);
    this.making = new Int32Array(model.routes.count);
    this.built = new Int32Array(model.routes.count);
    const { programme } = model;
    const known = programme.release === RELEASE_TIMES ? programme.times.length : programme.quantity < UNLIMITED ? programme.quantity : 0;
    this.shippedAt = new Float64Array(known).fill(NaN);
    this.enteredAt = new Float64Array(known).fill(NaN);
    this.optionsOf = new Uint8Array(known * model.options.length);

    this.toFill = new Worklist(plan.destinationCount, this.attention);
    this.toStartLot = new Worklist(stations.count, this.attention);
    this.toServeLane = new Worklist(lanes.count, this.attention);
    this.toMatch = new Worklist(plan.poolCount, this.attention);
    this.toFeed = new Worklist(model.routes.count, this.attention);
    this.granted = new Int32Array(plan.placeStation.length);
  }

  static of(model: Model, seed: string, replication: number): Run {
    return new Run(prepare(model), seed, replication);
  }

  get now(): number {
    return this.clock.now;
  }

  /** The time at which `minutes` of work in a calendar have passed; -1 is always. */
  after(calendar: number, minutes: number): number {
    return calendar < 0 ? this.now + minutes : this.plan.calendars[calendar].advance(this.now, minutes);
  }

  /** Minutes of work in [from, to]. */
  worked(calendar: number, from: number, to: number): number {
    return calendar < 0 ? to - from : this.plan.calendars[calendar].worked(from, to);
  }
}

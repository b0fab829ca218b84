import { Sampler } from '../random/sampler.js';
import { BottleneckWatch } from './accounts/bottleneck-watch.js';
import { ChangeoverLog } from './accounts/changeover-log.js';
import { Locations } from './accounts/locations.js';
import { isSteady, StartUp } from './accounts/start-up.js';
import { Tally } from './accounts/tally.js';
import type { Buffer } from './floor/buffer.js';
import { Memory } from './floor/memory.js';
import type { Place } from './floor/place.js';
import type { Unit } from './floor/unit.js';
import { Units } from './floor/units.js';
import { NO_STANDSTILL, type Standstill } from './gridlock/stuck.js';
import { buildCrewShifts, type CrewShifts } from './interruptions/crew.js';
import { Disruptions } from './interruptions/disruption.js';
import { OvertimeRule, type RuledCalendar, ruledCalendars } from './interruptions/overtime.js';
import { type Model, UNLIMITED } from './model/model.js';
import { hasDueDates } from './model/orders.js';
import { RELEASE_TIMES } from './model/programme.js';
import type { Plan } from './plan.js';
import { EventQueue } from './queue.js';
import { buildShop, type Shop } from './shop.js';
import type { Verdict } from './tasks/inspections.js';
import { Worklists } from './worklists.js';

/** Whoever writes down what a look after the event would not see. */
export interface Witness {
  /** An inspection, a test or both have found what row `find` says; `again`: it was known. */
  found(unit: Unit, find: number, again: boolean): void;
  /** The step of the unit is over, but for repair work. */
  judged(unit: Unit, verdict: Verdict): void;
}

/** Everything one replication changes. The rooms below hold the rules that work on it. */
export class Run extends Worklists {
  /** As it is at present; `whole` as it is when all changes are there: with the most of everything. */
  model: Model;
  readonly whole: Model;
  readonly memory: Memory;
  readonly queue: EventQueue;
  readonly sampler: Sampler;
  readonly shop: Shop;
  /** By id, for the inner loop: places; buffers of stations, then banks of lanes. */
  readonly places: readonly Place[];
  readonly buffers: readonly Buffer[];
  readonly units: Units;
  readonly locations: Locations;
  tally: Tally;
  /** Kept in the first replication alone; null in the others. */
  readonly changeoverLog: ChangeoverLog | null;
  readonly disruptions: Disruptions;
  /** Null unless the replication is watched closely; the start-up of steady-state runs alone. */
  readonly bottleneckWatch: BottleneckWatch | null;
  readonly startUp: StartUp | null;

  /**
   * Start of observation; present bucket of the series, -1 before the first, and its start; units shipped or
   * scrapped since the start of the run.
   */
  observedFrom = NaN;
  /** Changes of the model that have come, and when the next one comes; Infinity: none in this run. */
  stage = 0;
  changesAt = Infinity;
  bucket = -1;
  bucketSince = NaN;
  readonly areaAtBucket: Float64Array;
  readonly engagedAtBucket: Float64Array;
  gone = 0;
  /** Crews whose number changes; overtime rules, and the calendars that these decide on. */
  readonly crewShifts: readonly CrewShifts[];
  readonly overtimeRules: readonly OvertimeRule[];
  readonly ruledCalendars: readonly RuledCalendar[];
  /** Events in the queue that set nothing going by themselves: changes of shift, looks at rules. */
  idleEvents = 0;
  /** How it ended, see `engine.ts`. */
  outcome = 0;
  standstill: Standstill = NO_STANDSTILL;
  /** Events of supplies in the queue. */
  supplyEvents = 0;
  /** Units are set where they stand at the start. */
  isOpening = false;
  /** Number of the present scan of a pool. */
  scan = 0;
  /** Is told what inspections find; null unless a floor log is kept. */
  witness: Witness | null = null;

  /**
   * By build number - 1: time of entry and of shipping, NaN before; option values. Empty for a run without a
   * quantity.
   */
  readonly enteredAt: Float64Array;
  readonly shippedAt: Float64Array;
  readonly optionsOf: Uint8Array;
  /**
   * By build number - 1: when it is due, Infinity where it is not known or there is none; empty where nothing
   * is due.
   */
  readonly dueAt: Float64Array;

  constructor(plan: Plan, seed: string, replication: number) {
    super();
    const model = (this.model = this.whole = plan.model),
      { programme } = model;
    this.observedFrom = 0;
    this.bucketSince = 0;
    this.sampler = new Sampler(model.draws, seed, replication, model.later.length > 0);
    this.ruledCalendars = ruledCalendars(model);
    const calendars = plan.calendars.map(
      (calendar, id) => this.ruledCalendars.find((each) => each.id === id)?.calendar ?? calendar,
    );
    this.memory = new Memory(model, calendars);
    this.units = new Units(this.memory, model);
    this.shop = buildShop({ model, calendars }, this.memory, this.units);
    this.crewShifts = buildCrewShifts(model, this.shop.resources, calendars, this.sampler);
    this.overtimeRules = model.overtime.map((columns, id) => new OvertimeRule(id, columns));
    this.places = this.shop.places;
    this.buffers = [
      ...this.shop.stations.map(({ buffer }) => buffer),
      ...this.shop.lanes.map(({ bank }) => bank),
    ];
    this.disruptions = new Disruptions(model, this.shop.equipment);
    const { inspections, holds, places, trucks, lanes, stations, carriers } = this.shop;
    // In the order of the kinds of events in `states.ts`.
    this.queue = new EventQueue([
      places.length,
      trucks.length,
      1, // release
      lanes.length,
      stations.length,
      carriers.length,
      2 * this.shop.supplies.length, // lots of supplies, then dates of delivery plans
      this.crewShifts.length + this.overtimeRules.length, // shift changes, then looks at overtime rules
      this.disruptions.sourceCount, // failures, outages
      this.shop.pulseLines.length, // pulses
    ]);
    const locations = model.siteNames.length + model.lanes.count;
    this.locations = new Locations(locations);
    this.areaAtBucket = new Float64Array(locations);
    this.engagedAtBucket = new Float64Array(model.resources.crews);
    this.tally = new Tally(model, inspections.length, holds.length);
    this.changeoverLog = replication === 1 ? new ChangeoverLog(model) : null;
    const known =
      programme.release === RELEASE_TIMES
        ? Math.max(programme.times.length, programme.orders.count)
        : programme.quantity < UNLIMITED
          ? programme.quantity
          : 0;
    this.shippedAt = new Float64Array(known).fill(NaN);
    this.enteredAt = new Float64Array(known).fill(NaN);
    this.optionsOf = new Uint8Array(known * model.options.length);
    this.dueAt = new Float64Array(hasDueDates(model) ? known : 0).fill(Infinity);
    this.dueAt.set(programme.orders.dueAt.subarray(0, this.dueAt.length));
    const isWatched = plan.closely > 0 && replication <= plan.closely;
    this.bottleneckWatch = isWatched ? new BottleneckWatch(model, this.memory, this.shop) : null;
    this.startUp = isWatched && isSteady(model) ? new StartUp(model, this.locations) : null;
  }

  get now(): number {
    return this.memory.now;
  }
}

import type { Plan } from './plan.js';
import { IS_ACTIVE, OFF_SHIFT, STARVED, STATE_COUNT } from './states.js';
import type { Calendar } from './calendar.js';
import { ActivePeriods } from './active.js';
import type { Clock } from './clock.js';

/**
 * Places and the ledger of their time. A place's time in a state is added to its station's account when the state ends;
 * what falls outside the calendar that governs the state goes to "off shift".
 */
export class Places {
  readonly count: number;
  readonly station: Int32Array;
  /** Unit that stands there; -1 free. */
  readonly unit: Int32Array;
  readonly phase: Int8Array;
  readonly pass: Int32Array;
  readonly nextFree: Int32Array;
  /** Value of the station's changeover option last worked on; -1 none yet. */
  readonly lastValue: Int32Array;
  readonly state: Int8Array;
  readonly since: Float64Array;
  /** Calendar that governs the present state; -1 always. */
  readonly calendar: Int32Array;
  /** Work of the present or coming phase, minutes. */
  readonly minutes: Float64Array;
  /** Step the unit is sent back to after the repair; -1. */
  readonly sendTo: Int32Array;
  /** 1: holds the crew of its step. */
  readonly holdsCrew: Uint8Array;
  /** Wait for needs: link and time of asking. */
  readonly nextWaiting: Int32Array;
  readonly askedAt: Float64Array;

  /** Minutes by state * stations + station. */
  readonly account: Float64Array;
  /** Places in an active state, by station. */
  private readonly activeCount: Int32Array;
  readonly active: ActivePeriods;
  private readonly stationCalendar: Int32Array;
  private readonly stationPlaces: Int32Array;
  private readonly stationCount: number;
  private readonly calendars: readonly Calendar[];

  constructor(plan: Plan, private readonly clock: Clock) {
    const count = (this.count = plan.placeStation.length);
    this.station = plan.placeStation;
    this.unit = new Int32Array(count).fill(-1);
    this.phase = new Int8Array(count);
    this.pass = new Int32Array(count);
    this.nextFree = new Int32Array(count);
    this.lastValue = new Int32Array(count).fill(-1);
    this.state = new Int8Array(count).fill(STARVED);
    this.since = new Float64Array(count);
    this.stationCalendar = plan.model.stations.calendar;
    this.calendar = Int32Array.from(plan.placeStation, (station) => this.stationCalendar[station]);
    this.minutes = new Float64Array(count);
    this.sendTo = new Int32Array(count).fill(-1);
    this.holdsCrew = new Uint8Array(count);
    this.nextWaiting = new Int32Array(count).fill(-1);
    this.askedAt = new Float64Array(count);
    this.stationCount = plan.stationCount;
    this.stationPlaces = plan.model.stations.places;
    this.account = new Float64Array(STATE_COUNT * plan.stationCount);
    this.activeCount = new Int32Array(plan.stationCount);
    this.calendars = plan.calendars;
    this.active = new ActivePeriods(plan.stationCount, plan.calendars, this.stationCalendar, clock);
  }

  /** The place goes into a state; people's states take the calendar of the step, `calendar`. */
  enter(place: number, state: number, calendar: number): void {
    const old = this.state[place];
    if (old === state && this.calendar[place] === calendar) return;
    const station = this.station[place];
    this.settle(place, station, old);
    this.state[place] = state;
    this.calendar[place] = calendar;
    const change = IS_ACTIVE[state] - IS_ACTIVE[old];
    if (change !== 0) {
      const places = this.stationPlaces[station];
      if (change > 0) { if (++this.activeCount[station] === places) this.active.begin(station); }
      else if (this.activeCount[station]-- === places) this.active.finish(station);
    }
  }

  /** A state without people of a step: the station's calendar governs it. */
  enterIdle(place: number, state: number): void {
    this.enter(place, state, this.stationCalendar[this.station[place]]);
  }

  /** Brings all accounts up to now without a change of state. */
  settleAll(): void {
    for (let place = 0; place < this.count; place++) this.settle(place, this.station[place], this.state[place]);
  }

  private settle(place: number, station: number, state: number): void {
    const now = this.clock.now, since = this.since[place], elapsed = now - since, calendar = this.calendar[place], account = this.account;
    this.since[place] = now;
    if (calendar < 0) { account[state * this.stationCount + station] += elapsed; return; }
    const worked = this.calendars[calendar].worked(since, now);
    account[state * this.stationCount + station] += worked;
    account[OFF_SHIFT * this.stationCount + station] += elapsed - worked;
  }
}


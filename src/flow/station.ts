import { ActivePeriods } from './active.js';
import type { Buffer } from './buffer.js';
import type { Calendar } from './calendar.js';
import { isActive, OFF_SHIFT, STARVED, STATE_COUNT, WAIT_NEEDS } from './states.js';
import type { Step } from './step.js';
import type { Unit } from './unit.js';

/** A spot in which one unit stands, and the ledger of its time. */
export class Place {
  unit: Unit | null = null;
  phase = WAIT_NEEDS;
  /** Passes done of the present step. */
  pass = 0;
  /** Work of the present or coming phase. */
  minutes = Number.NaN;
  nextFree: Place | null = null;
  /** Value of the station's changeover option last worked on; -1 none yet. */
  lastValue = -1;
  /** Where the unit is sent back to after the repair. */
  sendTo: Step | null = null;
  holdsCrew = false;
  /** Behind it among those that wait for the same needs, and when it asked. */
  nextWaiting: Place | null = null;
  askedAt = Number.NaN;

  state = STARVED;
  private since = Number.NaN;
  /** Calendar that governs the present state; null is always. */
  private calendar: Calendar | null;

  constructor(readonly id: number, readonly station: Station) {
    this.calendar = station.calendar;
    this.since = 0;
  }

  /** Goes into a state at `now`. What falls outside `calendar` (null: nothing) is off shift. */
  enter(state: number, calendar: Calendar | null, now: number): void {
    const old = this.state;
    if (old === state && this.calendar === calendar) return;
    this.settle(now);
    this.state = state;
    this.calendar = calendar;
    const active = isActive(state);
    if (active !== isActive(old)) this.station.countActive(active, now);
  }

  /** A state without people of a step: the station's calendar governs it. */
  idle(state: number, now: number): void {
    this.enter(state, this.station.calendar, now);
  }

  /** The same state as another place. */
  mirror(lead: Place, now: number): void {
    this.enter(lead.state, lead.calendar, now);
  }

  /** Books the time of the present state up to `now`. */
  settle(now: number): void {
    const elapsed = now - this.since, { account } = this.station;
    if (this.calendar === null) account[this.state] += elapsed;
    else {
      const worked = this.calendar.worked(this.since, now);
      account[this.state] += worked;
      account[OFF_SHIFT] += elapsed - worked;
    }
    this.since = now;
  }
}

/** A station: places, the buffer ahead, and what a lot needs. */
export class Station {
  readonly places: Place[] = [];
  freePlace: Place | null = null;
  /** Minutes by state, over all places. */
  readonly account = new Float64Array(STATE_COUNT);
  readonly active: ActivePeriods;
  private activePlaces = 0;

  // Lots: whether one gathers (it does not while one is inside), its units, its step, its first place, when it is due.
  lotOpen = true;
  lotGathered = 0;
  lotInside = 0;
  lotStep: Step | null = null;
  lotLead: Place | null = null;
  lotDue = Number.NaN;
  /** The due time for which a timer is in the event queue. */
  lotTimer = Number.NaN;
  lotListed = false;

  constructor(
    readonly id: number, readonly name: string, readonly buffer: Buffer, readonly calendar: Calendar | null,
    readonly changeoverOption: number, readonly changeoverDraw: number,
    readonly lotLeast: number, readonly lotMost: number, readonly lotWait: number,
  ) {
    this.active = new ActivePeriods(calendar);
  }

  countActive(more: boolean, now: number): void {
    if (!more) { if (this.activePlaces-- === this.places.length) this.active.finish(now); }
    else if (++this.activePlaces === this.places.length) this.active.begin(now);
  }
}

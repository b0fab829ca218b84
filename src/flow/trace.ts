import { simulate } from './engine.js';
import { P_CALENDAR } from './floor/memory.js';
import { DRIVING, LOADING, OFF_SHIFT, STATE_COUNT, UNLOADING, WAIT_DOCK } from './floor/states.js';
import type { Unit } from './floor/unit.js';
import type { Plan } from './plan.js';
import type { Run } from './run.js';
import { calendarOf } from './traffic/lane.js';

/** What a unit does that stands in no place, beside the states of places in `states.ts`. */
export const IN_BUFFER = STATE_COUNT,
  IN_BANK = STATE_COUNT + 1,
  ON_LOADING = STATE_COUNT + 2,
  ON_ROAD = STATE_COUNT + 3,
  AT_DOCK = STATE_COUNT + 4,
  ON_UNLOADING = STATE_COUNT + 5,
  IN_TRUCK = STATE_COUNT + 6;

/** One part of a unit's way, minutes; the next part begins where it ends. */
export interface TracePart extends Situation {
  readonly from: number;
  readonly to: number;
}

interface Situation {
  /** Step that is done, or that the unit waits for. */
  readonly step: number;
  /** Station in a place of which it stands, or lane in a truck of which it is; -1 none. */
  readonly station: number;
  readonly lane: number;
  /** State of the place, or one of the above. */
  readonly state: number;
  /** Phase of the task at the place, -1 none. */
  readonly phase: number;
}

/**
 * Runs a replication again and writes down the way of one unit from its entry to its shipping, or to the end
 * of the run; of an order built again, that of its last unit. It looks after each event, so the run is the
 * same to the last bit, and the event loop has nothing to ask for it. What falls outside the calendar that
 * governs the state of a place, as in its account, or the truck, is off shift. Empty if the unit did not
 * enter.
 */
export function traceUnit(plan: Plan, seed: string, replication: number, number: number): TracePart[] {
  let parts: TracePart[] = [],
    unit: Unit | null = null,
    born = NaN,
    since = NaN,
    now: Situation | null = null,
    calendar = -1;
  const close = (run: Run): void => {
    if (now !== null && run.now > since) parts.push(...onShift(run, now, calendar, since, run.now));
    now = null;
  };
  const look = (run: Run): void => {
    if (unit !== null && !(isInside(unit, number) && unit.born === born)) {
      close(run);
      unit = null;
    }
    if (unit === null) {
      unit = run.units.all.find((each) => isInside(each, number)) ?? null;
      if (unit === null) return;
      parts = [];
      born = unit.born;
    }
    const next = situation(unit),
      governs = governedBy(run, unit);
    if (
      now !== null &&
      next.step === now.step &&
      next.station === now.station &&
      next.lane === now.lane &&
      next.state === now.state &&
      next.phase === now.phase &&
      governs === calendar
    )
      return;
    close(run);
    now = next;
    calendar = governs;
    since = run.now;
  };
  const run = simulate(plan, seed, replication, {
    watch: () => {
      [parts, unit, now] = [[], null, null];
      return look;
    },
  });
  // The last event is not followed by another look.
  close(run);
  return parts;
}

const isInside = (unit: Unit, number: number): boolean =>
  unit.alive && unit.number === number && unit.location >= 0 && unit.step.route.isMain;

function situation({ step, place, truck }: Unit): Situation {
  if (place !== null)
    return { step: step.id, station: place.station.id, lane: -1, state: place.state, phase: place.phase };
  if (truck !== null)
    return { step: step.id, station: -1, lane: truck.lane.id, state: aboard(truck.phase), phase: -1 };
  return { step: step.id, station: -1, lane: -1, state: step.lane === null ? IN_BUFFER : IN_BANK, phase: -1 };
}

function aboard(phase: number): number {
  switch (phase) {
    case LOADING:
      return ON_LOADING;
    case DRIVING:
      return ON_ROAD;
    case WAIT_DOCK:
      return AT_DOCK;
    case UNLOADING:
      return ON_UNLOADING;
    default:
      return IN_TRUCK;
  }
}

/** The calendar that governs the state of its place, or of the truck that it is in. */
const governedBy = ({ memory, model: { lanes } }: Run, { place, truck }: Unit): number =>
  place !== null ? memory.ints[place.at + P_CALENDAR] : truck !== null ? calendarOf(truck, lanes) : -1;

/** A time in one situation, cut at the windows of a calendar. */
function onShift({ memory }: Run, now: Situation, calendar: number, from: number, to: number): TracePart[] {
  if (calendar < 0) return [{ ...now, from, to }];
  const { start, end } = memory.calendars[calendar],
    off: Situation = { ...now, state: OFF_SHIFT },
    parts: TracePart[] = [];
  let at = from;
  const goTo = (time: number, as: Situation): void => {
    const until = Math.min(time, to);
    if (until > at) parts.push({ ...as, from: at, to: until });
    at = Math.max(at, until);
  };
  for (let w = 0; w < start.length && at < to; w++) {
    goTo(start[w], off);
    goTo(end[w], now);
  }
  goTo(to, off);
  return parts;
}

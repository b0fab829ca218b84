import { letGo } from '../claims/carriers.js';
import {
  AT_BASE,
  DRIVING,
  EMPTYING,
  LANE_TIMER,
  LOADING,
  RETURNING,
  TRUCK,
  UNLOADING,
  WAIT_DOCK,
} from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import { LEAVE_FULL, LEAVE_TIMETABLE } from '../model/lanes.js';
import { countWhere } from '../model/time.js';
import type { Run } from '../run.js';
import { finishRoute } from './feeders.js';
import type { Lane, Truck } from './lane.js';
import { calendarOf } from './lane.js';
import { goIn } from './move.js';
import { stepAfter } from './routes.js';

/**
 * Rule 11. Units wait in the bank of a lane. A truck that is ready and has a dock loads by the lane's rule,
 * drives, waits for a dock, unloads, and returns when the last unit has found room at its next station; until
 * then it is blocked. Behind an arrival bank without a limit it never is.
 */

/** Does what the lane can do now: trucks emptied leave, trucks at the gate get a dock, trucks ready load. */
export function serve(run: Run, lane: Lane): void {
  const { docksFrom, docksTo, unloadDraw, returnDraw } = run.model.lanes,
    { id, bank } = lane;
  lane.listed = false;
  if (bank.waiting > lane.mostInBank) lane.mostInBank = bank.waiting;
  for (const truck of lane.trucks)
    if (truck.phase === EMPTYING && truck.load === 0) {
      lane.docksUsedTo--;
      go(run, truck, RETURNING, returnDraw);
    }
  for (
    let truck = firstAtGate(lane);
    truck !== null && lane.docksUsedTo < docksTo[id];
    truck = firstAtGate(lane)
  ) {
    lane.docksUsedTo++;
    lane.change(0, -1, 0, run.now);
    go(run, truck, UNLOADING, unloadDraw);
  }
  while (lane.closed === 0 && lane.docksUsedFrom < docksFrom[id] && mayLoad(run, lane)) {
    if (lane.ready === 0) {
      lane.everLackedTruck = true;
      break;
    }
    load(run, lane);
  }
  scheduleTimer(run, lane);
}

/** What the truck was doing is over. */
export function truckEvent(run: Run, truck: Truck): void {
  const { lane } = truck;
  switch (truck.phase) {
    case LOADING:
      lane.docksUsedFrom--;
      go(run, truck, DRIVING, run.model.lanes.driveDraw);
      break;
    case DRIVING:
      truck.phase = WAIT_DOCK;
      truck.askedDockAt = run.now;
      lane.change(0, 1, 0, run.now);
      break;
    case UNLOADING:
      truck.phase = EMPTYING;
      unload(run, truck);
      break;
    default:
      truck.phase = AT_BASE;
      lane.change(1, 0, 0, run.now);
  }
  run.listServe(lane);
}

/** A wait or a timetable has come to its time; a departure without a truck or without a load is missed. */
export function laneTimer(run: Run, lane: Lane): void {
  lane.timerSet = false;
  lane.isDepartureDue = true;
  serve(run, lane);
  lane.isDepartureDue = false;
}

/** Nothing more can come: a ready truck leaves with what waits. True if there was one. */
export function leaveIncomplete(run: Run, lane: Lane): boolean {
  if (lane.closed > 0 || lane.docksUsedFrom >= run.model.lanes.docksFrom[lane.id] || lane.bank.waiting === 0)
    return false;
  if (lane.ready === 0) {
    lane.everLackedTruck = true;
    return false;
  }
  load(run, lane);
  return true;
}

function mayLoad(run: Run, { id, bank, isDepartureDue }: Lane): boolean {
  const { rule, capacity, wait } = run.model.lanes;
  if (rule[id] === LEAVE_TIMETABLE) return isDepartureDue && bank.waiting > 0;
  if (bank.waiting >= capacity[id]) return true;
  return rule[id] !== LEAVE_FULL && bank.waiting > 0 && run.now >= bank.oldest() + wait[id];
}

/** Makes sure that the lane is looked at when a wait ends or the timetable says so. */
function scheduleTimer(run: Run, lane: Lane): void {
  const { rule, wait, timetable } = run.model.lanes,
    { id, bank } = lane;
  if (rule[id] === LEAVE_FULL || bank.waiting === 0 || lane.timerSet) return;
  const instants = timetable[id],
    time =
      rule[id] === LEAVE_TIMETABLE
        ? (instants[countWhere(instants, (instant) => instant <= run.now)] ?? Infinity)
        : bank.oldest() + wait[id];
  if (time <= run.now || time === Infinity) return;
  lane.timerSet = true;
  run.queue.push(time, LANE_TIMER, id);
}

function load(run: Run, lane: Lane): void {
  const { capacity, loadDraw } = run.model.lanes,
    { bank, id } = lane;
  const truck = lane.trucks.find(({ phase }) => phase === AT_BASE)!;
  while (truck.load < capacity[id] && bank.waiting > 0) {
    const unit = bank.take();
    lane.waitMinutes += run.now - unit.queuedAt;
    if (unit.rework !== null) lane.carriedAgain++;
    unit.truck = truck;
    truck.units.push(unit);
    truck.load++;
    if (unit.location < 0) continue;
    run.locations.move(unit.location, lane.location, run.now);
    unit.location = lane.location;
  }
  lane.trips++;
  lane.carried += truck.load;
  lane.docksUsedFrom++;
  lane.change(-1, 0, 0, run.now);
  run.listFill(bank);
  go(run, truck, LOADING, loadDraw);
}

/** Every unit on board goes to its next step; one without room stays in the truck, which keeps the dock. */
function unload(run: Run, truck: Truck): void {
  const { units } = truck;
  truck.units = [];
  for (const unit of units) {
    const lane = unit.step,
      { route } = lane,
      step = stepAfter(run, unit, lane);
    if (step !== null && !goIn(run, unit, step)) {
      if (run.model.lanes.endless[truck.lane.id] === 0) continue;
      standBehind(run, truck.lane, unit, lane);
    }
    truck.load--;
    unit.truck = null;
    if (step === null) finishRoute(run, unit, route);
  }
  if (truck.load > 0) truck.lane.change(0, 0, 1, run.now);
}

/**
 * A unit without room ahead leaves the truck for an arrival bank without a limit. It stands in the line of
 * its next station already, as it would in a place of a limited one; `step` is the trip.
 */
function standBehind(run: Run, lane: Lane, unit: Unit, step: Step): void {
  letGo(run, unit, step.letsGoBehind);
  lane.changeArrived(1, run.now);
  unit.arrivedBy = lane;
  if (unit.location < 0) return;
  run.locations.move(unit.location, lane.locationTo, run.now);
  unit.location = lane.locationTo;
}

/** The order of the gate: first come, then lower number. */
function firstAtGate(lane: Lane): Truck | null {
  let first: Truck | null = null;
  for (const truck of lane.trucks)
    if (truck.phase === WAIT_DOCK && (first === null || truck.askedDockAt < first.askedDockAt)) first = truck;
  return first;
}

/** @param draws by lane: how long it takes */
function go(run: Run, truck: Truck, phase: number, draws: Int32Array): void {
  const draw = draws[truck.lane.id];
  truck.phase = phase;
  run.queue.push(
    run.memory.after(calendarOf(truck, run.model.lanes), run.sampler.time(draw)),
    TRUCK,
    truck.id,
  );
}

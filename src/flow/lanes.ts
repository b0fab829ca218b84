import type { Run } from './run.js';
import { finishRoute } from './feeders.js';
import { LEAVE_FULL, LEAVE_TIMETABLE } from './model.js';
import { goIn, nextStep } from './move.js';
import { AT_BASE, DRIVING, EMPTYING, LANE_TIMER, LOADING, RETURNING, TRUCK, UNLOADING, WAIT_DOCK } from './states.js';

/**
 * Rule 11. Units wait in the bank of a lane. A truck that is ready and has a dock loads by the lane's rule, drives,
 * waits for a dock, unloads, and returns when the last unit has found room at its next station.
 */

/** Does what the lane can do now: trucks emptied leave, trucks at the gate get a dock, trucks ready load. */
export function serveLane(run: Run, lane: number): void {
  for (let truck = run.firstTruck[lane]; truck < run.firstTruck[lane + 1]; truck++) {
    if (run.truckPhase[truck] === EMPTYING && run.truckLoad[truck] === 0) sendHome(run, truck, lane);
  }
  while (run.docksUsedTo[lane] < run.model.lanes.docksTo[lane]) {
    const truck = firstAtGate(run, lane);
    if (truck < 0) break;
    run.docksUsedTo[lane]++;
    const { unloadDraw, unloadCalendar } = run.model.lanes;
    go(run, truck, UNLOADING, unloadCalendar[lane], unloadDraw[lane]);
  }
  while (run.readyTrucks[lane] > 0 && run.docksUsedFrom[lane] < run.model.lanes.docksFrom[lane] && mayLoad(run, lane)) load(run, lane);
  scheduleTimer(run, lane);
}

/** What the truck was doing is over. */
export function truckEvent(run: Run, truck: number): void {
  const lane = run.truckLane[truck], { lanes } = run.model;
  switch (run.truckPhase[truck]) {
    case LOADING:
      run.docksUsedFrom[lane]--;
      go(run, truck, DRIVING, lanes.driveCalendar[lane], lanes.driveDraw[lane]);
      break;
    case DRIVING:
      run.truckPhase[truck] = WAIT_DOCK;
      run.truckAskedDock[truck] = run.now;
      break;
    case UNLOADING:
      run.truckPhase[truck] = EMPTYING;
      unload(run, truck);
      break;
    default:
      run.truckPhase[truck] = AT_BASE;
      changeReady(run, lane, 1);
  }
  run.toServeLane.add(lane);
}

/** A wait or a timetable has come to its time. */
export function laneTimer(run: Run, lane: number): void {
  run.laneTimer[lane] = -1;
  run.laneDue[lane] = 1;
  serveLane(run, lane);
  // A departure without a truck or without a load is missed.
  run.laneDue[lane] = 0;
}

/** Nothing more can come: a ready truck leaves with what waits. True if there was one. */
export function leaveIncomplete(run: Run, lane: number): boolean {
  if (run.readyTrucks[lane] === 0 || run.docksUsedFrom[lane] >= run.model.lanes.docksFrom[lane] || waiting(run, lane) === 0) return false;
  load(run, lane);
  return true;
}

/** Brings the account of trucks away from base up to now. */
export function settleLane(run: Run, lane: number): void {
  run.truckBusy[lane] += (run.model.lanes.trucks[lane] - run.readyTrucks[lane]) * (run.now - run.truckBusySince[lane]);
  run.truckBusySince[lane] = run.now;
}

function waiting(run: Run, lane: number): number {
  return run.destinations.waiting(run.plan.stationCount + lane);
}

function mayLoad(run: Run, lane: number): boolean {
  const { rule, capacity, wait } = run.model.lanes, count = waiting(run, lane);
  if (rule[lane] === LEAVE_TIMETABLE) return run.laneDue[lane] === 1 && count > 0;
  if (count >= capacity[lane]) return true;
  return rule[lane] !== LEAVE_FULL && count > 0 && run.now >= oldest(run, lane) + wait[lane];
}

function oldest(run: Run, lane: number): number {
  return run.destinations.oldest(run.plan.stationCount + lane);
}

/** Makes sure that the lane is looked at when a wait ends or the timetable says so. */
function scheduleTimer(run: Run, lane: number): void {
  const { rule, wait, timetable } = run.model.lanes;
  if (rule[lane] === LEAVE_FULL || waiting(run, lane) === 0) return;
  const time = rule[lane] === LEAVE_TIMETABLE ? nextInstant(timetable[lane], run.now) : oldest(run, lane) + wait[lane];
  if (time <= run.now || time === run.laneTimer[lane] || time === Infinity) return;
  run.laneTimer[lane] = time;
  run.queue.due[0] = time;
  run.queue.push(LANE_TIMER, lane);
}

/** The first instant after `now`; Infinity after the last. */
function nextInstant(instants: Float64Array, now: number): number {
  let low = 0, high = instants.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (instants[middle] > now) high = middle; else low = middle + 1;
  }
  return low < instants.length ? instants[low] : Infinity;
}

function load(run: Run, lane: number): void {
  const { units, tally, plan, model } = run, { capacity, loadCalendar, loadDraw } = model.lanes, bank = plan.stationCount + lane;
  let truck = run.firstTruck[lane];
  while (run.truckPhase[truck] !== AT_BASE) truck++;
  let count = 0, last = -1;
  for (; count < capacity[lane]; count++) {
    const unit = run.destinations.take(bank);
    if (unit < 0) break;
    tally.laneWait[lane] += run.now - units.queuedAt[unit];
    units.truck[unit] = truck;
    if (last < 0) run.truckHead[truck] = unit; else units.next[last] = unit;
    units.next[unit] = -1;
    last = unit;
    if (units.location[unit] >= 0) {
      const location = model.siteNames.length + lane;
      run.locations.move(units.location[unit], location);
      units.location[unit] = location;
    }
  }
  run.truckLoad[truck] = count;
  tally.trips[lane]++;
  tally.carried[lane] += count;
  run.docksUsedFrom[lane]++;
  changeReady(run, lane, -1);
  run.toFill.add(bank);
  go(run, truck, LOADING, loadCalendar[lane], loadDraw[lane]);
}

/** Every unit on board goes to its next step; one without room stays in the truck, which keeps the dock. */
function unload(run: Run, truck: number): void {
  const { units } = run;
  for (let unit = run.truckHead[truck]; unit >= 0;) {
    const following = units.next[unit], route = run.model.steps.route[units.step[unit]], next = nextStep(run, unit, units.step[unit]);
    if (next >= 0 && !goIn(run, unit, next)) { unit = following; continue; }
    run.truckLoad[truck]--;
    units.truck[unit] = -1;
    if (next < 0) finishRoute(run, unit, route);
    unit = following;
  }
  run.truckHead[truck] = -1;
}

function sendHome(run: Run, truck: number, lane: number): void {
  const { returnDraw, driveCalendar } = run.model.lanes;
  run.docksUsedTo[lane]--;
  go(run, truck, RETURNING, driveCalendar[lane], returnDraw[lane]);
}

/** The order of the gate: first come, then lower number. */
function firstAtGate(run: Run, lane: number): number {
  let first = -1;
  for (let truck = run.firstTruck[lane]; truck < run.firstTruck[lane + 1]; truck++) {
    if (run.truckPhase[truck] === WAIT_DOCK && (first < 0 || run.truckAskedDock[truck] < run.truckAskedDock[first])) first = truck;
  }
  return first;
}

function changeReady(run: Run, lane: number, change: number): void {
  settleLane(run, lane);
  const before = run.readyTrucks[lane];
  run.readyTrucks[lane] += change;
  if (before === 1 && change < 0) run.laneActive.begin(lane);
  else if (before === 0) run.laneActive.finish(lane);
}

function go(run: Run, truck: number, phase: number, calendar: number, draw: number): void {
  run.truckPhase[truck] = phase;
  run.queue.due[0] = draw < 0 ? run.now : run.after(calendar, run.sampler.next(draw));
  run.queue.push(TRUCK, truck);
}

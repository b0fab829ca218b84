import type { Run } from './run.js';
import { HAS_PATH } from './plan.js';
import { REWORK_ONLY, REWORK_SKIP } from './model.js';
import { BLOCKED, STARVED, WAIT_NEEDS } from './states.js';
import { beginStep } from './tasks.js';

/**
 * Rule 1. A unit takes a place at its next station or a space in the buffer ahead of it; if neither is free it stays
 * where it is and blocks that place. Room that comes free goes to the buffer's first, then to the first without room.
 */

/** The step that follows `step` for this unit; -1 at the end of its route. Draws for sampling are made here. */
export function nextStep(run: Run, unit: number, step: number): number {
  return stepFrom(run, unit, step + 1, run.plan.stepEnd[step]);
}

/** The first step of a route for this unit; -1 if none applies. */
export function firstStep(run: Run, unit: number, route: number): number {
  const { firstStep: first } = run.model.routes;
  return stepFrom(run, unit, first[route], first[route + 1]);
}

function stepFrom(run: Run, unit: number, first: number, end: number): number {
  const { stepFlags } = run.plan;
  for (let t = first; t < end; t++) if ((stepFlags[t] & HAS_PATH) === 0 ? passes(run, unit, t) : applies(run, unit, t)) return t;
  return -1;
}

/** Every unit goes through a step without conditions; one in rework is through with it at the inspection that sent it back. */
function passes(run: Run, unit: number, step: number): true {
  if (run.units.rework[unit] === step + 1) run.units.rework[unit] = 0;
  return true;
}

function applies(run: Run, unit: number, step: number): boolean {
  const { model, units } = run, { steps } = model, inRework = units.rework[unit] > 0;
  // The inspection that sent a unit back sees it again, whatever its sample says.
  if (units.rework[unit] === step + 1) { units.rework[unit] = 0; return true; }
  if (steps.rework[step] === (inRework ? REWORK_SKIP : REWORK_ONLY)) return false;
  for (let w = steps.whenStart[step]; w < steps.whenStart[step + 1]; w++) {
    if ((steps.whenMask[w] & (1 << units.options[unit * model.options.length + steps.whenOption[w]])) === 0) return false;
  }
  const n = steps.sampleN[step];
  if (n === 0) return true;
  if (steps.sampleDraw[step] >= 0) return run.sampler.next(steps.sampleDraw[step]) < 1 / n;
  return ++run.sampleCount[step] % n === 0;
}

/** The unit at `place` goes on to `step`: it moves, or begins at once where it stands, or blocks the place. */
export function goOn(run: Run, place: number, unit: number, step: number): void {
  const { places, units, plan, destinations } = run, destination = plan.stepDestination[step];
  units.step[unit] = step;
  if (destination === places.station[place] && run.model.stations.lotMost[destination] === 0) { units.first[unit] = 0; beginStep(run, place); return; }
  if (enter(run, unit, destination)) { freePlace(run, place); return; }
  destinations.joinShut(destination, unit);
  places.enterIdle(place, BLOCKED);
}

/** A unit that holds no place goes to its step from outside or from a truck; false if there is no room and it waits. */
export function goIn(run: Run, unit: number, step: number): boolean {
  const destination = run.plan.stepDestination[step];
  run.units.step[unit] = step;
  if (enter(run, unit, destination)) return true;
  run.destinations.joinShut(destination, unit);
  return false;
}

/** The place is empty: it is offered to others. The caller has moved the unit. */
export function freePlace(run: Run, place: number): void {
  const { places } = run, station = places.station[place];
  places.unit[place] = -1;
  places.nextFree[place] = run.freePlace[station];
  run.freePlace[station] = place;
  if (run.model.stations.lotMost[station] !== 0 && --run.lotInside[station] === 0) run.lotOpen[station] = 1;
  run.toFill.add(station);
}

/** Gives the free room of a destination away, in order; places still free are starved. */
export function fill(run: Run, destination: number): void {
  const { destinations } = run, isStation = destination < run.plan.stationCount;
  for (;;) {
    if (isStation && hasPlace(run, destination)) {
      const step = run.model.stations.lotMost[destination] > 0 && run.lotGathered[destination] > 0 ? run.lotStep[destination] : -1;
      let unit = step < 0 ? destinations.take(destination) : destinations.takeAtStep(destination, step);
      if (unit < 0) {
        unit = destinations.anyShut(destination) ? destinations.takeShut(destination, step) : -1;
        if (unit < 0) break;
        leave(run, unit, destination);
      }
      occupy(run, unit, destination);
      continue;
    }
    const unit = destinations.anyShut(destination) ? destinations.takeShutThatFits(destination) : -1;
    if (unit < 0) break;
    leave(run, unit, destination);
    join(run, unit, destination);
  }
  if (isStation) starve(run, destination);
}

/** Takes a place or a space; false if there is none. */
function enter(run: Run, unit: number, destination: number): boolean {
  const { destinations, units } = run;
  if (destination < run.plan.stationCount && hasPlace(run, destination) && fits(run, unit, destination)) {
    arrive(run, unit, destination);
    occupy(run, unit, destination);
    return true;
  }
  if (!destinations.takesIn(destination, units.first[unit])) return false;
  arrive(run, unit, destination);
  join(run, unit, destination);
  return true;
}

function hasPlace(run: Run, station: number): boolean {
  if (run.freePlace[station] < 0) return false;
  const most = run.model.stations.lotMost[station];
  return most === 0 || (run.lotOpen[station] === 1 && run.lotGathered[station] < most);
}

/** Whoever waits goes ahead of one that comes later; into a lot that gathers only units of its step may come, and they pass others. */
function fits(run: Run, unit: number, station: number): boolean {
  if (run.lotGathered[station] > 0) return run.lotStep[station] === run.units.step[unit];
  return run.destinations.waiting(station) === 0 && !run.destinations.anyShut(station);
}

function join(run: Run, unit: number, destination: number): void {
  run.units.place[unit] = -1;
  run.destinations.join(destination, unit);
  if (destination >= run.plan.stationCount) run.toServeLane.add(destination - run.plan.stationCount);
}

/** A unit without room is called: it leaves the place, the truck or the outside where it waited. */
function leave(run: Run, unit: number, destination: number): void {
  const { units } = run, place = units.place[unit], truck = units.truck[unit];
  arrive(run, unit, destination);
  if (place >= 0) freePlace(run, place);
  else if (truck >= 0) {
    units.truck[unit] = -1;
    if (--run.truckLoad[truck] === 0) run.toServeLane.add(run.truckLane[truck]);
  }
}

/** Work in process is counted by the location that the unit has come to; from outside it enters the system. */
function arrive(run: Run, unit: number, destination: number): void {
  const { units, plan } = run, from = units.location[unit], to = plan.destinationSite[destination];
  if (from === to || plan.model.steps.route[units.step[unit]] !== 0) return;
  if (from < 0) enterSystem(run, unit);
  run.locations.move(from, to);
  units.location[unit] = to;
}

function enterSystem(run: Run, unit: number): void {
  const { units, tally } = run, index = units.number[unit] - 1;
  units.born[unit] = run.now;
  tally.entered++;
  if (index < run.enteredAt.length) run.enteredAt[index] = run.now;
  run.sourceEntered = 1;
}

function occupy(run: Run, unit: number, station: number): void {
  const { places, units } = run, { stations } = run.model;
  const place = stations.changeoverOption[station] >= 0 ? takePlaceFor(run, unit, station) : takePlace(run, station);
  places.unit[place] = unit;
  units.place[unit] = place;
  units.first[unit] = 0;
  if (stations.lotMost[station] === 0) { beginStep(run, place); return; }
  if (run.lotGathered[station]++ === 0) {
    run.lotStep[station] = units.step[unit];
    run.lotLead[station] = place;
    run.lotDue[station] = run.now + stations.lotWait[station];
  }
  places.phase[place] = WAIT_NEEDS;
  places.enterIdle(place, STARVED);
  run.toStartLot.add(station);
}

function takePlace(run: Run, station: number): number {
  const place = run.freePlace[station];
  run.freePlace[station] = run.places.nextFree[place];
  return place;
}

/** Of several free places, one last set up for this unit's value, if there is one. */
function takePlaceFor(run: Run, unit: number, station: number): number {
  const { places, model } = run, option = model.stations.changeoverOption[station], value = run.units.options[unit * model.options.length + option];
  let before = -1;
  for (let place = run.freePlace[station]; place >= 0; before = place, place = places.nextFree[place]) {
    if (places.lastValue[place] !== value) continue;
    if (before < 0) run.freePlace[station] = places.nextFree[place]; else places.nextFree[before] = places.nextFree[place];
    return place;
  }
  return takePlace(run, station);
}

/** Places left free since the last look; those before them in the list are starved already. */
function starve(run: Run, station: number): void {
  const { places } = run;
  for (let place = run.freePlace[station]; place >= 0 && places.state[place] !== STARVED; place = places.nextFree[place]) places.enterIdle(place, STARVED);
}


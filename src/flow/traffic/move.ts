import { letGo } from '../claims/carriers.js';
import { showShort } from '../claims/outside.js';
import type { Buffer } from '../floor/buffer.js';
import type { Place } from '../floor/place.js';
import { BLOCKED, STARVED } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Step } from '../floor/step.js';
import { AT_LOT, HAS_CHANGEOVER } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { goOnThere, nextByValue } from '../tasks/changeovers.js';
import { mayJoin } from '../tasks/lots.js';
import { beginStep } from '../tasks/tasks.js';
import { askAhead, asksAhead, callReady } from './ahead.js';
import { arrive } from './entry-and-exit.js';
import { join, leave, occupy, standIn, tellLine } from './room.js';

/**
 * Rule 1. A unit takes a place at its next station or a space in the buffer ahead of it; if neither is free
 * it stays where it is and blocks that place. Room that comes free goes to the buffer's first, then to the
 * first without room.
 */

/**
 * The unit at `place` goes on to `step`: true if it has left the place; otherwise it begins at once where it
 * stands, or blocks the place.
 */
export function goOn(run: Run, place: Place, unit: Unit, step: Step): boolean {
  unit.step = step;
  if (step.station === place.station && (step.flags & AT_LOT) === 0) {
    unit.first = false;
    letGo(run, unit, step.letsGo);
    if ((step.flags & HAS_CHANGEOVER) !== 0) goOnThere(run, place, unit);
    beginStep(run, place, unit, step);
    return false;
  }
  if (enter(run, unit, step)) return true;
  step.buffer.joinShut(unit);
  place.idle(BLOCKED);
  if (place.station.line !== null) place.station.line.lastDone = place.station;
  tellLine(run, place.station);
  tellLine(run, step.station);
  return false;
}

/**
 * A unit that holds no place goes to a step, from outside or from a truck; false if there is no room and it
 * waits.
 */
export function goIn(run: Run, unit: Unit, step: Step): boolean {
  unit.step = step;
  if (enter(run, unit, step)) return true;
  step.buffer.joinShut(unit);
  tellLine(run, step.station);
  return false;
}

/** Gives free room away, in order; places still free are starved. */
export function fill(run: Run, buffer: Buffer): void {
  const { station } = buffer;
  buffer.listed = false;
  for (;;) {
    if (station !== null && hasPlace(station)) {
      const unit =
        station.asking.length > 0
          ? callReady(run, buffer, station)
          : station.lotGathered > 0
            ? callForLot(run, buffer, station)
            : station.isSetUp
              ? callByValue(run, buffer, station)
              : callFirst(run, buffer);
      if (unit !== null) {
        occupy(run, unit, station);
        continue;
      }
      if (station.asking.length === 0) break;
    }
    const unit = buffer.takeShutThatFits();
    if (unit === null) break;
    leave(run, unit);
    join(run, unit, buffer);
  }
  if (station === null) return;
  if (station.asking.length > 0) {
    showShort(station);
    return;
  }
  // Places left free since the last look; those further down the list are starved already.
  for (let place = station.freePlace; place !== null && place.state !== STARVED; place = place.nextFree)
    place.idle(STARVED);
}

function callFirst(run: Run, buffer: Buffer): Unit | null {
  if (buffer.waiting > 0) return buffer.take();
  if (buffer.shutOut === 0) return null;
  const unit = buffer.takeShut();
  leave(run, unit);
  return unit;
}

function callByValue(run: Run, buffer: Buffer, station: Station): Unit | null {
  return buffer.waiting > 0 && run.model.stations.batchMost[station.id] > 0
    ? nextByValue(run, buffer, station.freePlace!)
    : callFirst(run, buffer);
}

/** Into a lot that gathers only those that may join it. */
function callForLot(run: Run, buffer: Buffer, station: Station): Unit | null {
  const unit = buffer.takeFirst((each) => mayJoin(run, each, station));
  // One from the spaces has left already.
  if (unit !== null) leave(run, unit);
  return unit;
}

/** Takes a place or a space; false if there is none. */
function enter(run: Run, unit: Unit, step: Step): boolean {
  const { buffer, station } = step;
  // Whoever waits for more than a place, and has it now, goes ahead.
  if (station !== null && station.asking.length > 0 && station.freePlace !== null) fill(run, buffer);
  if (station !== null && asksAhead(run, unit, step)) {
    const place = askAhead(run, unit, step, station);
    if (place !== null) {
      if (unit.location !== buffer.location) arrive(run, unit, buffer);
      standIn(run, unit, place);
      return true;
    }
  } else if (station !== null && hasPlace(station) && mayPass(run, unit, station, buffer)) {
    if (unit.location !== buffer.location) arrive(run, unit, buffer);
    occupy(run, unit, station);
    return true;
  }
  if (!buffer.takesIn(unit)) return false;
  if (unit.location !== buffer.location) arrive(run, unit, buffer);
  join(run, unit, buffer);
  return true;
}

function hasPlace(station: Station): boolean {
  if (station.freePlace === null || (station.line !== null && !station.line.isMoving)) return false;
  return station.lotMost === 0 || (station.lotOpen && station.lotGathered < station.lotMost);
}

/**
 * Whoever waits goes ahead of one that comes later; only those that join a lot that gathers pass others, and
 * anybody those who wait for more than a place.
 */
function mayPass(run: Run, unit: Unit, station: Station, buffer: Buffer): boolean {
  if (station.lotGathered > 0) return mayJoin(run, unit, station);
  return buffer.waiting + buffer.shutOut === station.asking.length;
}

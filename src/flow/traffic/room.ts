import { letGo } from '../claims/carriers.js';
import type { Buffer } from '../floor/buffer.js';
import type { Place } from '../floor/place.js';
import { STARVED, WAIT_NEEDS } from '../floor/states.js';
import type { Station } from '../floor/station.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { beginVisit, placeFor } from '../tasks/changeovers.js';
import { beginStep } from '../tasks/tasks.js';
import { arrive } from './entry-and-exit.js';

/** Rule 1: how places and spaces are taken and left; who takes them is in `move.ts`. */

/** A pulse line may have waited for this. */
export function tellLine(run: Run, station: Station | null): void {
  if (station?.line) run.listPulse(station.line);
}

/** The place is empty and is offered to others. The caller has moved the unit. */
export function freePlace(run: Run, place: Place): void {
  const { station } = place;
  if (station.isSetUp) run.changeoverLog?.end(place, run.now);
  place.unit = null;
  if (place.isDown) place.stateIfUp = STARVED;
  else station.putFree(place);
  if (station.lotMost > 0 && --station.lotInside === 0) station.lotOpen = true;
  run.listFill(station.buffer);
  tellLine(run, station);
}

/** It takes a space of the buffer. */
export function join(run: Run, unit: Unit, buffer: Buffer): void {
  if (unit.companionBits !== 0) letGo(run, unit, unit.step.letsGo);
  unit.place = null;
  buffer.join(unit);
  const { lane, station } = buffer;
  // Asked of banks, and of buffers whose units are called by their value.
  if (station === null || station.isSetUp) unit.queuedAt = run.now;
  if (lane !== null) run.listServe(lane);
  else tellLine(run, station);
}

/** A unit without room is called: it leaves the place, the truck, the arrival bank or the outside. */
export function leave(run: Run, unit: Unit): void {
  const { place, truck, arrivedBy, step } = unit;
  if (unit.location !== step.buffer.location) arrive(run, unit, step.buffer);
  if (place !== null) freePlace(run, place);
  else if (truck !== null) {
    unit.truck = null;
    if (--truck.load > 0) return;
    truck.lane.change(0, 0, -1, run.now);
    run.listServe(truck.lane);
  } else if (arrivedBy !== null) {
    unit.arrivedBy = null;
    arrivedBy.changeArrived(-1, run.now);
  }
}

/** It takes a free place of the station; there must be one. */
export function occupy(run: Run, unit: Unit, station: Station): void {
  const wanted = station.isSetUp ? placeFor(run, unit, station) : null;
  standIn(run, unit, station.takeFree(wanted ?? station.freePlace!));
}

/** It takes a place that is kept for it, and is in no line any more. */
export function standIn(run: Run, unit: Unit, place: Place): void {
  const { station } = place;
  place.unit = unit;
  unit.place = place;
  unit.first = false;
  if (unit.companionBits !== 0) letGo(run, unit, unit.step.letsGo);
  if (station.isSetUp) beginVisit(run, place, unit);
  if (station.lotMost === 0) {
    beginStep(run, place, unit, unit.step);
    return;
  }
  if (station.lotGathered++ === 0) {
    station.lotLead = place;
    station.lotDue = run.now + run.model.stations.lotWait[station.id];
  }
  place.phase = WAIT_NEEDS;
  place.idle(STARVED);
  run.listLot(station);
}

import { lacksCrew, requestAgain } from '../claims/claims.js';
import { leavePiece } from '../claims/equipment.js';
import { showShort } from '../claims/outside.js';
import type { Equipment } from '../floor/equipment.js';
import type { Place } from '../floor/place.js';
import { SidePlace } from '../floor/side-place.js';
import {
  BLOCKED,
  DOWN,
  OFF_SHIFT,
  SIDE_BY_SIDE,
  STARVED,
  TASK,
  WAIT_END,
  WAIT_SHIFT,
} from '../floor/states.js';
import type { Run } from '../run.js';
import { takeUp } from '../tasks/tasks.js';
import { isAttended, isUnderWay, suspend } from '../tasks/timing.js';

/**
 * A place that is down takes no unit and grants no needs. Its task is broken off and taken up with what was
 * left when it is up again; crew stays with it, steps side by side each for itself. A unit that is done may
 * leave. A shared piece that fails takes down the place that has it; one that nobody has is not free.
 */

/** One more cause holds the equipment down. */
export function goDown(run: Run, equipment: Equipment): void {
  if (equipment.causes++ > 0) return;
  for (const place of equipment.places) if (place.isThere) takeDown(run, place);
  const { shared, places } = equipment;
  if (shared !== null && places.length === 0) shared.staff(shared.onHand - 1, run.now);
}

/** One cause fewer; the last one brings it up. */
export function comeUp(run: Run, equipment: Equipment): void {
  if (--equipment.causes > 0) return;
  const { station, shared, places } = equipment;
  if (shared !== null) {
    if (equipment.isInUse) bringUp(run, places[0]);
    else {
      const place = leavePiece(equipment);
      shared.staff(shared.onHand + 1, run.now);
      run.listMatch(shared.pool);
      if (place !== undefined) bringUp(run, place);
    }
    return;
  }
  // The first of several free places is on top again.
  for (const place of places.toReversed()) if (place.isThere) bringUp(run, place);
  if (station!.lotMost === 0) return;
  if (station!.lotGathered > 0) run.listLot(station!);
  else
    for (const place of places)
      if (place.unit !== null && place.state !== BLOCKED && place !== station!.lotLead)
        place.mirror(station!.lotLead!);
}

function takeDown(run: Run, place: Place): void {
  if (place.isDown) return;
  const { state } = place;
  if (place.unit === null) {
    place.station.takeFree(place);
    // Another free place may be the one that is short now.
    if (place.station.asking.length > 0) showShort(place.station);
  } else if (place.phase === SIDE_BY_SIDE && state !== BLOCKED) {
    for (const side of place.sides) if (side.isGoing) takeDown(run, side);
  } else if (state !== BLOCKED) {
    if (isUnderWay(place)) {
      suspend(run, place);
      place.isBroken = true;
    } else if (waitsForTime(place.phase, state)) place.wokenAt = run.queue.remove(TASK, place.id);
  }
  place.stateIfUp = state;
  place.idle(DOWN);
}

function bringUp(run: Run, place: Place): void {
  if (!place.isDown || isHeldDown(place)) return;
  const { station, unit, stateIfUp } = place;
  place.stateIfUp = -1;
  if (unit !== null && place.phase === SIDE_BY_SIDE && stateIfUp !== BLOCKED) {
    for (const side of place.sides) if (side.isGoing) bringUp(run, side);
    return;
  }
  if (station.line !== null) {
    station.line.lastDone = station;
    run.listPulse(station.line);
  }
  if (unit === null) {
    station.putFree(place);
    place.idle(STARVED);
    run.listFill(station.buffer);
  } else if (stateIfUp === BLOCKED) place.idle(BLOCKED);
  else if (place.isBroken) {
    place.isBroken = false;
    // Its people may have left meanwhile, at the end of their shift.
    if (!isAttended(place.phase) || !lacksCrew(place, unit.step) || requestAgain(run, place))
      takeUp(run, place);
  } else if (waitsForTime(place.phase, stateIfUp)) {
    place.enter(OFF_SHIFT, -1);
    run.queue.push(Math.max(run.now, place.wokenAt), TASK, place.id);
  } else {
    // It waits for its needs, for the shift of its people, or as one of a lot.
    if (stateIfUp === OFF_SHIFT) place.enter(OFF_SHIFT, -1);
    else place.idle(stateIfUp);
    if (unit.step.asked.pool !== null) run.listMatch(unit.step.asked.pool);
  }
}

/** Whether its own equipment, or a piece that it has, is down. */
function isHeldDown(place: Place): boolean {
  const { equipment } = place instanceof SidePlace ? place.lead : place;
  return equipment?.isDown === true || place.pieces.some(({ isDown }) => isDown);
}

/** It waits for a shift with time enough, or for somebody to end a process, with an event of its own. */
const waitsForTime = (phase: number, state: number): boolean =>
  (phase === WAIT_SHIFT || phase === WAIT_END) && state === OFF_SHIFT;

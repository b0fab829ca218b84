import { goesBefore, lacking, releaseCrew, requestAgain, takeNeeds } from '../claims/claims.js';
import type { Resource } from '../claims/resource.js';
import { AS_BEFORE, allot, bringPeople, lacksTeam, workOf } from '../claims/teams.js';
import type { Place } from '../floor/place.js';
import { OFF_SHIFT, SHIFT_CHANGE } from '../floor/states.js';
import type { Run } from '../run.js';
import { takeUp } from '../tasks/tasks.js';
import { isAttended, isUnderWay, mirror, suspend } from '../tasks/timing.js';
import type { CrewShifts } from './crew.js';

/**
 * Rule 3, shifts of a crew. At the end of a shift the people of the next one take over. If these are fewer
 * than are engaged, work is broken off, the last in the order of requests first; it asks for its crew again.
 * Teams keep their people before other work. With OWN_SHIFT all work waits for the next shift in its own
 * position.
 */

/** Minutes of work that count as none: rounding of times. */
const NOTHING = 1e-6;

/** The first shift of each crew that has shifts of its own. */
export function beginShifts(run: Run): void {
  for (const shifts of run.crewShifts) changeShift(run, shifts);
}

/** The event: a shift is over. */
export function shiftIsOver(run: Run, shifts: CrewShifts): void {
  shifts.isTimed = false;
  run.idleEvents--;
  changeShift(run, shifts);
}

/** The ends of shifts may have moved. */
export function reviseShift(run: Run, shifts: CrewShifts): void {
  if (shifts.isTimed) {
    run.queue.remove(SHIFT_CHANGE, shifts.id);
    shifts.isTimed = false;
    run.idleEvents--;
  }
  changeShift(run, shifts);
}

/** Sets who is there from now on, and when that ends. */
function changeShift(run: Run, shifts: CrewShifts): void {
  const { crew, current, position: before, waits } = shifts;
  shifts.current = shifts.at(run.now);
  const people = shifts.presentIn(shifts.current),
    outlasts = waits && shifts.position !== before,
    isAnother = shifts.current !== current || people !== crew.onHand;
  if (waits) crew.position = shifts.position;
  const teams = isAnother ? allot(run, crew, people) : AS_BEFORE;
  if (outlasts)
    for (const place of [...engaged(run, crew), ...teams.lost.flatMap(workOf)])
      park(run, shifts, place, before);
  staff(run, crew, people, teams, shifts);
  const end = shifts.endOf(shifts.current);
  if (end <= run.now) return;
  shifts.isTimed = true;
  run.idleEvents++;
  run.queue.push(end, SHIFT_CHANGE, shifts.id);
}

/** So many people are there from now on; work for which they are too few is broken off. */
export function staff(
  run: Run,
  crew: Resource,
  people: number,
  { lost, coming, kept } = allot(run, crew, people),
  shifts?: CrewShifts,
): void {
  const stopped = lost.flatMap(workOf).filter((place) => leave(run, place)),
    left = coming.reduce((rest, { companion }) => rest - companion.amount, people);
  if (crew.engagedNow > left) {
    crew.everLacked = true;
    for (const place of engaged(run, crew).reverse()) {
      if (crew.engagedNow <= left) break;
      if (!kept.has(place) && leave(run, place)) stopped.push(place);
    }
  }
  crew.staff(people, run.now);
  for (const team of coming) bringPeople(run, team);
  if (shifts !== undefined) takeBack(run, shifts);
  for (const place of stopped.reverse()) askOrTakeUp(run, place);
  if (crew.pool.waiting > 0) run.listMatch(crew.pool);
}

/** Places that hold people of a crew, in the order of requests. */
function engaged(run: Run, crew: Resource): Place[] {
  return run.places
    .filter(
      (place) => place.holdsCrew && place.unit!.step.asked.needs.some(({ resource }) => resource === crew),
    )
    .sort((a, b) => (goesBefore(a, b) ? -1 : 1));
}

/**
 * The people leave: true if what they did is broken off. Settling goes on, and asks for them when it is over.
 */
function leave(run: Run, place: Place): boolean {
  const isAtWork = isUnderWay(place) && isAttended(place.phase);
  if (isAtWork) suspend(run, place);
  releaseCrew(run, place);
  return isAtWork;
}

/**
 * The people leave, and the work waits for them. What they have claimed but not begun (the station was shut)
 * the next shift begins, but for the work of a team.
 */
function park(run: Run, shifts: CrewShifts, place: Place, position: number): void {
  if (!leave(run, place)) return;
  if (place.minutesLeft > place.minutes - NOTHING && !lacksTeam(place.unit!, place.unit!.step.asked)) {
    takeAgain(run, place);
    return;
  }
  place.enter(OFF_SHIFT, -1);
  mirror(place, place.unit!.step);
  shifts.waiting.push({ place, position });
}

/** Work that waited for this shift goes on before new requests are met, as far as there are people. */
function takeBack(run: Run, shifts: CrewShifts): void {
  const mine = shifts.waiting.filter(({ position }) => position === shifts.position);
  if (mine.length === 0) return;
  shifts.waiting = shifts.waiting.filter(({ position }) => position !== shifts.position);
  for (const { place } of mine) {
    if (place.isDown) {
      place.isBroken = true;
      continue;
    }
    const unit = place.unit!;
    if (lacking(run, place, unit, place.askedOf(unit), false) >= 0) askOrTakeUp(run, place);
    else takeAgain(run, place);
  }
}

/** The people are there for it. */
function takeAgain(run: Run, place: Place): void {
  const unit = place.unit!;
  takeNeeds(run, place, unit, place.askedOf(unit));
  takeUp(run, place);
}

function askOrTakeUp(run: Run, place: Place): void {
  if (requestAgain(run, place)) takeUp(run, place);
  else mirror(place, place.unit!.step);
}

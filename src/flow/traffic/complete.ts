import { letGo } from '../claims/carriers.js';
import { releaseCrew } from '../claims/claims.js';
import type { Place } from '../floor/place.js';
import { SidePlace } from '../floor/side-place.js';
import { IN_REPAIR, SIDE_BY_SIDE } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import {
  AT_LOT,
  COMES_PLAINLY,
  HAS_NEEDS,
  HAS_OFF,
  HAS_QUALITY,
  IS_COUNTED,
  IS_SIDE,
  PULSED,
} from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import { countPast } from '../interruptions/overtime.js';
import type { Run } from '../run.js';
import { leftOf } from '../tasks/done.js';
import { BACK, judge, PASS, SCRAPPED, type Verdict } from '../tasks/inspections.js';
import { finishSide } from '../tasks/side-by-side.js';
import { beginRepair, nextPhase } from '../tasks/tasks.js';
import { scrapped } from './entry-and-exit.js';
import { disownParts, finishRoute, replace, takeOff } from './feeders.js';
import { goOn } from './move.js';
import { holdForPulse } from './pulse-lines.js';
import { buildAgain } from './release.js';
import { freePlace } from './room.js';
import { stepAfter } from './routes.js';
import { advance, refill } from './short-way.js';

/**
 * What follows the work of a step: repairs, send-back, scrap, own parts taken off, the next step or the end
 * of the route.
 */

const verdict: Verdict = { outcome: PASS, repairMinutes: 0, target: null };

/** The phase going on at `place` is over. */
export function endPhase(run: Run, place: Place): void {
  const { phase } = place,
    unit = place.unit!,
    { step } = unit;
  if (nextPhase(run, place, unit, step)) complete(run, place, unit, step, phase);
}

/** The work of the step at `place` has ended; `endedIn` is the phase it ended in. */
function complete(run: Run, place: Place, unit: Unit, step: Step, endedIn: number): void {
  if ((step.flags & (HAS_QUALITY | AT_LOT | IS_SIDE)) === 0) {
    if ((step.flags & HAS_NEEDS) !== 0) releaseCrew(run, place);
    moveOn(run, place, unit, step);
    return;
  }
  if (place instanceof SidePlace) {
    const lead = finishSide(run, place);
    if (lead !== null) complete(run, lead, lead.unit!, lead.unit!.step, SIDE_BY_SIDE);
    return;
  }
  if ((step.flags & AT_LOT) !== 0) {
    completeLot(run, place);
    return;
  }
  if (endedIn === IN_REPAIR) {
    // The verdict was given before the repair; what is left of it is where the unit goes.
    verdict.target = place.sendTo;
    verdict.outcome = place.outcome;
  } else {
    judge(run, unit, step, verdict);
    if (verdict.repairMinutes > 0) {
      place.outcome = verdict.outcome;
      place.sendTo = verdict.target;
      place.minutes =
        unit.done === 0
          ? verdict.repairMinutes
          : leftOf(unit, step, verdict.repairMinutes, false, () => verdict.repairMinutes);
      beginRepair(run, place, step);
      return;
    }
  }
  releaseCrew(run, place);
  follow(run, place, unit, step);
}

/** The units of a lot go on one by one; repairs are not made in a lot. */
function completeLot(run: Run, lead: Place): void {
  releaseCrew(run, lead);
  for (const place of lead.station.places) {
    const { unit } = place;
    if (unit === null) continue;
    judge(run, unit, unit.step, verdict);
    follow(run, place, unit, unit.step);
  }
}

/** The unit goes where the verdict says. */
function follow(run: Run, place: Place, unit: Unit, step: Step): void {
  if (verdict.outcome === SCRAPPED) {
    letGo(run, unit);
    if (!step.route.isMain) replace(run, unit);
    else {
      disownParts(run, unit);
      if (run.model.programme.orders.replaceScrapped) buildAgain(run, unit);
      scrapped(run, unit);
    }
    vacate(run, place);
  } else if (verdict.outcome === BACK) {
    // Done over at the same step, a unit is not in rework on its way.
    unit.rework = verdict.target === step ? null : step;
    unit.first = true;
    run.tally.doneAgain[verdict.target!.id]++;
    run.tally.doneAgain[step.id + 1]--;
    if (step.id > unit.againTo) unit.againTo = step.id;
    const to = step.waysBack?.get(verdict.target!) ?? verdict.target!;
    if (goOn(run, place, unit, to)) vacate(run, place);
  } else {
    moveOn(run, place, unit, step);
  }
}

function moveOn(run: Run, place: Place, unit: Unit, step: Step): void {
  if ((step.flags & IS_COUNTED) !== 0) countPast(run, unit, step);
  if ((step.flags & HAS_OFF) !== 0) takeOff(run, unit, step);
  const next = stepAfter(run, unit, step);
  if (
    (step.flags & PULSED) !== 0 &&
    place.station === place.station.line!.last &&
    next?.station !== place.station
  ) {
    holdForPulse(run, place, place.station.line!, next);
    return;
  }
  if (next !== null && (next.flags & COMES_PLAINLY) !== 0 && advance(run, place.at, unit.at, next.at)) return;
  if (next === null) finishRoute(run, unit, step.route);
  if (next === null || goOn(run, place, unit, next)) vacate(run, place);
}

/** The unit has left: the place is given to the next. */
function vacate(run: Run, place: Place): void {
  if (place.station.goesLongWay) freePlace(run, place);
  else refill(run, place.at);
}

import type { Run } from './run.js';
import { releaseCrew } from './claims.js';
import { scrapped } from './exit.js';
import { discardPartsOf, finishRoute, takeOff, takeOffOne } from './feeders.js';
import { freePlace, goOn, nextStep } from './move.js';
import { AT_LOT, HAS_NEEDS, HAS_OFF, HAS_QUALITY } from './plan.js';
import { BACK, judge, SCRAPPED, Verdict } from './quality.js';
import { IN_REPAIR } from './states.js';
import { beginRepair } from './tasks.js';

/** What follows the work of a step: repairs, send-back, scrap, own parts taken off, the next step or the end of the route. */

const verdict = new Verdict();

/** The work of the step at `place` has ended; `endedIn` is the phase it ended in. */
export function complete(run: Run, place: number, endedIn: number): void {
  const { places, plan } = run, unit = places.unit[place], step = run.units.step[unit], flags = plan.stepFlags[step];
  if ((flags & (HAS_QUALITY | AT_LOT)) === 0) {
    if ((flags & HAS_NEEDS) !== 0) releaseCrew(run, place);
    moveOn(run, place, unit, step, flags);
    return;
  }
  if ((flags & AT_LOT) !== 0) { completeLot(run, places.station[place], place); return; }
  if (endedIn === IN_REPAIR) {
    // The verdict was given before the repair; what is left of it is whether the unit goes back.
    verdict.outcome = places.sendTo[place] >= 0 ? BACK : 0;
    verdict.target = places.sendTo[place];
  } else {
    judge(run, unit, step, verdict);
    if (verdict.repairMinutes > 0) {
      places.sendTo[place] = verdict.target;
      places.minutes[place] = verdict.repairMinutes;
      beginRepair(run, place);
      return;
    }
  }
  releaseCrew(run, place);
  follow(run, place, unit, step);
}

/** The units of a lot go on one by one; a lot has no repairs. */
function completeLot(run: Run, station: number, lead: number): void {
  const { places, plan } = run;
  releaseCrew(run, lead);
  for (let place = plan.firstPlace[station]; place < plan.firstPlace[station + 1]; place++) {
    const unit = places.unit[place];
    if (unit < 0) continue;
    judge(run, unit, run.units.step[unit], verdict);
    follow(run, place, unit, run.units.step[unit]);
  }
}

/** The unit goes where the verdict says. */
function follow(run: Run, place: number, unit: number, step: number): void {
  const { units } = run;
  if (verdict.outcome === SCRAPPED) {
    scrap(run, unit, step);
    freePlace(run, place);
  } else if (verdict.outcome === BACK) {
    units.rework[unit] = step + 1;
    units.first[unit] = 1;
    goOn(run, place, unit, verdict.target);
  } else {
    moveOn(run, place, unit, step, run.plan.stepFlags[step]);
  }
}

function moveOn(run: Run, place: number, unit: number, step: number, flags: number): void {
  if ((flags & HAS_OFF) !== 0) takeOff(run, unit, step);
  const next = nextStep(run, unit, step);
  if (next >= 0) { goOn(run, place, unit, next); return; }
  finishRoute(run, unit, run.model.steps.route[step]);
  freePlace(run, place);
}

function scrap(run: Run, unit: number, step: number): void {
  const route = run.model.steps.route[step];
  if (route === 0) { discardPartsOf(run, unit); scrapped(run, unit); return; }
  // A replacement for the stock is begun; the unit that an own part belongs to would wait for ever, so it gets a new one.
  const parent = run.units.parent[unit];
  run.units.remove(unit);
  run.making[route]--;
  if (parent >= 0) takeOffOne(run, parent, route); else run.toFeed.add(route);
}

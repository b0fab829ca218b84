import type { Run } from './run.js';
import { releaseCrew, request } from './claims.js';
import { AT_LOT, HAS_CHANGEOVER, HAS_FACTOR, HAS_NEEDS, HAS_PASSES, HAS_PROCESS, ONE_SHIFT } from './plan.js';
import {
  CHANGEOVER, IN_CHANGEOVER, IN_PROCESS, IN_REPAIR, IN_SETTLE, IN_WORK, OFF_SHIFT, TASK, UNATTENDED, WAIT_NEEDS, WAIT_REPAIR, WAIT_SHIFT, WORKING,
} from './states.js';

/**
 * What goes on at a place, rules 3 and 4: needs, changeover, passes of work and settle, process, repair.
 * The crew is held from the start to the end of the last work (settling between passes included), and through a
 * repair that follows at once; the last settle and the process are unattended.
 */

/** The unit at `place` begins its step. */
export function beginStep(run: Run, place: number): void {
  const { places, plan, units } = run, step = units.step[places.unit[place]], flags = plan.stepFlags[step];
  run.tally.stepVisits[step]++;
  if ((flags & HAS_NEEDS) !== 0) {
    places.phase[place] = WAIT_NEEDS;
    if (!request(run, place)) {
      if ((flags & AT_LOT) !== 0) mirror(run, place);
      return;
    }
  }
  start(run, place, step, flags);
}

/** The needs of the step, or of a repair, are met. */
export function startTask(run: Run, place: number): void {
  const { places, plan, units } = run;
  if (places.phase[place] === WAIT_REPAIR) { startRepair(run, place); return; }
  const step = units.step[places.unit[place]];
  start(run, place, step, plan.stepFlags[step]);
}

/** The phase that was going on at `place` is over. True: the step is done, but for what `complete` sees to. */
export function nextPhase(run: Run, place: number): boolean {
  const { places, plan, units } = run, step = units.step[places.unit[place]], flags = plan.stepFlags[step];
  switch (places.phase[place]) {
    case IN_WORK: {
      if ((flags & (HAS_PASSES | HAS_PROCESS)) === 0) return true;
      const { steps } = run.model, last = ++places.pass[place] >= steps.passes[step], settle = steps.settleDraw[step];
      if (settle < 0) return last ? afterWork(run, place, step) : startWork(run, place, step, flags);
      if (last) releaseCrew(run, place);
      return unattended(run, place, IN_SETTLE, settle);
    }
    case IN_SETTLE:
      return places.pass[place] >= run.model.steps.passes[step] ? afterWork(run, place, step) : startWork(run, place, step, flags);
    case IN_CHANGEOVER:
      places.pass[place] = 0;
      return startWork(run, place, step, flags);
    case WAIT_SHIFT:
      attended(run, place, IN_WORK, WORKING, step);
      return false;
    default:
      return true;
  }
}

/** Repair work found at the end of the step, `places.minutes`: at once if the crew is still there, otherwise it is asked for again. */
export function beginRepair(run: Run, place: number): void {
  const { places, model, units } = run, { needStart, needResource } = model.steps, step = units.step[places.unit[place]];
  const wantsCrew = needStart[step + 1] > needStart[step] && needResource[needStart[step]] < model.resources.crews;
  if (places.holdsCrew[place] === 0 && wantsCrew) {
    places.phase[place] = WAIT_REPAIR;
    if (!request(run, place)) return;
  }
  startRepair(run, place);
}

function start(run: Run, place: number, step: number, flags: number): void {
  if ((flags & HAS_CHANGEOVER) !== 0 && startChangeover(run, place, step)) return;
  run.places.pass[place] = 0;
  // Nothing to do here: the step ends at once, as an event of its own.
  if (startWork(run, place, step, flags)) {
    run.queue.due[0] = run.clock.now;
    run.queue.push(TASK, place);
  }
}

function startRepair(run: Run, place: number): void {
  run.tally.repairMinutes += run.places.minutes[place];
  attended(run, place, IN_REPAIR, WORKING, run.units.step[run.places.unit[place]]);
}

/** Work of the present pass; true if there is nothing more to do in this step. */
function startWork(run: Run, place: number, step: number, flags: number): boolean {
  const draw = run.model.steps.workDraw[step];
  if (draw < 0) return afterWork(run, place, step);
  run.places.minutes[place] = run.sampler.next(draw);
  if ((flags & HAS_FACTOR) !== 0) run.places.minutes[place] *= factor(run, run.places.unit[place], step);
  if ((flags & ONE_SHIFT) === 0 || !waitForShift(run, place, step)) attended(run, place, IN_WORK, WORKING, step);
  return false;
}

/** The crew is kept and the work put off to the first shift in which it can end; false if it can begin now. */
function waitForShift(run: Run, place: number, step: number): boolean {
  const { places, plan, model } = run, begin = plan.calendars[model.steps.workCalendar[step]].startInOneShift(run.clock.now, places.minutes[place]);
  if (begin <= run.clock.now) return false;
  places.phase[place] = WAIT_SHIFT;
  places.enter(place, OFF_SHIFT, -1);
  run.queue.due[0] = begin;
  run.queue.push(TASK, place);
  return true;
}

/** All work of the step is done: the process, if any; true if there is none. */
function afterWork(run: Run, place: number, step: number): boolean {
  const draw = run.model.steps.processDraw[step];
  if (draw < 0) { run.places.phase[place] = IN_PROCESS; return true; }
  releaseCrew(run, place);
  return unattended(run, place, IN_PROCESS, draw);
}

function startChangeover(run: Run, place: number, step: number): boolean {
  const { places, model, units } = run, station = places.station[place], option = model.stations.changeoverOption[station];
  const value = units.options[places.unit[place] * model.options.length + option], last = places.lastValue[place];
  places.lastValue[place] = value;
  if (last < 0 || last === value) return false;
  places.minutes[place] = run.sampler.next(model.stations.changeoverDraw[station]);
  attended(run, place, IN_CHANGEOVER, CHANGEOVER, step);
  return true;
}

/** Work of `places.minutes` by people, in the calendar of the step. */
function attended(run: Run, place: number, phase: number, state: number, step: number): void {
  const { places, queue } = run, calendar = run.model.steps.workCalendar[step];
  places.phase[place] = phase;
  places.enter(place, state, calendar);
  if ((run.plan.stepFlags[step] & AT_LOT) !== 0) mirror(run, place);
  queue.due[0] = calendar < 0 ? run.clock.now + places.minutes[place] : run.plan.calendars[calendar].advance(run.clock.now, places.minutes[place]);
  queue.push(TASK, place);
}

/** Time that passes by itself, day and night. */
function unattended(run: Run, place: number, phase: number, draw: number): false {
  const { places } = run;
  places.phase[place] = phase;
  places.enter(place, UNATTENDED, -1);
  if ((run.plan.stepFlags[run.units.step[places.unit[place]]] & AT_LOT) !== 0) mirror(run, place);
  run.queue.due[0] = run.clock.now + run.sampler.next(draw);
  run.queue.push(TASK, place);
  return false;
}

/** All members of a lot show the state of the place that leads it. */
function mirror(run: Run, lead: number): void {
  const { places, plan } = run, station = places.station[lead];
  for (let p = plan.firstPlace[station]; p < plan.firstPlace[station + 1]; p++) {
    if (p !== lead && places.unit[p] >= 0) places.enter(p, places.state[lead], places.calendar[lead]);
  }
}

function factor(run: Run, unit: number, step: number): number {
  const { factorStart, factorOption, factorOffset, factorTable } = run.model.steps, base = unit * run.model.options.length;
  let product = 1;
  for (let f = factorStart[step]; f < factorStart[step + 1]; f++) product *= factorTable[factorOffset[f] + run.units.options[base + factorOption[f]]];
  return product;
}

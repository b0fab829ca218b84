import type { Run } from './run.js';
import { RELEASE_SATURATED, RELEASE_TIMES } from './model.js';
import { firstStep, goIn } from './move.js';
import { RELEASE } from './states.js';

/** Rule 15: units are released at given times, at drawn intervals, or whenever the line takes one. A unit that finds no room waits outside. */

export function beginRelease(run: Run): void {
  const { programme } = run.model;
  if (programme.release === RELEASE_SATURATED) { run.sourceEntered = 1; return; }
  scheduleNext(run);
}

/** A release is due. */
export function release(run: Run): void {
  createUnit(run);
  scheduleNext(run);
}

/** The saturated source has one unit outside at any time. */
export function refillSource(run: Run): void {
  run.sourceEntered = 0;
  const { programme } = run.model;
  if (programme.release === RELEASE_SATURATED && run.built[0] < programme.quantity) createUnit(run);
}

function scheduleNext(run: Run): void {
  const { programme } = run.model, built = run.built[0];
  if (programme.release === RELEASE_TIMES) {
    if (built >= programme.times.length) return;
    run.queue.due[0] = programme.times[built];
  } else {
    if (built >= programme.quantity) return;
    run.queue.due[0] = run.now + run.sampler.next(programme.intervalDraw);
  }
  run.queue.push(RELEASE, 0);
}

function createUnit(run: Run): void {
  const { units, model } = run, { options } = model, number = ++run.built[0];
  const unit = units.create(number, model.routes.firstStep[0]), at = unit * options.length;
  for (let o = 0; o < options.length; o++) {
    const { cumulative } = options[o], u = run.sampler.next(o);
    let value = 0;
    while (value < cumulative.length - 1 && u >= cumulative[value]) value++;
    units.options[at + o] = value;
  }
  if (number * options.length <= run.optionsOf.length) run.optionsOf.set(units.options.subarray(at, at + options.length), (number - 1) * options.length);
  const step = firstStep(run, unit, 0);
  if (step < 0) throw new RangeError(`route must have a step for every unit; unit ${number} has none`);
  goIn(run, unit, step);
}

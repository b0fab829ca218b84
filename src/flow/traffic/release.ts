import { RELEASE } from '../floor/states.js';
import type { Unit } from '../floor/unit.js';
import { RELEASE_SATURATED, RELEASE_TIMES } from '../model/programme.js';
import type { Run } from '../run.js';
import { goIn } from './move.js';
import { stepFrom } from './routes.js';

/**
 * Rule 15: units are released at given times, at drawn intervals, or whenever the line takes one. A unit that
 * finds no room waits outside.
 */

export function beginRelease(run: Run): void {
  if (run.model.programme.release === RELEASE_SATURATED) run.sourceEntered = run.pending = true;
  else scheduleNext(run);
}

/** A release is due. */
export function release(run: Run): void {
  sendIn(run, createUnit(run));
  scheduleNext(run);
}

/** The saturated source has one unit outside at any time. */
export function refillSource(run: Run): void {
  run.sourceEntered = false;
  const { programme } = run.model,
    { begun } = run.shop.routes[0];
  // One may stand outside already, if it was an order built again that has entered.
  if (
    programme.release === RELEASE_SATURATED &&
    begun < programme.quantity &&
    begun === run.gone + run.locations.total
  )
    sendIn(run, createUnit(run));
}

function scheduleNext(run: Run): void {
  const { programme } = run.model,
    { begun } = run.shop.routes[0];
  if (programme.release === RELEASE_TIMES) {
    if (begun < programme.times.length) run.queue.push(programme.times[begun], RELEASE, 0);
  } else if (begun < programme.quantity)
    run.queue.push(run.now + run.sampler.time(programme.intervalDraw), RELEASE, 0);
}

/** The next unit in build order, still outside; chance decides on what its order leaves open. */
export function createUnit(run: Run): Unit {
  const { options } = run.model,
    route = run.shop.routes[0],
    number = ++route.begun,
    unit = run.units.create(number, route.first!);
  for (let o = 0; o < options.length; o++) {
    const { cumulative } = options[o],
      u = run.sampler.next(o);
    let value = 0;
    while (value < cumulative.length - 1 && u >= cumulative[value]) value++;
    unit.options[o] = value;
  }
  giveOrder(run, unit);
  if (options.length > 0 && number * options.length <= run.optionsOf.length)
    run.optionsOf.set(unit.options, (number - 1) * options.length);
  return unit;
}

function sendIn(run: Run, unit: Unit): void {
  const step = stepFrom(run, unit, unit.step);
  if (step === null)
    throw new RangeError(`route: expected a step for every unit, got none for unit ${unit.number}`);
  goIn(run, unit, step);
}

/**
 * Rule 15, what is known of single units: options and due dates of their orders, and the order of a scrapped
 * unit built again.
 */

/**
 * A unit is released now: what its order says goes before what was drawn, so that the draws of all others
 * stay as they are.
 */
export function giveOrder(run: Run, unit: Unit): void {
  const {
      options,
      programme: { orders },
    } = run.model,
    index = unit.number - 1,
    isKnown = index < orders.count;
  if (isKnown) {
    for (let o = 0; o < options.length; o++) {
      const value = orders.values[index * options.length + o];
      if (value >= 0) unit.options[o] = value;
    }
  }
  unit.dueAt = isKnown && orders.dueAt[index] < Infinity ? orders.dueAt[index] : run.now + orders.dueAfter;
  if (index < run.dueAt.length) run.dueAt[index] = unit.dueAt;
}

/**
 * A unit in the stead of one that is scrapped: same build number, options and due date, from the start of the
 * route.
 */
export function buildAgain(run: Run, scrapped: Unit): void {
  const { first } = scrapped.step.route,
    unit = run.units.create(scrapped.number, first!);
  unit.options.set(scrapped.options);
  unit.dueAt = scrapped.dueAt;
  goIn(run, unit, stepFrom(run, unit, first)!);
}

import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { goIn } from './move.js';
import { stepFrom } from './routes.js';

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

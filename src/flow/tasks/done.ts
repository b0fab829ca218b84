import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';

/** Draws of one time; what was never seen to take so long is over. */
const MOST_DRAWS = 100;

/**
 * What is left of a time at a step of which a unit of the opening has some minutes behind it: of the only
 * time there, as it is distributed given that it takes longer; of several, what is not yet covered.
 * @param again draws the time anew
 */
export function leftOf(
  unit: Unit,
  { id }: Step,
  minutes: number,
  isOnly: boolean,
  again: () => number,
): number {
  if (unit.doneAt !== id) {
    unit.done = 0;
    return minutes;
  }
  let whole = minutes;
  if (isOnly) for (let draws = 1; draws < MOST_DRAWS && whole <= unit.done; draws++) whole = again();
  const left = Math.max(0, whole - unit.done);
  unit.done = isOnly ? 0 : Math.max(0, unit.done - whole);
  return left;
}

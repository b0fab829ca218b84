import { lacksCrew, request } from '../claims/claims.js';
import type { Place } from '../floor/place.js';
import { IN_MENDING, IN_REPAIR, WAIT_REPAIR, WORKING } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Run } from '../run.js';
import { attended } from './timing.js';

/**
 * Repair work found at the end of the step, `place.minutes`: at once if the crew is still there, otherwise it
 * is asked for again.
 */
export function beginRepair(run: Run, place: Place): void {
  if (lacksCrew(place, place.unit!.step)) {
    place.phase = WAIT_REPAIR;
    if (!request(run, place)) return;
  }
  startRepair(run, place);
}

/** The crew is there. */
export function startRepair(run: Run, place: Place): void {
  repair(run, place, place.unit!.step, IN_REPAIR);
}

/** At a hold, noted items are mended ahead of the work; `place.minutes`. */
export function startMending(run: Run, place: Place, step: Step): void {
  repair(run, place, step, IN_MENDING);
}

/** Person-minutes of work that is done again, or that mends. */
export function countRework({ needs }: Step, minutes: number): void {
  for (const { resource, amount } of needs) if (resource.isCrew) resource.rework += amount * minutes;
}

function repair(run: Run, place: Place, step: Step, phase: number): void {
  run.tally.repairMinutes += place.minutes;
  countRework(step, place.minutes);
  attended(run, place, phase, WORKING, step);
}

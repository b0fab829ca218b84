import type { Step } from '../floor/step.js';
import { HAS_PATH, HOLDS, ON_WAY_BACK } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import { REWORK_ONLY, REWORK_SKIP } from '../model/steps.js';
import type { Run } from '../run.js';
import { comesToHold } from '../tasks/holds.js';
import { meetsConditions } from '../tasks/options.js';

/**
 * Where a unit goes that is done with a step and passes; null at the end of its route. On a way back it goes
 * first until it stands at the step it was sent to, and there it stands whatever the conditions.
 */
export function stepAfter(run: Run, unit: Unit, step: Step): Step | null {
  if ((step.flags & ON_WAY_BACK) === 0) return stepFrom(run, unit, step.next);
  unit.first = true;
  return step.next;
}

/**
 * The first step for this unit at or after `from` on its route; null if there is none. Draws for sampling are
 * made here.
 */
export function stepFrom(run: Run, unit: Unit, from: Step | null): Step | null {
  for (let step = from; step !== null; step = step.next) {
    if ((step.flags & HAS_PATH) === 0) {
      if (unit.rework === step) unit.rework = null;
      return step;
    }
    if (applies(run, unit, step)) return step;
  }
  return null;
}

function applies(run: Run, unit: Unit, step: Step): boolean {
  // The inspection that sent a unit back sees it again, whatever its sample says.
  if (unit.rework === step) {
    unit.rework = null;
    if ((step.flags & HOLDS) !== 0) comesToHold(run, unit, step);
    return true;
  }
  const { steps } = run.model,
    t = step.id;
  if (steps.rework[t] === (unit.rework !== null ? REWORK_SKIP : REWORK_ONLY)) return false;
  if (!meetsConditions(run, unit, step)) return false;
  if ((step.flags & HOLDS) !== 0) return comesToHold(run, unit, step);
  const n = steps.sampleN[t];
  if (n === 0) return true;
  if (steps.sampleDraw[t] >= 0) return run.sampler.next(steps.sampleDraw[t]) < 1 / n;
  return ++step.sampled % n === 0;
}

import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';

/** Whether the options of a unit meet all conditions of a step. */
export function meetsConditions(run: Run, unit: Unit, { id }: Step): boolean {
  const { whenStart, whenOption, whenMask } = run.model.steps;
  for (let w = whenStart[id]; w < whenStart[id + 1]; w++)
    if ((whenMask[w] & (1 << unit.options[whenOption[w]])) === 0) return false;
  return true;
}

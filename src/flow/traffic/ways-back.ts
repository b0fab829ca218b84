import type { Step } from '../floor/step.js';
import type { Model } from '../model/model.js';

/**
 * Rule 8, send-back to another site: lines up the steps of each way back, up to the step that units are sent
 * to, and tells the inspections where their ways begin.
 */
export function furnishWaysBack(
  { steps: { findStart, findThen, onTo }, thens: { target, way } }: Model,
  steps: readonly Step[],
): void {
  for (const step of steps) {
    const { id } = step;
    if (onTo[id] >= 0) step.next = steps[onTo[id]];
    for (let find = findStart[id]; find < findStart[id + 1]; find++) {
      const then = findThen[find];
      if (way[then] >= 0) (step.waysBack ??= new Map()).set(steps[target[then]], steps[way[then]]);
    }
  }
}

import { learningFactor } from '../../flow/work/work-time.js';
import { UNLIMITED, type Model } from '../../flow/model/model.js';

/**
 * Mean learning factor of a step over the programme, as if each unit were done once; of a run without a
 * quantity that of its first unit, which is on the safe side.
 */
export function meanLearning({ steps, programme }: Model, step: number): number {
  if (steps.learnExponent[step] === 0) return 1;
  const units = programme.quantity < UNLIMITED ? programme.quantity : 1;
  let sum = 0;
  for (let n = 1; n <= units; n++) sum += learningFactor(steps, step, steps.learnBefore[step] + n);
  return sum / units;
}

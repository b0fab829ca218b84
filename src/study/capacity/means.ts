import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { learningFactor } from '../../flow/tasks/options.js';
import { meanOf } from '../../random/distribution.js';
import { rowsOf } from '../lists.js';
import type { Build } from './mix.js';

/** Mean of a draw; 0 of none (-1). */
export const meanDraw = ({ draws }: Pick<Model, 'draws'>, draw: number): number =>
  draw < 0 ? 0 : meanOf(draws[draw].distribution);

/** Chance that a build meets all conditions of a step. */
export function chanceToMeet(model: Model, build: Build, step: number): number {
  const { whenStart, whenOption, whenMask } = model.steps;
  let chance = 1;
  for (const w of rowsOf(whenStart, step)) {
    let met = 0;
    build.values[whenOption[w]].forEach((p, value) => {
      if ((whenMask[w] & (1 << value)) !== 0) met += p;
    });
    chance *= met;
  }
  return chance;
}

/** Mean of the product of a step's work factors. */
export function meanFactor(model: Model, build: Build, step: number): number {
  const { factorStart, factorOption, factorOffset, factorTable } = model.steps;
  let product = 1;
  for (const f of rowsOf(factorStart, step)) {
    product *= build.values[factorOption[f]].reduce(
      (sum, p, value) => sum + p * factorTable[factorOffset[f] + value],
      0,
    );
  }
  return product;
}

/** Mean of a chance by option: the first row that is met counts. */
export function meanChance(model: Model, build: Build, id: number): number {
  const { base, start, option, value, chance } = model.chances;
  let sum = 0,
    left = 1;
  for (const c of rowsOf(start, id)) {
    const met = build.values[option[c]][value[c]];
    sum += left * met * chance[c];
    left *= 1 - met;
  }
  return sum + left * base[id];
}

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

import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { learningFactor } from '../../flow/tasks/options.js';
import { meanOf } from '../../random/distribution.js';
import { log } from '../../random/elementary.js';
import { power } from '../../random/power.js';
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

/** Mean of the work on what was found, by option; 0 of none (-1). */
export function meanRepair(model: Model, build: Build, id: number): number {
  if (id < 0) return 0;
  const { usual, start, option, value, draw } = model.repairTimes;
  let sum = 0,
    left = 1;
  for (const r of rowsOf(start, id)) {
    const met = build.values[option[r]][value[r]];
    sum += left * met * meanDraw(model, draw[r]);
    left *= 1 - met;
  }
  return sum + left * meanDraw(model, usual[id]);
}

/** Units whose learning factors are added one by one; the others are summed by a formula. */
const ONE_BY_ONE = 10_000;

/**
 * Mean learning factor of a step over the programme, as if each unit were done once; of a run without a
 * quantity that of its first unit, which is on the safe side.
 */
export function meanLearning({ steps, programme }: Model, step: number): number {
  if (steps.learnExponent[step] === 0) return 1;
  const units = programme.quantity < UNLIMITED ? programme.quantity : 1,
    before = steps.learnBefore[step];
  let sum = 0;
  for (let n = 1; n <= Math.min(units, ONE_BY_ONE); n++) sum += learningFactor(steps, step, before + n);
  if (units > ONE_BY_ONE) sum += sumOfFactors(steps, step, before + ONE_BY_ONE + 1, before + units);
  return sum / units;
}

/**
 * Sum of the factors of units `from` to `to`, which fall: those above the floor by the Euler-Maclaurin
 * formula (Abramowitz & Stegun 1964, 23.1.30; from memory), of the cumulative curve exactly, and the floor
 * for the others. The first term left out is below from^-3 / 720.
 */
function sumOfFactors(steps: Model['steps'], step: number, from: number, to: number): number {
  const floor = steps.learnFloor[step],
    b = steps.learnExponent[step];
  let above = from - 1,
    at = to + 1;
  while (at - above > 1) {
    const middle = Math.floor((above + at) / 2);
    if (learningFactor(steps, step, middle) > floor) above = middle;
    else at = middle;
  }
  const rest = (to - above) * floor;
  if (above < from) return rest;
  if (steps.learnCumulative[step] === 1) return rest + power(above, b + 1) - power(from - 1, b + 1);
  const integral = b === -1 ? log(above / from) : (power(above, b + 1) - power(from, b + 1)) / (b + 1);
  return (
    rest +
    integral +
    (power(from, b) + power(above, b)) / 2 +
    (b * (power(above, b - 1) - power(from, b - 1))) / 12
  );
}

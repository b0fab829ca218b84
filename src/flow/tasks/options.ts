import { power } from '../../random/power.js';
import type { Place } from '../floor/place.js';
import type { Step } from '../floor/step.js';
import { HAS_FACTOR, LEARNS } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import { KNOWN } from '../model/quality.js';
import type { Run } from '../run.js';
import { leftOf } from './done.js';

/**
 * What the options of a unit decide: which steps it does, how long they and its repairs take, and its chances
 * of defects.
 */

/** Whether the options of a unit meet all conditions of a step. */
export function meetsConditions(run: Run, unit: Unit, { id }: Step): boolean {
  const { whenStart, whenOption, whenMask } = run.model.steps;
  for (let w = whenStart[id]; w < whenStart[id + 1]; w++)
    if ((whenMask[w] & (1 << unit.options[whenOption[w]])) === 0) return false;
  return true;
}

/** A chance by option: the first row that the unit meets, otherwise the usual one. */
export function chanceFor(run: Run, unit: Unit, id: number): number {
  const { base, start, option, value, chance } = run.model.chances;
  for (let c = start[id]; c < start[id + 1]; c++) if (unit.options[option[c]] === value[c]) return chance[c];
  return base[id];
}

/**
 * Draws the work on what was found on a unit, minutes; 0 of none (-1). The times for all options are drawn
 * and one of them used, so that a time for one option moves no repair of other units.
 */
export function repairTime(run: Run, unit: Unit, id: number): number {
  if (id < 0) return 0;
  const { usual, start, option, value, draw } = run.model.repairTimes;
  let minutes = run.sampler.time(usual[id]),
    isMet = false;
  for (let r = start[id]; r < start[id + 1]; r++) {
    const other = run.sampler.time(draw[r]);
    if (isMet || unit.options[option[r]] !== value[r]) continue;
    minutes = other;
    isMet = true;
  }
  return minutes;
}

/**
 * Draws the work of one pass at `place`, minutes: of the options of its unit, and as often as it was done
 * before.
 */
export function workMinutes(run: Run, place: Place, unit: Unit, step: Step): number {
  const minutes = drawWork(run, place, unit, step);
  if (unit.done === 0) return minutes;
  // What is being mended where it was found: the repair is still to come.
  const isOnly = step.passes === 1 && step.processDraw < 0 && !unit.slots.includes(KNOWN);
  return leftOf(unit, step, minutes, isOnly, () => drawWork(run, place, unit, step));
}

/** Draws the process of a step for a unit, minutes. */
export function processMinutes(run: Run, unit: Unit, step: Step): number {
  const minutes = run.sampler.next(step.processDraw);
  if (unit.done === 0) return minutes;
  return leftOf(unit, step, minutes, step.workDraw < 0, () => run.sampler.next(step.processDraw));
}

function drawWork(run: Run, place: Place, unit: Unit, step: Step): number {
  let minutes = run.sampler.next(step.workDraw);
  if ((step.flags & (HAS_FACTOR | LEARNS)) === 0) return minutes;
  const { steps } = run.model;
  minutes *= optionsFactor(run, unit, step);
  if ((step.flags & LEARNS) !== 0)
    minutes *= learningFactor(steps, step.id, steps.learnBefore[step.id] + place.attempt);
  return minutes;
}

function optionsFactor(run: Run, unit: Unit, step: Step): number {
  const { factorStart, factorOption, factorOffset, factorTable } = run.model.steps;
  let product = 1;
  for (let f = factorStart[step.id]; f < factorStart[step.id + 1]; f++)
    product *= factorTable[factorOffset[f] + unit.options[factorOption[f]]];
  return product;
}

/**
 * What is left of the work time of a step when it is done for the n-th time, as a part of the first time's (n
 * from 1). Crawford 1944 (unit form): n^b with b = log2(rate). Wright 1936 (cumulative mean): the mean of the
 * first n is n^b, so the n-th takes n^(b + 1) - (n - 1)^(b + 1). Neither falls below the floor.
 */
export function learningFactor(
  { learnExponent, learnCumulative, learnFloor }: Model['steps'],
  step: number,
  n: number,
): number {
  const b = learnExponent[step],
    factor = learnCumulative[step] === 1 ? power(n, b + 1) - power(n - 1, b + 1) : power(n, b);
  return Math.max(learnFloor[step], factor);
}

import { goesBefore, releaseCrew } from '../claims/claims.js';
import { giveEquipment, isWanted, takeEquipment } from '../claims/equipment.js';
import type { Need } from '../claims/needs.js';
import type { Place } from '../floor/place.js';
import type { Step } from '../floor/step.js';
import { FIRST } from '../model/steps.js';
import type { Run } from '../run.js';

/**
 * Rule 2, equipment for the first or the last minutes of the work alone: the work is cut into stretches where
 * some of it is given back or claimed.
 */

/** The work of the step begins, `place.minutes` of it. */
export function beginParts(run: Run, place: Place, { asked: { equipmentNeeds } }: Step): void {
  const { minutes } = place;
  place.parts = { total: minutes, from: 0, to: 0, turns: [] };
  equipmentNeeds.forEach(({ part, draw }, i) => {
    const its = Math.min(minutes, run.sampler.time(draw));
    place.parts!.turns[i] = part === FIRST ? its : minutes - its;
  });
}

/**
 * The next stretch, `place.minutes`, up to the next change of what is needed. What was for the part before is
 * given back. False: what is for the part ahead is not there; people and the other equipment are set free,
 * and all of it is to be asked for together.
 */
export function nextStretch(run: Run, place: Place, step: Step): boolean {
  const { total, from, turns } = place.parts!,
    { equipmentNeeds } = step.asked;
  let to = total,
    more = 0,
    areThere = true;
  for (let i = 0; i < equipmentNeeds.length; i++) {
    const need = equipmentNeeds[i];
    if (need.bit === 0) continue;
    if (turns[i] > from) to = Math.min(to, turns[i]);
    else if (need.part === FIRST) giveBack(run, place, step, i);
    else if ((place.wanted & need.bit) === 0) {
      more |= need.bit;
      areThere &&= isFree(place, need);
    }
  }
  place.parts!.to = to;
  place.minutes = to - from;
  if (!areThere) releaseCrew(run, place);
  place.wanted |= more;
  if (areThere && more !== 0)
    for (const need of equipmentNeeds) if ((need.bit & more) !== 0) takeEquipment(run, place, need);
  return areThere;
}

/** A stretch is over. True: it was the last one. What was for the first part is not kept beyond the work. */
export function endStretch(run: Run, place: Place, step: Step): boolean {
  const parts = place.parts!;
  parts.from = parts.to;
  if (parts.to < parts.total) return false;
  step.asked.equipmentNeeds.forEach(({ part }, i) => {
    if (part === FIRST) giveBack(run, place, step, i);
  });
  return true;
}

function giveBack(run: Run, place: Place, { asked: { equipmentNeeds } }: Step, i: number): void {
  const { bit } = equipmentNeeds[i];
  if ((place.wanted & bit) === 0) return;
  giveEquipment(run, place, equipmentNeeds[i]);
  place.wanted ^= bit;
}

/** Whether there is enough for a place that is at work, and no request ahead of it lacks it. */
function isFree(place: Place, { resource, amount }: Need): boolean {
  if (resource.free < amount) return false;
  for (let at = resource.pool.head; at !== null && goesBefore(at, place); at = at.nextWaiting)
    for (const need of at.isDown ? [] : at.asked.needs)
      if (need.resource === resource && isWanted(at, need) && need.amount > resource.free) return false;
  return true;
}

import type { Place } from '../floor/place.js';
import {
  DOWN,
  SHORT_CREW,
  SHORT_EQUIPMENT,
  SHORT_PARTS,
  shownOf,
  WAIT_NEEDS,
  WAIT_REST,
} from '../floor/states.js';
import type { Step } from '../floor/step.js';
import { HAS_NEEDS } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Asked } from './asked.js';
import { hasAll, lackingCompanions, takeCompanions, wantedOf } from './carriers.js';
import {
  endLackOfEquipment,
  giveEquipment,
  isWanted,
  noteLackOfEquipment,
  takeEquipment,
} from './equipment.js';
import { takeOwnParts, takeParts } from './joins.js';
import type { Claimant } from './outside.js';
import type { Pool } from './resource.js';
import { give } from './resource.js';
import { askSupplies, endLack, noteLack } from './supplies.js';
import { bringTeams, lackingTeams, lacksTeam, teamOrderAt } from './teams.js';

/**
 * Rule 2. What a step needs is claimed together, all or none, by the place where the unit stands. Requests
 * wait in the order of rule 1 (units in rework, then first come, then build number). One that cannot be met
 * lets later ones pass only if they want none of what it lacks. Once a step has begun (any phase but
 * WAIT_NEEDS) only its crew and its equipment are asked for.
 */

/** Asks for the needs of the step at `place`; true if granted at once, else the place waits and is short. */
export function request(run: Run, place: Claimant): boolean {
  const unit = place.unit!,
    asked = place.askedOf(unit);
  if (
    (asked.companions.length > 0 || asked.teamBits !== 0 || place.phase === WAIT_REST) &&
    hasAll(unit, asked)
  )
    return true;
  if (asked.supplyNeeds.length > 0) askSupplies(run, place);
  place.askedAt = run.now;
  return requestAgain(run, place);
}

/** As `request`, with the time of an earlier asking: work that was begun goes ahead of what came later. */
export function requestAgain(run: Run, place: Claimant): boolean {
  const unit = place.unit!,
    asked = place.askedOf(unit),
    pool = asked.pool!;
  place.wantedSince = run.now;
  place.teamOrder = asked.teamBits === 0 ? Infinity : teamOrderAt(place);
  const short = lacking(run, place, unit, asked, false);
  if (pool.waiting === 0 && short < 0) {
    takeNeeds(run, place, unit, asked);
    return true;
  }
  place.idle(short < 0 ? SHORT_CREW : short);
  insertRequest(pool, place);
  run.listMatch(pool);
  return false;
}

/**
 * Goes through the waiting requests of a pool in order; places whose needs are met are put on `run.granted`.
 * Those that are down are passed over.
 */
export function match(run: Run, pool: Pool): void {
  pool.listed = false;
  run.scan++;
  let before: Claimant | null = null,
    place = pool.head;
  while (place !== null) {
    const next: Claimant | null = place.nextWaiting,
      unit: Unit = place.unit!,
      asked: Asked = place.askedOf(unit),
      short = place.isDown ? DOWN : lacking(run, place, unit, asked, true);
    if (short < 0) {
      if (before === null) pool.head = next;
      else before.nextWaiting = next;
      pool.waiting--;
      takeNeeds(run, place, unit, asked);
      place.grant(run);
    } else {
      if (asked.supplyNeeds.length > 0) noteLack(run, place);
      if (asked.equipmentNeeds.length > 0) noteLackOfEquipment(run, place);
      place.idle(short);
      before = place;
    }
    place = next;
  }
}

/** Gives the crew of the step at `place`, and its equipment, back, if they are there. */
export function releaseCrew(run: Run, place: Place): void {
  if (!place.holdsCrew) return;
  place.holdsCrew = false;
  for (const need of place.unit!.step.asked.needs) {
    const { resource, amount } = need;
    if (resource.isCrew) give(run, resource, amount);
    else if (resource.shared !== null && isWanted(place, need)) giveEquipment(run, place, need);
  }
}

/**
 * Whether the step needs people or equipment that are not there: they left between passes, or while the work
 * waited for a shift; or its team is without.
 */
export function lacksCrew(place: Place, step: Step): boolean {
  if ((step.flags & HAS_NEEDS) === 0) return false;
  const { needs, teamBits } = step.asked;
  if (teamBits !== 0 && lacksTeam(place.unit!, step.asked)) return true;
  return !place.holdsCrew && needs.length > 0 && needs[0].resource.isHeld;
}

/**
 * The state of shortage in which the request of a place stands; -1 if it can be met. With `marking`, it is
 * part of a scan: what an earlier request lacks is not for it, and what it lacks is not for later ones.
 */
export function lacking(run: Run, place: Claimant, unit: Unit, asked: Asked, marking: boolean): number {
  const { needs, ownParts, companions } = asked,
    crewOnly = !isToBegin(place.phase),
    noTeam = asked.teamBits === 0 ? -1 : lackingTeams(run, place, marking),
    // Who waits for the people of a team keeps nothing else from others.
    marks = marking && noTeam < 0;
  let short = -1;
  for (const need of needs) {
    const { resource, sum } = need;
    if ((crewOnly && !resource.isHeld) || !isWanted(place, need)) continue;
    if (resource.free >= sum && !(marks && resource.scarceAt === run.scan)) continue;
    resource.everLacked = true;
    // Who wants more people than this shift has waits for another one, and holds nobody up.
    const wanted = crewOnly || companions.length === 0 ? sum : wantedOf(unit, asked, resource);
    if (marks && !(resource.isCrew && wanted > resource.onHand)) resource.scarceAt = run.scan;
    short = shownOf(short, resource.isCrew ? SHORT_CREW : resource.isHeld ? SHORT_EQUIPMENT : SHORT_PARTS);
  }
  if (!crewOnly && (asked.companionBits & ~unit.companionBits) !== 0)
    short = lackingCompanions(unit, asked, run.scan, marks, short);
  if (!crewOnly && (unit.ownOff & ownParts) !== 0) return SHORT_PARTS;
  return noTeam >= 0 && (short < 0 || short === SHORT_CREW) ? noTeam : short;
}

/** Takes what the place asks for, which must be there. */
export function takeNeeds(run: Run, place: Claimant, unit: Unit, asked: Asked): void {
  const crewOnly = !isToBegin(place.phase);
  if (asked.teamBits !== 0) bringTeams(run, place);
  for (const need of asked.needs) {
    const { resource, amount, step } = need;
    if (resource.isHeld) {
      if (resource.isCrew) resource.change(-amount, run.now);
      else if (isWanted(place, need)) takeEquipment(run, place as Place, need);
      (place as Place).holdsCrew = true;
    } else if (!crewOnly) {
      resource.change(-amount, run.now);
      if (resource.feeder !== null) run.listFeed(resource.feeder);
      else resource.supply?.use(amount);
      if (resource.partDefects !== null) takeParts(run, unit.real, step, resource.partDefects, amount);
    }
  }
  if (!crewOnly && (asked.companionBits & ~unit.companionBits) !== 0) takeCompanions(unit, asked, run.now);
  if (asked.teamBits !== 0) place.teamOrder = teamOrderAt(place);
  if (place.lackedSupplies !== 0) endLack(run, place);
  if (place.lackedEquipment !== 0) endLackOfEquipment(run, place);
  if (unit.brought !== null && !crewOnly) takeOwnParts(run, unit, asked);
}

export function insertRequest(pool: Pool, place: Claimant): void {
  let before: Claimant | null = null,
    after = pool.head;
  while (after !== null && goesBefore(after, place)) {
    before = after;
    after = after.nextWaiting;
  }
  place.nextWaiting = after;
  if (before === null) pool.head = place;
  else before.nextWaiting = place;
  pool.waiting++;
}

/** Whether the step is still to begin: later only its crew is asked for. */
export const isToBegin = (phase: number): boolean => phase === WAIT_NEEDS || phase === WAIT_REST;

/** The order of requests: first those of units with teams that may be without people. */
export function goesBefore(a: Claimant, b: Claimant): boolean {
  if (a.teamOrder !== b.teamOrder) return a.teamOrder < b.teamOrder;
  const unitA = a.unit!,
    unitB = b.unit!,
    reworkA = unitA.rework !== null,
    reworkB = unitB.rework !== null;
  if (reworkA !== reworkB) return reworkA;
  if (a.askedAt !== b.askedAt) return a.askedAt < b.askedAt;
  if (unitA.number !== unitB.number) return unitA.number < unitB.number;
  return a.id < b.id;
}

import { CARRIER_BACK, SHORT_CARRIER, SHORT_CREW, shownOf } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import { LETS_GO, ON_WAY_BACK } from '../floor/step-flags.js';
import { NOT_CLAIMED, type Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Asked } from './asked.js';
import type { Companion } from './companion.js';
import type { Resource } from './resource.js';
import { give } from './resource.js';
import { endLack, lacksTeam } from './teams.js';

/**
 * Whether the unit is still to claim it at a step of its stretch. One that has given it back, and comes to a
 * step behind the one at which it claimed it, has been sent back: unless the planner says otherwise it goes
 * on without.
 */
export const isToClaim = (
  { companionBits: kept, claimedAt }: Unit,
  { id: step }: Asked,
  { bit, id, isClaimedAgain }: Companion,
): boolean =>
  (kept & bit) === 0 && (isClaimedAgain || claimedAt[id] === NOT_CLAIMED || step <= claimedAt[id]);

/** Nothing has to be claimed at the step: what is to stay with the unit is with it already, and at hand. */
export const hasAll = (unit: Unit, step: Asked): boolean =>
  step.needs.length === 0 &&
  !lacksTeam(unit, step) &&
  (step.ownParts & unit.ownOff) === 0 &&
  !step.companions.some((companion) => isToClaim(unit, step, companion));

/**
 * As `lacking` of `claims.ts`, for what is to stay with the unit; `short` is the state of shortage in its
 * other needs.
 */
export function lackingCompanions(
  unit: Unit,
  step: Asked,
  scan: number,
  marking: boolean,
  short: number,
): number {
  let state = short;
  for (const companion of step.companions) {
    const { resource } = companion;
    if (
      !isToClaim(unit, step, companion) ||
      (isThere(unit, step, resource) && !(marking && resource.scarceAt === scan))
    )
      continue;
    resource.everLacked = true;
    if (marking && !(resource.isCrew && wantedOf(unit, step, resource) > resource.onHand))
      resource.scarceAt = scan;
    state = shownOf(state, resource.isCrew ? SHORT_CREW : SHORT_CARRIER);
  }
  return state;
}

export function takeCompanions(unit: Unit, step: Asked, now: number): void {
  for (const companion of step.companions) {
    if (!isToClaim(unit, step, companion)) continue;
    unit.claimedAt[companion.id] = step.id;
    take(unit, companion, now);
  }
}

function take(unit: Unit, companion: Companion, now: number): void {
  const { id, bit, amount, resource } = companion;
  unit.companionBits |= bit;
  unit.teamOrder[id] = ++resource.pool.teams;
  unit.teamShift[id] = resource.position;
  resource.change(-amount, now);
  companion.change(1, 0, now);
}

/** Carriers, and crews of teams, that the unit waits for at its step. */
export const lackedOf = (unit: Unit, step: Asked): Resource[] =>
  step.companions
    .filter((companion) => isToClaim(unit, step, companion) && !isThere(unit, step, companion.resource))
    .map(({ resource }) => resource);

/** What is still to be claimed to stay with the unit. */
export const companionResources = (unit: Unit, step: Asked): Resource[] =>
  step.companions.filter((companion) => isToClaim(unit, step, companion)).map(({ resource }) => resource);

function isThere(unit: Unit, step: Asked, wanted: Resource): boolean {
  return wanted.free >= wantedOf(unit, step, wanted);
}

/** A crew may be asked for people of the step and for teams at once. */
export function wantedOf(unit: Unit, step: Asked, wanted: Resource): number {
  let sum = 0;
  for (const { resource, amount } of step.needs) if (resource === wanted) sum += amount;
  for (const companion of step.companions)
    if (companion.resource === wanted && isToClaim(unit, step, companion)) sum += companion.amount;
  return sum;
}

/**
 * A unit of the opening comes to a step: of what it claimed at one that it passed, it holds what stays up to
 * there. One that is not there it claims where it stands.
 */
export function holdFromStart(unit: Unit, passed: Step, step: Step): void {
  for (const companion of passed.asked.companions) {
    if (!isToClaim(unit, passed.asked, companion)) continue;
    if (companion.to >= step.id) {
      if (companion.resource.free < companion.amount) {
        companion.resource.everLacked = true;
        continue;
      }
      take(unit, companion, 0);
    }
    unit.claimedAt[companion.id] = passed.id;
  }
}

/** Rule 7: what stayed with a unit leaves it. People are free at once, a carrier when it is back. */

/**
 * Tells each step what leaves a unit that comes to it, or to the bank ahead of it, and what leaves one that
 * is done with it: what was to stay only up to an earlier step, or to this one. People stay at their site: a
 * team leaves its unit at a lane. On a way back there is nothing else that it gives back: it has come from
 * one of the steps. Flags must be set.
 */
export function furnishLettingGo(steps: readonly Step[], companions: readonly Companion[]): void {
  for (const step of steps) {
    const { id, flags, lane } = step,
      isOnWayBack = (flags & ON_WAY_BACK) !== 0;
    for (const { bit, to, resource } of companions) {
      const staysHere = lane !== null && resource.isCrew;
      if (staysHere || (to < id && !isOnWayBack)) step.letsGo |= bit;
      if (staysHere || (to <= id && !isOnWayBack)) step.letsGoBehind |= bit;
    }
    if (step.letsGo !== 0) step.flags |= LETS_GO;
  }
}

/** What of these bits is with the unit leaves it; all of it where none are said. */
export function letGo(run: Run, unit: Unit, bits = unit.companionBits): void {
  if ((unit.companionBits & bits) === 0) return;
  for (const companion of run.shop.companions) {
    if ((unit.companionBits & bits & companion.bit) === 0) continue;
    unit.companionBits &= ~companion.bit;
    if (companion.returnDraw < 0) {
      companion.change(-1, 0, run.now);
      if ((unit.unstaffed & companion.bit) !== 0) endLack(run, { unit, companion });
      else give(run, companion.resource, companion.amount);
    } else {
      companion.change(-1, 1, run.now);
      run.queue.push(
        run.memory.after(companion.returnCalendar, run.sampler.next(companion.returnDraw)),
        CARRIER_BACK,
        companion.sources.pop()!,
      );
    }
  }
}

/** A carrier is back. */
export function carrierBack(run: Run, source: number): void {
  const companion = run.shop.carriers[source];
  companion.sources.push(source);
  companion.change(0, -1, run.now);
  give(run, companion.resource, companion.amount);
}

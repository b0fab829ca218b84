import { CARRIER_BACK, SHORT_CARRIER, SHORT_CREW, shownOf } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import { NOT_CLAIMED, type Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import type { Companion } from './companion.js';
import type { Resource } from './resource.js';
import { give } from './resource.js';

/**
 * Whether the unit is still to claim it at a step of its stretch. One that has given it back, and comes to a
 * step behind the one at which it claimed it, has been sent back: unless the planner says otherwise it goes
 * on without.
 */
export const isToClaim = (
  { companionBits: kept, claimedAt }: Unit,
  { id: step }: Step,
  { bit, id, isClaimedAgain }: Companion,
): boolean =>
  (kept & bit) === 0 && (isClaimedAgain || claimedAt[id] === NOT_CLAIMED || step <= claimedAt[id]);

/** Nothing has to be claimed at the step: what is to stay with the unit is with it already. */
export const hasAll = (unit: Unit, step: Step): boolean =>
  step.needs.length === 0 &&
  (step.ownParts & unit.ownOff) === 0 &&
  !step.companions.some((companion) => isToClaim(unit, step, companion));

/**
 * As `lacking` of `claims.ts`, for what is to stay with the unit; `short` is the state of shortage in its
 * other needs.
 */
export function lackingCompanions(
  unit: Unit,
  step: Step,
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
    if (marking) resource.scarceAt = scan;
    state = shownOf(state, resource.isCrew ? SHORT_CREW : SHORT_CARRIER);
  }
  return state;
}

export function takeCompanions(unit: Unit, step: Step, now: number): void {
  for (const companion of step.companions) {
    if (!isToClaim(unit, step, companion)) continue;
    unit.companionBits |= companion.bit;
    unit.claimedAt[companion.id] = step.id;
    companion.resource.change(-companion.amount, now);
    companion.change(1, 0, now);
  }
}

/** Carriers, and crews of teams, that the unit waits for at its step. */
export const lackedOf = (unit: Unit, step: Step): Resource[] =>
  step.companions
    .filter((companion) => isToClaim(unit, step, companion) && !isThere(unit, step, companion.resource))
    .map(({ resource }) => resource);

/** What is still to be claimed to stay with the unit. */
export const companionResources = (unit: Unit, step: Step): Resource[] =>
  step.companions.filter((companion) => isToClaim(unit, step, companion)).map(({ resource }) => resource);

/** Whether what is to stay with the unit would be there if everybody of the largest shift were. */
export const mayKeepAll = (unit: Unit, step: Step): boolean =>
  step.companions.every((companion) => {
    const { amount, resource } = companion;
    return (
      !isToClaim(unit, step, companion) ||
      (resource.isCrew ? resource.amount - resource.engagedNow : resource.free) >= amount
    );
  });

/** A crew may be asked for people of the step and for teams at once. */
function isThere(unit: Unit, step: Step, wanted: Resource): boolean {
  let sum = 0;
  for (const { resource, amount } of step.needs) if (resource === wanted) sum += amount;
  for (const companion of step.companions)
    if (companion.resource === wanted && isToClaim(unit, step, companion)) sum += companion.amount;
  return wanted.free >= sum;
}

/**
 * A unit of the opening comes to a step: of what it claimed at one that it passed, it holds what stays up to
 * there. One that is not there it claims where it stands.
 */
export function holdFromStart(unit: Unit, passed: Step, step: Step): void {
  for (const companion of passed.companions) {
    if (!isToClaim(unit, passed, companion)) continue;
    if (companion.to >= step.id) {
      if (companion.resource.free < companion.amount) continue;
      unit.companionBits |= companion.bit;
      companion.resource.change(-companion.amount, 0);
      companion.change(1, 0, 0);
    }
    unit.claimedAt[companion.id] = passed.id;
  }
}

/** Rule 7: what stayed with a unit leaves it. People are free at once, a carrier when it is back. */

/**
 * The unit has come to step `beyond`: what was to stay only up to an earlier one is given back; `Infinity`:
 * it leaves its route.
 */
export function letGo(run: Run, unit: Unit, beyond: number): void {
  for (const companion of run.shop.companions) {
    if ((unit.companionBits & companion.bit) === 0 || companion.to >= beyond) continue;
    unit.companionBits &= ~companion.bit;
    if (companion.returnDraw < 0) {
      companion.change(-1, 0, run.now);
      give(run, companion.resource, companion.amount);
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

import { CARRIER_BACK, SHORT_CARRIER, SHORT_CREW, SHORT_PARTS } from '../floor/states.js';
import type { Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import type { CompanionColumns } from '../model/resources.js';
import type { Run } from '../run.js';
import type { Resource } from './resource.js';
import { give } from './resource.js';

/** A unit keeps them as bits. */
const MOST_COMPANIONS = 31;

/**
 * What stays with a unit from one step to another: a carrier, or a team, which is some people of a crew.
 * Counted in holds.
 */
export class Companion {
  /** Kept by units now, and carriers on the way back. */
  held = 0;
  coming = 0;
  /** Holds that ended, minutes of all holds, and of ways back. */
  ended = 0;
  heldMinutes = NaN;
  comingMinutes = NaN;
  /** Event sources of those not on the way back. */
  readonly sources: number[] = [];
  /** Of carriers that are there only from some day on. */
  comingSources: number[] = [];
  private since = NaN;

  /** Stands for it on a unit. */
  readonly bit: number;
  readonly amount: number;
  readonly from: number;
  readonly to: number;
  readonly returnDraw: number;
  readonly returnCalendar: number;

  constructor(
    id: number,
    columns: CompanionColumns,
    readonly resource: Resource,
  ) {
    this.bit = 1 << id;
    this.amount = columns.amount[id];
    this.from = columns.from[id];
    this.to = columns.to[id];
    this.returnDraw = columns.returnDraw[id];
    this.returnCalendar = columns.returnCalendar[id];
    this.since = 0;
    this.clear();
  }

  change(held: number, coming: number, now: number): void {
    this.settle(now);
    this.held += held;
    this.coming += coming;
    if (held < 0) this.ended++;
  }

  settle(now: number): void {
    this.heldMinutes += this.held * (now - this.since);
    this.comingMinutes += this.coming * (now - this.since);
    this.since = now;
  }

  clear(): void {
    this.ended = 0;
    this.heldMinutes = 0;
    this.comingMinutes = 0;
  }
}

export function buildCompanions({ companions: columns }: Model, resources: readonly Resource[]): Companion[] {
  if (columns.count > MOST_COMPANIONS)
    throw new RangeError(`carriers and teams: expected ${MOST_COMPANIONS} at most, got ${columns.count}`);
  return columns.names.map((_, s) => new Companion(s, columns, resources[columns.resource[s]]));
}

/** Gives each carrier that takes time to come back an event source, its index in the answer. */
export function furnishCarriers(companions: readonly Companion[]): Companion[] {
  const carriers: Companion[] = [];
  for (const companion of companions)
    if (companion.returnDraw >= 0)
      for (let c = 0; c < companion.resource.amount; c++)
        companion.sources.push(carriers.push(companion) - 1);
  return carriers;
}

/** Nothing has to be claimed at the step: what is to stay with the unit is with it already. */
export const hasAll = (
  { companionBits: kept, ownOff }: Unit,
  { needs, ownParts, companions }: Step,
): boolean =>
  needs.length === 0 && (ownParts & ownOff) === 0 && companions.every(({ bit }) => (kept & bit) !== 0);

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
  for (const { bit, resource } of step.companions) {
    if (
      (unit.companionBits & bit) !== 0 ||
      (isThere(unit, step, resource) && !(marking && resource.scarceAt === scan))
    )
      continue;
    if (marking) resource.scarceAt = scan;
    if (!resource.isCrew && state !== SHORT_PARTS) state = SHORT_CARRIER;
    else if (state < 0) state = SHORT_CREW;
  }
  return state;
}

export function takeCompanions(unit: Unit, { companions }: Step, now: number): void {
  for (const companion of companions) {
    if ((unit.companionBits & companion.bit) !== 0) continue;
    unit.companionBits |= companion.bit;
    companion.resource.change(-companion.amount, now);
    companion.change(1, 0, now);
  }
}

/** Carriers, and crews of teams, that the unit waits for at its step. */
export const lackedOf = (unit: Unit, step: Step): Resource[] =>
  step.companions
    .filter(({ bit, resource }) => (unit.companionBits & bit) === 0 && !isThere(unit, step, resource))
    .map(({ resource }) => resource);

/** What is still to be claimed to stay with the unit. */
export const companionResources = (unit: Unit, { companions }: Step): Resource[] =>
  companions.filter(({ bit }) => (unit.companionBits & bit) === 0).map(({ resource }) => resource);

/** Whether what is to stay with the unit would be there if everybody of the largest shift were. */
export const mayKeepAll = (unit: Unit, { companions }: Step): boolean =>
  companions.every(
    ({ bit, amount, resource }) =>
      (unit.companionBits & bit) !== 0 ||
      (resource.isCrew ? resource.amount - resource.engagedNow : resource.free) >= amount,
  );

/** A crew may be asked for people of the step and for teams at once. */
function isThere(unit: Unit, { needs, companions }: Step, wanted: Resource): boolean {
  let sum = 0;
  for (const { resource, amount } of needs) if (resource === wanted) sum += amount;
  for (const { bit, resource, amount } of companions)
    if (resource === wanted && (unit.companionBits & bit) === 0) sum += amount;
  return wanted.free >= sum;
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

import type { Route, Step } from '../floor/step.js';
import { ASKS_AHEAD, AT_LOT, IN_KIT } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import { REWORK_ONLY } from '../model/steps.js';
import type { Run } from '../run.js';
import { meetsConditions } from '../tasks/options.js';
import type { Companion } from './companion.js';
import type { Need } from './needs.js';
import type { Pool, Resource } from './resource.js';

/** What is claimed together: that of a step, the part of it that is claimed at one place, or a kit. */
export interface Asked {
  readonly id: number;
  readonly needs: readonly Need[];
  /** Those of the needs that are supplies, one for each. */
  readonly supplyNeeds: readonly Pick<Need, 'resource' | 'amount'>[];
  /** Those of the needs that are equipment. */
  readonly equipmentNeeds: readonly Need[];
  /** What has to be with the unit; none at a station with lots, where nothing is claimed for single units. */
  readonly companions: readonly Companion[];
  /** Teams of crews whose people change that do the work, and their bits. */
  readonly teams: readonly Companion[];
  readonly teamBits: number;
  /** Bits of the own parts that must be on the unit or back at it. */
  readonly ownParts: number;
  readonly pool: Pool | null;
}

/**
 * Rule 6, full kit: a sub-assembly sets the parts of all steps aside that it is sure to do, before it begins.
 * Not those of a sample, of rework, or of a lot, of which one unit takes the parts. Rule 2: a step may claim
 * all but its crew ahead of the station. Flags must be set, pools not yet joined.
 */
export function furnishKits(model: Model, routes: readonly Route[], steps: readonly Step[]): void {
  const { sampleN, rework } = model.steps;
  for (const route of routes)
    if (model.routes.fullKit[route.id] === 1) {
      const sure = steps.filter(
        ({ id, flags, needs, route: its }) =>
          its === route &&
          needs.some(isPart) &&
          sampleN[id] === 0 &&
          rework[id] !== REWORK_ONLY &&
          (flags & AT_LOT) === 0,
      );
      for (const step of sure) {
        step.flags |= IN_KIT;
        step.rest = restOf(step);
      }
      route.kitSteps = sure;
      route.kit = kitOf(sure);
    }
  for (const step of steps) {
    if ((step.flags & ASKS_AHEAD) === 0) continue;
    step.rest = restOf(step);
    step.ahead = partOf(step, isPart);
  }
}

/** The parts that a sub-assembly of these options begins with; null: none. */
export function kitFor(run: Run, route: Route, part: Unit): Asked | null {
  const { kit, kitSteps } = route;
  if (kit === null || route.ownBit === 0) return kit;
  const done = kitSteps.filter((step) => meetsConditions(run, part, step));
  return done.length === kitSteps.length ? kit : kitOf(done);
}

/**
 * Whether what the step takes is set aside for the unit: in the kit with which it began, unless it does the
 * step again; or claimed ahead of the station just now.
 */
export function isSetAside(unit: Unit, { flags, id }: Step): boolean {
  const isReady = (flags & IN_KIT) !== 0 ? unit.againTo < id : unit.isReady;
  unit.isReady = false;
  return isReady;
}

const isPart = ({ resource }: Need): boolean => !resource.isHeld;

/** What is claimed at the place where the parts are set aside already. */
const restOf = (step: Step): Asked => partOf(step, (need) => !isPart(need));

/** Its pool is known later, when those of all steps have been joined. */
function partOf(step: Step, isWanted: (need: Need) => boolean): Asked {
  const needs = step.needs.filter(isWanted);
  return {
    id: step.id,
    needs,
    supplyNeeds: needs.filter(({ resource }) => resource.supply !== null),
    equipmentNeeds: needs.filter(({ resource }) => resource.shared !== null),
    companions: step.companions,
    teams: step.teams,
    teamBits: step.teamBits,
    ownParts: step.ownParts,
    get pool() {
      return step.pool;
    },
  };
}

function kitOf(steps: readonly Step[]): Asked | null {
  const parts = steps.flatMap(({ needs }) => needs.filter(isPart)),
    sums = new Map<Resource, number>();
  if (parts.length === 0) return null;
  for (const { resource, amount } of parts) sums.set(resource, (sums.get(resource) ?? 0) + amount);
  return {
    id: parts[0].step,
    needs: parts.map((need) => ({ ...need, sum: sums.get(need.resource)! })),
    supplyNeeds: Array.from(sums, ([resource, amount]) => ({ resource, amount })).filter(
      ({ resource }) => resource.supply !== null,
    ),
    equipmentNeeds: [],
    companions: [],
    teams: [],
    teamBits: 0,
    ownParts: 0,
    get pool() {
      return parts[0].resource.pool;
    },
  };
}

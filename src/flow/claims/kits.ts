import { bringItem } from '../floor/defects.js';
import type { Route, Step } from '../floor/step.js';
import { ASKS_AHEAD, IN_KIT } from '../floor/step-flags.js';
import type { Unit } from '../floor/unit.js';
import type { Model } from '../model/model.js';
import { CLEAN } from '../model/quality.js';
import { isInKit } from '../model/steps.js';
import type { Run } from '../run.js';
import { meetsConditions } from '../tasks/options.js';
import { Asked } from './asked.js';
import type { Need } from './needs.js';
import type { Resource } from './resource.js';

/**
 * Rule 6, full kit: a sub-assembly sets the parts of all steps aside that it is sure to do, before it begins.
 * Not those of a sample, of rework, or of a lot, of which one unit takes the parts. Rule 2: a step may claim
 * all but its crew ahead of the station. Flags must be set, pools not yet joined.
 */
export function furnishKits(model: Model, routes: readonly Route[], steps: readonly Step[]): void {
  for (const route of routes) {
    route.kitSteps = steps.filter(
      ({ id, asked, route: its }) => its === route && asked.needs.some(isPart) && isInKit(model, id),
    );
    route.kit = kitOf(route.kitSteps);
    for (const step of route.kitSteps) {
      step.flags |= IN_KIT;
      step.rest = restOf(step);
    }
  }
  for (const step of steps) {
    if ((step.flags & ASKS_AHEAD) === 0) continue;
    step.rest = restOf(step);
    step.ahead = partOf(step, isPart);
  }
}

/**
 * The parts that a sub-assembly of these options begins with; null: none.
 * @param upTo id of the last step whose parts are wanted
 */
export function kitFor(run: Run, { kit, kitSteps }: Route, part: Unit, upTo: number): Asked | null {
  if (kit === null) return null;
  const done = kitSteps.filter((step) => step.id <= upTo && meetsConditions(run, part, step));
  return done.length === kitSteps.length ? kit : kitOf(done);
}

/** Id of the last step that a sub-assembly came to: what it set aside for those behind is not built in. */
export const builtUpTo = ({ step, againTo }: Unit): number => Math.max(step.id, againTo);

/** A new one gets what another one set aside and never built in, with the items that are on it. */
export function handOver(run: Run, { kitSteps }: Route, from: Unit, part: Unit): void {
  const upTo = builtUpTo(from);
  for (const { id, asked } of kitSteps) {
    if (id <= upTo || from.notClean === 0) continue;
    for (const { resource } of asked.needs)
      for (const slot of resource.partDefects?.slots ?? []) {
        if (from.slots[slot] === CLEAN || from.slotTarget[slot] !== id) continue;
        if (!bringItem(part, slot, from.slots[slot], from.notes[slot], id)) run.tally.quality.merged[slot]++;
      }
  }
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
function partOf({ id, asked }: Step, isWanted: (need: Need) => boolean): Asked {
  const part = new Asked(id);
  part.want(asked.needs.filter(isWanted));
  part.keep(asked.companions);
  part.staffWith(asked.teams);
  part.ownParts = asked.ownParts;
  return part;
}

function kitOf(steps: readonly Step[]): Asked | null {
  const parts = steps.flatMap(({ asked }) => asked.needs.filter(isPart)),
    sums = new Map<Resource, number>();
  if (parts.length === 0) return null;
  for (const { resource, amount } of parts) sums.set(resource, (sums.get(resource) ?? 0) + amount);
  const kit = new Asked(parts[0].step);
  kit.want(
    parts.map((need) => ({ ...need, sum: sums.get(need.resource)! })),
    Array.from(sums, ([resource, amount]) => ({ resource, amount })),
  );
  kit.pool = parts[0].resource.pool;
  return kit;
}

import { letGo } from '../claims/carriers.js';
import { request } from '../claims/claims.js';
import { bringBack, ownPartBack, takeAlong } from '../claims/joins.js';
import { builtUpTo, handOver, kitFor } from '../claims/kits.js';
import { type Claimant, OutsideClaim } from '../claims/outside.js';
import { give } from '../claims/resource.js';
import type { Route, Step } from '../floor/step.js';
import type { Unit } from '../floor/unit.js';
import type { Run } from '../run.js';
import { startTask } from '../tasks/tasks.js';
import { comeIn } from './ahead.js';
import { shipped } from './entry-and-exit.js';
import { goIn } from './move.js';
import { stepFrom } from './routes.js';

/** Rule 6: sub-assemblies for a stock by a pull loop, and own parts that leave a unit and rejoin it. */

/**
 * Begins as many sub-assemblies as the pull loop of a feeder lacks: stock and making together are the target.
 */
export function feed(run: Run, route: Route): void {
  route.listed = false;
  if (route.stock === null) return;
  while (route.stock.free + route.making < route.target) beginPart(run, route, null);
}

/** Own parts leave the unit at the end of a step; those that are off already stay where they are. */
export function takeOff(run: Run, unit: Unit, step: Step): void {
  const { offStart, offRoute } = run.model.steps;
  for (let o = offStart[step.id]; o < offStart[step.id + 1]; o++) {
    const route = run.shop.routes[offRoute[o]];
    if ((unit.ownOff & route.ownBit) !== 0) continue;
    unit.ownOff |= route.ownBit;
    beginPart(run, route, unit);
  }
}

/**
 * A sub-assembly is scrapped: another is begun in its stead, for the stock or for the same unit. It gets what
 * was set aside and not built in.
 */
export function replace(run: Run, part: Unit): void {
  const { route } = part.step,
    { parent } = part,
    upTo = builtUpTo(part);
  if (route.kitSteps.some(({ id }) => id > upTo)) {
    beginPart(run, route, parent, part);
    run.units.remove(part);
    route.making--;
    return;
  }
  run.units.remove(part);
  route.making--;
  if (parent !== null) beginPart(run, route, parent);
  else run.listFeed(route);
}

/** The route of a unit or a sub-assembly is over. */
export function finishRoute(run: Run, unit: Unit, route: Route): void {
  letGo(run, unit);
  if (route.isMain) shipped(run, unit);
  else deliver(run, unit, route);
}

/**
 * The unit is gone: its own parts under way belong to nobody and are put aside at the end of their feeder.
 */
export function disownParts(run: Run, unit: Unit): void {
  for (const part of run.units.all) if (part.alive && part.parent === unit) part.parent = null;
}

/** A sub-assembly goes into the stock, or back to its unit. */
function deliver(run: Run, part: Unit, route: Route): void {
  const { parent } = part;
  run.units.remove(part);
  route.making--;
  if (route.stock !== null) {
    route.stock.partDefects?.put(part);
    give(run, route.stock, 1);
  } else if (parent !== null) {
    bringBack(run, part, parent);
    parent.ownOff &= ~route.ownBit;
    ownPartBack(run, parent);
  }
}

/**
 * A sub-assembly is to begin its feeder: for the stock, or the own parts of a unit; `scrapped`: in the stead
 * of another.
 */
export function beginPart(run: Run, route: Route, parent: Unit | null, scrapped: Unit | null = null): void {
  const part = run.units.create(parent?.number ?? ++route.begun, route.first!);
  part.parent = parent;
  if (parent === null) part.options.fill(0);
  else {
    part.options.set(parent.options);
    takeAlong(run, parent, part);
  }
  route.making++;
  if (scrapped !== null) handOver(run, route, scrapped, part);
  const kit = kitFor(run, route, part, scrapped === null ? Infinity : builtUpTo(scrapped));
  if (kit !== null) {
    part.asks = new OutsideClaim(part, kit, null);
    if (!request(run, part.asks)) return;
  }
  setOut(run, part);
}

/** What is asked for outside is granted: a sub-assembly begins, or a unit goes into its place. */
export function admit(run: Run, claim: Claimant): void {
  if (!(claim instanceof OutsideClaim)) startTask(run, claim);
  else if (claim.station === null) setOut(run, claim.unit);
  else comeIn(run, claim, claim.station);
}

/** A sub-assembly has its kit, or needs none. */
function setOut(run: Run, part: Unit): void {
  const { route } = part.step;
  part.asks = null;
  const step = stepFrom(run, part, route.first);
  if (step === null) deliver(run, part, route);
  else goIn(run, part, step);
}

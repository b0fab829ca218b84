import type { Resource } from './claims/resource.js';
import type { Supply } from './claims/supply.js';
import { AT_BASE, DOWN, EMPTYING, WAIT_DOCK, WAIT_NEEDS } from './floor/states.js';
import type { Station } from './floor/station.js';
import { CLEAN, FOUND, NOTED } from './floor/defects.js';
import type { Unit } from './floor/unit.js';
import type { Run } from './run.js';
import type { Lane } from './traffic/lane.js';

/** Relative room for rounding in sums of many floats. */
const ROUNDING = 1e-9;

/**
 * Always run at the end of a replication: units in = units out + units inside; each station's accounts add to
 * its place-time, those of each lane to its truck-time; the time integral of work in process equals the sum
 * of the times of the units (Little 1961, as an identity over the observed window); nobody and nothing is
 * claimed twice. A failure is a fault of the engine.
 * @throws Error naming the account and both sums
 */
export function audit(run: Run): void {
  const { shop, locations, tally, units } = run,
    elapsed = run.now - run.observedFrom;
  for (const { name, account, places } of shop.stations)
    expectEqual(`place-time of station ${name}`, sum(account), elapsed * places.length);
  for (const lane of shop.lanes) {
    expectEqual(
      `truck-time of lane ${lane.name}`,
      lane.busy + lane.blocked + lane.atBase,
      elapsed * lane.trucks.length,
    );
    auditLane(lane, expectEqual);
  }
  let inside = 0,
    outside = 0;
  for (const unit of units.all)
    if (unit.alive && unit.step.route.isMain) {
      if (unit.location >= 0) inside++;
      else outside++;
    }
  expectEqual('units inside', locations.total, inside);
  expectEqual('units begun', shop.routes[0].begun, run.gone + inside + outside);
  expectEqual("unit-minutes by Little's law", locations.totalArea, tally.unitMinutes);
  expectEqual('unit-minutes by location', sum(locations.area), tally.unitMinutes);
  if (run.model.programme.orders.replaceScrapped) expectEachOnce(run);
  for (const { id, unit } of shop.places)
    if (unit !== null && unit.place?.id !== id)
      throw new Error(`audit: place ${id} holds unit ${unit.number}, which stands elsewhere`);
  for (const station of shop.stations) auditDown(station);
  for (const { name, free, onHand, amount, isCrew } of shop.resources)
    if (free < 0 || (isCrew && free > onHand))
      throw new Error(`audit: ${name} must have 0 to ${isCrew ? onHand : amount} free; got ${free}`);
  for (const crew of shop.resources)
    if (crew.isCrew) expectEqual(`people of ${crew.name} engaged`, crew.engagedNow, heldBy(run, crew));
  for (const { name, free, partDefects } of shop.resources)
    if (partDefects !== null)
      expectEqual(`sub-assemblies with their items in the stock of ${name}`, partDefects.length, free);
  for (const unit of units.all) if (unit.alive) auditItems(unit);
  auditStays(run);
  for (const { name, stock, making, target } of shop.routes)
    if (stock !== null && stock.free + making > Math.max(target, stock.amount))
      throw new Error(
        `audit: feeder ${name} must not go over its target ${target}; got ${stock.free + making}`,
      );
  for (const supply of shop.supplies) auditSupply(supply);
}

/** The counts of a unit's items are those of its slots, and only what was found is noted. */
function auditItems(unit: Unit): void {
  const count = (is: (slot: number) => boolean): number => Array.from(unit.slots.keys()).filter(is).length,
    of = `of unit ${unit.number}`;
  expectEqual(
    `items ${of}`,
    unit.notClean,
    count((slot) => unit.slots[slot] !== CLEAN),
  );
  expectEqual(
    `items found ${of}`,
    unit.found,
    count((slot) => unit.slots[slot] === FOUND),
  );
  expectEqual(
    `items noted ${of}`,
    unit.noted,
    count((slot) => unit.notes[slot] > 0),
  );
  expectEqual(
    `noted items open ${of}`,
    count((slot) => unit.notes[slot] > 0 && unit.slots[slot] < NOTED),
    0,
  );
}

/** An order that is built again is neither twice on the floor nor shipped already. */
function expectEachOnce({ units, shippedAt }: Run): void {
  const seen = new Set<number>();
  for (const { alive, number, step } of units.all) {
    if (!alive || !step.route.isMain) continue;
    if (seen.has(number) || shippedAt[number - 1] >= 0)
      throw new Error(`audit: order ${number} must be built once at a time and shipped once`);
    seen.add(number);
  }
}

/** Places are free when they are empty and up, and only then; a place is down while its equipment is. */
function auditDown({ name, places, freePlace }: Station): void {
  let free = 0;
  for (let place = freePlace; place !== null; place = place.nextFree) free++;
  expectEqual(
    `free places of station ${name}`,
    free,
    places.filter(({ unit, isDown }) => unit === null && !isDown).length,
  );
  for (const { id, isDown, state, equipment } of places) {
    if (isDown !== (state === DOWN) || isDown !== (equipment?.isDown ?? false))
      throw new Error(`audit: place ${id} of ${name} must be down with its equipment, and only then`);
  }
}

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);

function expectEqual(what: string, seen: number, wanted: number): void {
  if (!(Math.abs(seen - wanted) <= ROUNDING * Math.max(1, Math.abs(wanted))))
    throw new Error(`audit: ${what} must be ${wanted}; got ${seen}`);
}

/**
 * Parts come and go as booked; orders, stock and the demand that waits make up the position on which lots are
 * ordered.
 */
function auditSupply(supply: Supply): void {
  const {
    stock: { name, free, amount, pool },
    unitsReceived,
    unitsUsed,
    coming,
    onOrder,
    isPlanned,
    position,
  } = supply;
  expectEqual(`stock of ${name}`, free, amount + unitsReceived - unitsUsed);
  expectEqual(
    `units of ${name} on order`,
    onOrder,
    coming.reduce((units, lot) => units + lot.units, 0),
  );
  if (isPlanned) return;
  let wanted = 0;
  for (let place = pool.head; place !== null; place = place.nextWaiting) {
    for (const need of place.unit!.step.supplies)
      if (need.resource.supply === supply && place.phase === WAIT_NEEDS) wanted += need.amount;
  }
  expectEqual(`stock and orders of ${name} less the demand that waits`, position, free + onOrder - wanted);
}

/** People of a crew that places and, as teams, units hold. */
export function heldBy({ places, shop }: Run, crew: Resource): number {
  let held = 0;
  for (const { holdsCrew, unit } of places)
    if (holdsCrew) for (const { resource, amount } of unit!.step.needs) if (resource === crew) held += amount;
  for (const { resource, amount, held: teams } of shop.stays) if (resource === crew) held += amount * teams;
  return held;
}

/**
 * Carriers and teams are counted as the units have them; carriers free, with units and on the way back are
 * all there are.
 * @throws Error naming the carriers or the crew, and both sums
 */
export function auditStays({ shop, units }: Run): void {
  for (const {
    bit,
    resource: { name, isCrew, amount, free },
    held,
    coming,
  } of shop.stays) {
    const kept = units.all.filter(({ alive, stays }) => alive && (stays & bit) !== 0).length;
    if (kept !== held) throw new Error(`audit: units that keep ${name} must be ${held}; got ${kept}`);
    if (!isCrew && free + kept + coming !== amount)
      throw new Error(
        `audit: ${name} free, kept and on the way back must be ${amount}; got ${free}, ${kept} and ${coming}`,
      );
  }
}

/**
 * The counts of a lane are those of its trucks; what it says of each is in one sentence: what, seen, wanted.
 */
export function auditLane(
  { name, trucks, ready, blockedNow }: Lane,
  expectEqual: (what: string, seen: number, wanted: number) => void,
): void {
  const inPhase = (phase: number): number => trucks.filter((truck) => truck.phase === phase).length,
    withoutRoom = inPhase(EMPTYING);
  expectEqual(`trucks of ${name} at base`, ready, inPhase(AT_BASE));
  expectEqual(
    `trucks of ${name} that wait for room`,
    blockedNow,
    withoutRoom + Math.min(withoutRoom, inPhase(WAIT_DOCK)),
  );
}

import { isWanted } from './claims/equipment.js';
import type { Resource } from './claims/resource.js';
import type { Supply } from './claims/supply.js';
import { AT_BASE, DOWN, EMPTYING, WAIT_DOCK, WAIT_NEEDS } from './floor/states.js';
import type { Station } from './floor/station.js';
import type { Unit } from './floor/unit.js';
import { countTime } from './model/later.js';
import { CLEAN, FOUND, NOTED } from './model/quality.js';
import type { Run } from './run.js';
import type { Lane } from './traffic/lane.js';

/** Relative room for rounding in sums of many floats. */
const ROUNDING = 1e-9;

/**
 * Always run at the end of a replication: units in = units out + units inside; each station's accounts add to
 * its place-time, those of each lane to its truck-time; the time integral of work in process equals the sum
 * of the times of the units (Little 1961, as an identity over the observed window); nobody and nothing is
 * claimed twice. A failure is a fault of the engine.
 * @throws Error naming the account, what it should be and what it is
 */
export function audit(run: Run): void {
  const { shop, units } = run,
    elapsed = run.now - run.observedFrom;
  auditUnits(run);
  for (const station of shop.stations) auditStation(station, elapsed);
  for (const lane of shop.lanes) auditLane(run, lane, elapsed);
  for (const { id, unit } of shop.places)
    if (unit !== null && unit.place?.id !== id)
      fault(`place ${id}`, 'the unit that stands there', `unit ${unit.number}`);
  for (const unit of units.all) if (unit.alive) auditItems(unit);
  for (const resource of shop.resources) auditResource(run, resource);
  auditCompanions(run);
  for (const { name, stock, making, target } of shop.routes)
    if (stock !== null && stock.free + making > Math.max(target, stock.amount))
      fault(`feeder ${name}`, `at most its target ${target}`, stock.free + making);
  for (const supply of shop.supplies) auditSupply(supply);
}

function auditUnits(run: Run): void {
  const { shop, locations, tally, units } = run;
  let inside = 0,
    outside = 0;
  for (const { alive, step, location } of units.all)
    if (alive && step.route.isMain) {
      if (location >= 0) inside++;
      else outside++;
    }
  expectEqual('units inside', locations.total, inside);
  expectEqual('units begun', shop.routes[0].begun, run.gone + inside + outside);
  expectEqual("unit-minutes by Little's law", locations.totalArea, tally.unitMinutes);
  expectEqual('unit-minutes by location', sum(locations.area), tally.unitMinutes);
  if (run.model.programme.orders.replaceScrapped) expectEachOnce(run);
}

/** An order that is built again is neither twice on the floor nor shipped already. */
function expectEachOnce({ units, shippedAt }: Run): void {
  const seen = new Set<number>();
  for (const { alive, number, step } of units.all) {
    if (!alive || !step.route.isMain) continue;
    if (seen.has(number) || shippedAt[number - 1] >= 0)
      fault(`order ${number}`, 'one unit at a time, shipped once', 'another');
    seen.add(number);
  }
}

/** The counts of a unit's items are those of its slots, and only what was found is noted. */
function auditItems({ number, slots, notes, notClean, found, noted }: Unit): void {
  let items = 0,
    itemsFound = 0,
    itemsNoted = 0,
    notedOpen = 0;
  for (let slot = 0; slot < slots.length; slot++) {
    if (slots[slot] !== CLEAN) items++;
    if (slots[slot] === FOUND) itemsFound++;
    if (notes[slot] > 0) itemsNoted++;
    if (notes[slot] > 0 && slots[slot] < NOTED) notedOpen++;
  }
  if (items !== notClean) fault(`items of unit ${number}`, items, notClean);
  if (itemsFound !== found) fault(`items found of unit ${number}`, itemsFound, found);
  if (itemsNoted !== noted) fault(`items noted of unit ${number}`, itemsNoted, noted);
  if (notedOpen !== 0) fault(`noted items open of unit ${number}`, notedOpen, 0);
}

/**
 * Places are free when they are empty and up, and only then; a place is down while equipment that it has is.
 */
function auditStation({ name, account, places, placeCount, freePlace }: Station, elapsed: number): void {
  expectEqual(`place-time of station ${name}`, sum(account), elapsed * placeCount);
  let free = 0;
  for (let place = freePlace; place !== null; place = place.nextFree) free++;
  const empty = places.filter(({ unit, isDown }) => unit === null && !isDown);
  expectEqual(`free places of station ${name}`, free, empty.length);
  for (const { id, isDown, state, equipment, pieces, sides } of places) {
    // A side that lacks a shared piece under repair may be what its place shows.
    const shown = state === DOWN && !sides.some((side) => side.isGoing && side.isDown);
    if (
      (isDown && state !== DOWN) ||
      (shown && !isDown) ||
      isDown !== [equipment, ...pieces].some((piece) => piece?.isDown)
    )
      fault(`place ${id} of ${name}`, 'down with its equipment, and only then', isDown ? 'down' : 'up');
  }
}

/** The counts of a lane are those of its trucks. */
function auditLane({ model, now }: Run, lane: Lane, elapsed: number): void {
  const { id, name, trucks, ready, blockedNow, busy, blocked, atBase } = lane,
    inPhase = (phase: number): number => trucks.filter((truck) => truck.phase === phase).length,
    withoutRoom = inPhase(EMPTYING),
    wait = withoutRoom + Math.min(withoutRoom, inPhase(WAIT_DOCK)),
    truckTime = countTime(model, now, elapsed, ({ lanes }) => lanes.trucks[id]);
  expectEqual(`truck-time of lane ${name}`, busy + blocked + atBase, truckTime);
  expectEqual(`trucks of ${name} at base`, ready, inPhase(AT_BASE));
  expectEqual(`trucks of ${name} that wait for room`, blockedNow, wait);
}

function auditResource(run: Run, resource: Resource): void {
  const { name, free, onHand, amount, isHeld, partDefects } = resource;
  if (free < 0 || (isHeld && free > onHand)) fault(name, `0 to ${isHeld ? onHand : amount} free`, free);
  if (isHeld) expectEqual(`${name} engaged`, resource.engagedNow, heldBy(run, resource));
  if (partDefects !== null)
    expectEqual(`sub-assemblies with their items in the stock of ${name}`, partDefects.length, free);
}

/** People of a crew that places and, as teams, units hold; equipment that places hold. */
function heldBy({ places, shop }: Run, crew: Resource): number {
  let held = 0;
  for (const place of places)
    if (place.holdsCrew)
      for (const need of place.unit!.step.asked.needs)
        if (need.resource === crew && isWanted(place, need)) held += need.amount;
  for (const { resource, amount, held: teams, unstaffed } of shop.companions)
    if (resource === crew) held += amount * (teams - unstaffed);
  return held;
}

/**
 * Carriers and teams are counted as the units have them; carriers free, with units and on the way back are
 * all there are.
 */
function auditCompanions({ shop, units }: Run): void {
  for (const { bit, resource, held, coming, unstaffed } of shop.companions) {
    const { name, isCrew, amount, free } = resource,
      kept = units.all.filter(({ alive, companionBits }) => alive && (companionBits & bit) !== 0).length;
    expectEqual(`units that keep ${name}`, held, kept);
    const without = units.all.filter((unit) => unit.alive && (unit.unstaffed & bit) !== 0).length;
    expectEqual(`teams of ${name} without people`, unstaffed, without);
    if (!isCrew) expectEqual(`${name} free, kept and on the way back`, free + kept + coming, amount);
  }
}

/**
 * Parts come and go as booked; orders, stock and the demand that waits make up the position on which lots are
 * ordered.
 */
function auditSupply(supply: Supply): void {
  const { stock, unitsReceived, unitsUsed, coming, onOrder, isPlanned, position } = supply,
    { name, free, amount, pool } = stock,
    ordered = coming.reduce((units, lot) => units + lot.units, 0);
  expectEqual(`stock of ${name}`, free, amount + unitsReceived - unitsUsed);
  expectEqual(`units of ${name} on order`, onOrder, ordered);
  if (isPlanned) return;
  let wanted = 0;
  for (let place = pool.head; place !== null; place = place.nextWaiting) {
    for (const need of place.asked.supplyNeeds)
      if (need.resource.supply === supply && place.phase === WAIT_NEEDS) wanted += need.amount;
  }
  expectEqual(`stock and orders of ${name} less the demand that waits`, position, free + onOrder - wanted);
}

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);

function expectEqual(what: string, got: number, expected: number): void {
  if (!(Math.abs(got - expected) <= ROUNDING * Math.max(1, Math.abs(expected)))) fault(what, expected, got);
}

function fault(what: string, expected: string | number, got: string | number): never {
  throw new Error(`audit, ${what}: expected ${expected}, got ${got}`);
}

import { Buffer } from './floor/buffer.js';
import { furnishEquipment } from './interruptions/disruption.js';
import type { Equipment } from './floor/equipment.js';
import type { Calendar } from './floor/calendar.js';
import { Lane, Truck } from './traffic/lane.js';
import type { Memory } from './floor/memory.js';
import { CarriedItems } from './claims/joins.js';
import type { Model } from './model/model.js';
import { REWORK_BOTH } from './model/steps.js';
import { HOLD_NONE } from './model/quality.js';
import type { Plan } from './plan.js';
import { plainFlags } from './traffic/short-way.js';
import { buildPulseLines, type PulseLine } from './traffic/pulse-line.js';
import { Pool, Resource } from './claims/resource.js';
import type { Place } from './floor/place.js';
import { SidePlace } from './floor/side-place.js';
import { Station } from './floor/station.js';
import { Stay } from './claims/carrier.js';
import { Supply } from './claims/supply.js';
import type { Units } from './floor/unit.js';
import {
  AT_LOT,
  ATTENDED_END,
  CAN_FAIL,
  HAS_CHANGEOVER,
  HAS_FACTOR,
  HAS_NEEDS,
  HAS_OFF,
  HAS_PASSES,
  HAS_PATH,
  HAS_PROCESS,
  HAS_QUALITY,
  HOLDS,
  IS_BESIDE,
  IS_COUNTED,
  IS_GROUP,
  IS_INSPECTION,
  IS_TARGET,
  LEARNS,
  ONE_SHIFT,
  PULSED,
  Route,
  Step,
  type Need,
} from './floor/step.js';

/**
 * The shop floor of one replication as objects that point at each other, empty, in the order of the model's
 * ids.
 */
export interface Shop {
  readonly stations: readonly Station[];
  readonly places: readonly Place[];
  readonly resources: readonly Resource[];
  readonly supplies: readonly Supply[];
  readonly lanes: readonly Lane[];
  readonly trucks: readonly Truck[];
  readonly routes: readonly Route[];
  readonly steps: readonly Step[];
  readonly inspections: readonly Step[];
  readonly holds: readonly Step[];
  readonly equipment: readonly Equipment[];
  readonly pulseLines: readonly PulseLine[];
  readonly stays: readonly Stay[];
  /** By event source: what the carrier is that may come back. */
  readonly carriers: readonly Stay[];
}

type CalendarOf = (id: number) => Calendar | null;

/** Builds it on the records of `memory`, and tells `units` of it. */
export function buildShop(plan: Pick<Plan, 'model' | 'calendars'>, memory: Memory, units: Units): Shop {
  const { model } = plan,
    calendarOf: CalendarOf = (id) => (id < 0 ? null : plan.calendars[id]);
  const places: Place[] = [],
    trucks: Truck[] = [];
  const stations = buildStations(model, places, memory, units),
    lanes = buildLanes(model, calendarOf, trucks, memory, units),
    routes = buildRoutes(model);
  const equipment = furnishEquipment(model, stations, memory),
    pulseLines = buildPulseLines(model, stations, memory);
  const resources = buildResources(model, calendarOf, routes);
  const supplies = buildSupplies(model, resources);
  const steps = buildSteps(model, { stations, lanes, routes }, memory);
  const inspections: Step[] = [],
    holds: Step[] = [],
    stays = buildStays(model, resources),
    carriers = furnishCarriers(stays);
  for (const step of steps) {
    describe(model, step, resources, routes, stays);
    if (step.group !== null) joinGroup(step, step.group);
    if ((step.flags & IS_INSPECTION) !== 0) {
      step.inspection = inspections.length;
      inspections.push(step);
    }
    if ((step.flags & HOLDS) !== 0) {
      step.hold = holds.length;
      holds.push(step);
    }
  }
  markTargets(model, steps);
  furnishCarried(model, routes);
  const plain = steps.map(plainFlags);
  for (const step of steps) step.flags |= plain[step.id];
  joinPools(steps, resources);
  leaveTheLongWay(steps, stays);
  units.furnish(steps, places, {
    options: model.options.length,
    slots: model.slots.count,
    thens: model.thens.count,
    inspections: inspections.length,
  });
  buildSides(model, stations, places, memory, units);
  for (const station of stations)
    for (const place of station.places.toReversed()) {
      place.nextFree = station.freePlace;
      station.freePlace = place;
    }
  return {
    stations,
    places,
    resources,
    supplies,
    lanes,
    trucks,
    routes,
    steps,
    inspections,
    holds,
    equipment,
    pulseLines,
    stays,
    carriers,
  };
}

function buildStations(
  { stations: columns }: Model,
  places: Place[],
  memory: Memory,
  units: Units,
): Station[] {
  return columns.names.map((name, s) => {
    const buffer = new Buffer(s, columns.buffer[s], columns.reworkBuffer[s], columns.site[s], memory, units);
    const station = new Station(
      s,
      name,
      buffer,
      columns.calendar[s],
      columns.changeoverOption[s],
      columns.lotLeast[s],
      columns.lotMost[s],
      columns.lotWait[s],
      memory,
      units,
    );
    buffer.station = station;
    places.push(...station.furnish(places.length, columns.places[s]));
    return station;
  });
}

function buildLanes(
  { lanes: columns, siteNames, stations }: Model,
  calendarOf: CalendarOf,
  trucks: Truck[],
  memory: Memory,
  units: Units,
): Lane[] {
  return columns.names.map((name, l) => {
    const bank = new Buffer(stations.count + l, columns.bank[l], -1, columns.from[l], memory, units);
    const lane = new Lane(
      l,
      name,
      bank,
      columns.trucks[l],
      calendarOf(columns.driveCalendar[l]),
      siteNames.length + l,
    );
    bank.lane = lane;
    for (let t = 0; t < columns.trucks[l]; t++) {
      const truck = new Truck(trucks.length, lane);
      trucks.push(truck);
      lane.trucks.push(truck);
    }
    return lane;
  });
}

function buildRoutes({ routes: columns }: Model): Route[] {
  let ownBits = 0;
  const routes = columns.names.map(
    (name, r) => new Route(r, name, r === 0, columns.own[r] ? 1 << ownBits++ : 0, columns.target[r]),
  );
  if (ownBits > 31) throw new RangeError(`feeders of own parts must be 31 at most; got ${ownBits}`);
  return routes;
}

function buildResources(
  { resources: columns, routes: routeColumns }: Model,
  calendarOf: CalendarOf,
  routes: Route[],
): Resource[] {
  const feederOf = new Map(
    routes.filter((_, r) => routeColumns.stock[r] >= 0).map((route) => [routeColumns.stock[route.id], route]),
  );
  return columns.names.map((name, r) => {
    const feeder = feederOf.get(r) ?? null,
      resource = new Resource(
        name,
        columns.kind[r],
        columns.amount[r],
        calendarOf(columns.calendar[r]),
        feeder,
      );
    if (feeder !== null) feeder.stock = resource;
    return resource;
  });
}

function buildSupplies({ supplies: columns }: Model, resources: Resource[]): Supply[] {
  return Array.from(
    columns.resource,
    (r, id) => (resources[r].supply = new Supply(id, columns, resources[r])),
  );
}

function buildSteps(
  { steps: columns, routes: routeColumns, beside }: Model,
  { stations, lanes, routes }: Pick<Shop, 'stations' | 'lanes' | 'routes'>,
  memory: Memory,
): Step[] {
  const steps = columns.names.map((name, t) => {
    const station = columns.station[t] < 0 ? null : stations[columns.station[t]],
      lane = columns.lane[t] < 0 ? null : lanes[columns.lane[t]];
    return new Step(
      t,
      name,
      routes[columns.route[t]],
      station,
      lane,
      station?.buffer ?? lane!.bank,
      columns.workCalendar[t],
      columns.workDraw[t],
      columns.passes[t],
      columns.settleDraw[t],
      columns.processDraw[t],
      memory,
    );
  });
  for (const route of routes) {
    const first = routeColumns.firstStep[route.id],
      end = routeColumns.firstStep[route.id + 1];
    if (first < end) route.first = steps[first];
    for (let t = first, last: Step | null = null; t < end; t++) {
      const step = steps[t],
        group = beside.group[t];
      if (group >= 0) {
        step.group = steps[group];
        continue;
      }
      if (last !== null) last.next = step;
      last = step;
    }
  }
  return steps;
}

/** The flags of a step, and what it claims. */
function describe(
  { steps: columns, stations, overtime, quality }: Model,
  step: Step,
  resources: Resource[],
  routes: readonly Route[],
  stays: readonly Stay[],
): void {
  const t = step.id,
    filled = (start: Int32Array): boolean => start[t + 1] > start[t];
  const needs: Need[] = [];
  for (let n = columns.needStart[t]; n < columns.needStart[t + 1]; n++)
    needs.push({ resource: resources[columns.needResource[n]], amount: columns.needAmount[n] });
  step.needs = needs;
  step.supplies = needs.filter(({ resource }) => resource.supply !== null);
  if (step.station?.lotMost === 0) step.stays = stays.filter(({ from, to }) => from <= t && t <= to);
  for (let n = columns.ownStart[t]; n < columns.ownStart[t + 1]; n++)
    step.ownParts |= routes[columns.ownRoute[n]].ownBit;
  let flags = 0;
  if (needs.length > 0 || step.ownParts !== 0 || step.stays.length > 0) flags |= HAS_NEEDS;
  if (filled(columns.createStart)) flags |= HAS_QUALITY;
  if (filled(columns.findStart)) flags |= HAS_QUALITY | IS_INSPECTION;
  if (filled(columns.offStart)) flags |= HAS_OFF;
  if (filled(columns.whenStart) || columns.sampleN[t] > 0 || columns.rework[t] !== REWORK_BOTH)
    flags |= HAS_PATH;
  if (step.passes > 1 || step.settleDraw >= 0) flags |= HAS_PASSES;
  if (filled(columns.factorStart)) flags |= HAS_FACTOR;
  if (columns.learnExponent[t] !== 0) flags |= LEARNS;
  if (step.processDraw >= 0) flags |= HAS_PROCESS;
  // Whether a unit passes it over, and that it goes on, is seen to by the rules of the path and of quality.
  if (quality.hold[t] !== HOLD_NONE) flags |= HOLDS | HAS_PATH | HAS_QUALITY;
  if (columns.oneShift[t] === 1 && step.workCalendar >= 0) flags |= ONE_SHIFT;
  if (columns.attendedEnd[t] === 1 && step.workCalendar >= 0 && step.processDraw >= 0) flags |= ATTENDED_END;
  if (overtime.some((rule) => rule.step === t)) flags |= IS_COUNTED;
  if (step.station !== null && stations.lotMost[step.station.id] > 0) flags |= AT_LOT;
  if (step.station !== null && step.station.changeoverOption >= 0) flags |= HAS_CHANGEOVER;
  if (step.station !== null && step.station.equipment.length > 0) flags |= CAN_FAIL;
  if (step.station !== null && step.station.line !== null) flags |= PULSED;
  step.flags = flags;
}

/**
 * The step is one of several side by side: it has no place of its own to be set up, and what stays with the
 * unit is claimed by the group.
 */
function joinGroup(step: Step, group: Step): void {
  group.beside.push(step);
  group.flags |= IS_GROUP | (step.flags & HAS_QUALITY);
  step.stays = [];
  step.flags =
    (step.flags & ~(HAS_CHANGEOVER | HAS_NEEDS | CAN_FAIL)) |
    IS_BESIDE |
    (step.needs.length > 0 ? HAS_NEEDS : 0);
}

/** The sides of places come after all places. */
function buildSides(
  { beside }: Model,
  stations: readonly Station[],
  places: Place[],
  memory: Memory,
  units: Units,
): void {
  for (const station of stations) {
    station.people = beside.people[station.id];
    for (const place of station.places) {
      for (let s = 0; s < beside.most[station.id]; s++) {
        const side = new SidePlace(places.length, station, memory, units, place);
        place.sides.push(side);
        places.push(side);
      }
    }
  }
}

/** A step mends the items for which a unit is sent back to it; a failed test leaves no item. */
function markTargets({ steps: { findSlot, findThen }, thens }: Model, steps: readonly Step[]): void {
  findSlot.forEach((slot, f) => {
    const target = thens.target[findThen[f]];
    if (slot >= 0 && target >= 0) steps[target].flags |= HAS_QUALITY | IS_TARGET;
  });
}

/** Where sub-assemblies may bring items along, a stock knows those of each one in it. */
function furnishCarried({ quality: { carriedStart, carriedSlot } }: Model, routes: readonly Route[]): void {
  for (const { id, stock, target } of routes) {
    const slots = carriedSlot.subarray(carriedStart[id], carriedStart[id + 1]);
    routes[id].carriedSlots = slots;
    if (stock === null || slots.length === 0) continue;
    stock.carried = new CarriedItems(slots, Math.max(target, stock.amount));
    stock.carried.fill(stock.amount);
  }
}

/**
 * Resources that a step wants together share a pool; a step that waits for own parts alone has one of its
 * own.
 */
function joinPools(steps: readonly Step[], resources: readonly Resource[]): void {
  const wantedBy = ({ needs, stays }: Step): Resource[] =>
    [...needs, ...stays].map(({ resource }) => resource);
  for (const step of steps) {
    const [first, ...others] = wantedBy(step);
    for (const other of others) {
      const { pool } = other;
      if (pool !== first.pool)
        for (const resource of resources) if (resource.pool === pool) resource.pool = first.pool;
    }
  }
  for (const step of steps)
    if ((step.flags & HAS_NEEDS) !== 0) step.pool = wantedBy(step)[0]?.pool ?? new Pool();
}

function buildStays({ stays: columns }: Model, resources: readonly Resource[]): Stay[] {
  if (columns.count > 31) throw new RangeError(`carriers and teams must be 31 at most; got ${columns.count}`);
  return columns.names.map(
    (_, s) =>
      new Stay(
        1 << s,
        resources[columns.resource[s]],
        columns.amount[s],
        columns.from[s],
        columns.to[s],
        columns.returnDraw[s],
        columns.returnCalendar[s],
      ),
  );
}

/** Gives each carrier that takes time to come back an event source. */
function furnishCarriers(stays: readonly Stay[]): Stay[] {
  const carriers: Stay[] = [];
  for (const stay of stays)
    if (stay.returnDraw >= 0)
      for (let c = 0; c < stay.resource.amount; c++) stay.sources.push(carriers.push(stay) - 1);
  return carriers;
}

/** A unit that leaves a place where it was blocked may give back what stayed with it. */
function leaveTheLongWay(steps: readonly Step[], stays: readonly Stay[]): void {
  const routes = new Set(stays.map(({ from }) => steps[from].route));
  for (const { route, station } of steps)
    if (station !== null && routes.has(route)) station.leaveTheLongWay();
}

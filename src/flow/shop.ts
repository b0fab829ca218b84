import { furnishLettingGo } from './claims/carriers.js';
import { buildCompanions, type Companion, furnishCarriers } from './claims/companion.js';
import { furnishPartDefects } from './claims/joins.js';
import { furnishKits } from './claims/kits.js';
import { furnishNeeds } from './claims/needs.js';
import { buildResources, joinPools, type Resource } from './claims/resource.js';
import { buildSupplies, type Supply } from './claims/supply.js';
import { furnishTeams } from './claims/teams.js';
import { type Equipment, furnishEquipment, furnishShared } from './floor/equipment.js';
import type { Memory } from './floor/memory.js';
import type { Place } from './floor/place.js';
import { buildSides } from './floor/side-place.js';
import { buildStations, type Station } from './floor/station.js';
import { buildRoutes, buildSteps, type Route, type Step } from './floor/step.js';
import { HOLDS, IS_INSPECTION, setFlags } from './floor/step-flags.js';
import type { Units } from './floor/units.js';
import type { Plan } from './plan.js';
import { buildLanes, type Lane, type Truck } from './traffic/lane.js';
import { buildPulseLines, type PulseLine } from './traffic/pulse-lines.js';
import { furnishWaysBack } from './traffic/ways-back.js';

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
  /** Pieces that can fail or be closed: of stations, then those that stations share. */
  readonly equipment: readonly Equipment[];
  readonly pulseLines: readonly PulseLine[];
  readonly companions: readonly Companion[];
  /** By event source: what the carrier is that may come back. */
  readonly carriers: readonly Companion[];
}

/** Builds it on the records of `memory`, and tells `units` of it. */
export function buildShop(
  { model, calendars }: Pick<Plan, 'model' | 'calendars'>,
  memory: Memory,
  units: Units,
): Shop {
  const places: Place[] = [],
    trucks: Truck[] = [];
  const stations = buildStations(model, places, memory, units),
    lanes = buildLanes(model, calendars, trucks, memory, units),
    ofStations = furnishEquipment(model, stations),
    pulseLines = buildPulseLines(model, stations);
  const routes = buildRoutes(model),
    steps = buildSteps(model, stations, lanes, routes, memory);
  const resources = buildResources(model, calendars, routes),
    equipment = [...ofStations, ...furnishShared(model, resources)],
    supplies = buildSupplies(model, resources),
    companions = buildCompanions(model, resources),
    carriers = furnishCarriers(companions);
  furnishWaysBack(model, steps);
  furnishNeeds(model, steps, resources, routes, companions);
  furnishTeams(steps, companions);
  furnishPartDefects(model, routes);
  setFlags(model, steps);
  furnishKits(model, routes, steps);
  furnishLettingGo(steps, companions);
  joinPools(
    steps,
    routes.map(({ kit }) => kit),
    resources,
  );
  const inspections = numbered(steps, IS_INSPECTION, (step, n) => (step.inspection = n)),
    holds = numbered(steps, HOLDS, (step, n) => (step.hold = n));
  units.furnish(steps, places, inspections.length);
  buildSides(model, stations, places, memory, units);
  freeAll(stations);
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
    companions,
    carriers,
  };
}

/** The steps with a flag, each told its running number among them. */
function numbered(steps: readonly Step[], flag: number, tell: (step: Step, n: number) => void): Step[] {
  const found = steps.filter(({ flags }) => (flags & flag) !== 0);
  found.forEach(tell);
  return found;
}

/** The first of the free places is on top. */
function freeAll(stations: readonly Station[]): void {
  for (const station of stations) for (const place of station.places.toReversed()) station.putFree(place);
}

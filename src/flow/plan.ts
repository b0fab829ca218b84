import { Calendar } from './calendar.js';
import { REWORK_BOTH, UNLIMITED, type Model } from './model.js';

/** What a step has besides plain work; a step with none of it takes the short way. */
export const HAS_NEEDS = 1, HAS_QUALITY = 2, HAS_OFF = 4, HAS_PATH = 8, HAS_PASSES = 16, HAS_FACTOR = 32, IS_INSPECTION = 64, IS_TARGET = 128,
  HAS_PROCESS = 256, AT_LOT = 512, HAS_CHANGEOVER = 1024, ONE_SHIFT = 2048;

/**
 * Columns derived from a model once and shared by all its replications.
 *
 * A destination is where a unit can wait for room: a station, or the bank of a lane; ids 0 .. stations - 1, then lanes.
 * A location is what work in process is counted by: sites, then lanes (units in trucks).
 */
export interface Plan {
  readonly model: Model;
  readonly calendars: readonly Calendar[];
  readonly stationCount: number;
  readonly destinationCount: number;
  readonly locationCount: number;
  readonly destinationSite: Int32Array;
  readonly destinationBuffer: Int32Array;
  readonly destinationReworkBuffer: Int32Array;
  /** Places of station s: firstPlace[s] .. firstPlace[s + 1] - 1. */
  readonly firstPlace: Int32Array;
  readonly placeStation: Int32Array;
  readonly stepFlags: Int32Array;
  readonly stepEnd: Int32Array;
  readonly stepDestination: Int32Array;
  /** Group of resources that the step claims from; -1 none. Resources that any step wants together are in one group. */
  readonly stepPool: Int32Array;
  readonly resourcePool: Int32Array;
  readonly poolCount: number;
  /** Running number of a step among inspections; -1. */
  readonly stepInspection: Int32Array;
  readonly inspectionSteps: Int32Array;
  /** Feeder routes in route order with a stock, and the route of each resource (-1 for crews). */
  readonly resourceRoute: Int32Array;
  /** Bit that stands for the own parts of a feeder route; 0 for other routes. */
  readonly ownBit: Int32Array;
}

export function prepare(model: Model): Plan {
  const { stations, lanes, steps, resources, routes } = model;
  const destinationCount = stations.count + lanes.count;
  const join = (a: Int32Array, b: Int32Array): Int32Array => Int32Array.of(...a, ...b);
  const firstPlace = new Int32Array(stations.count + 1);
  for (let s = 0; s < stations.count; s++) firstPlace[s + 1] = firstPlace[s] + stations.places[s];
  const placeStation = new Int32Array(firstPlace[stations.count]);
  for (let s = 0; s < stations.count; s++) placeStation.fill(s, firstPlace[s], firstPlace[s + 1]);

  const stepEnd = new Int32Array(steps.count), stepDestination = new Int32Array(steps.count);
  const stepFlags = new Int32Array(steps.count), stepInspection = new Int32Array(steps.count).fill(-1);
  const inspections: number[] = [];
  const filled = (start: Int32Array, step: number): boolean => start[step + 1] > start[step];
  for (let t = 0; t < steps.count; t++) {
    stepEnd[t] = routes.firstStep[steps.route[t] + 1];
    stepDestination[t] = steps.station[t] >= 0 ? steps.station[t] : stations.count + steps.lane[t];
    let flags = 0;
    if (filled(steps.needStart, t) || filled(steps.ownStart, t)) flags |= HAS_NEEDS;
    if (filled(steps.createStart, t)) flags |= HAS_QUALITY;
    if (filled(steps.findStart, t)) { flags |= HAS_QUALITY | IS_INSPECTION; stepInspection[t] = inspections.length; inspections.push(t); }
    if (filled(steps.offStart, t)) flags |= HAS_OFF;
    if (filled(steps.whenStart, t) || steps.sampleN[t] > 0 || steps.rework[t] !== REWORK_BOTH) flags |= HAS_PATH;
    if (steps.passes[t] > 1 || steps.settleDraw[t] >= 0) flags |= HAS_PASSES;
    if (filled(steps.factorStart, t)) flags |= HAS_FACTOR;
    if (steps.processDraw[t] >= 0) flags |= HAS_PROCESS;
    if (steps.oneShift[t] === 1 && steps.workCalendar[t] >= 0) flags |= ONE_SHIFT;
    const station = steps.station[t];
    if (station >= 0 && stations.lotMost[station] > 0) flags |= AT_LOT;
    if (station >= 0 && stations.changeoverOption[station] >= 0) flags |= HAS_CHANGEOVER;
    stepFlags[t] = flags;
  }
  for (const target of model.thens.target) if (target >= 0) stepFlags[target] |= HAS_QUALITY | IS_TARGET;

  const resourceRoute = new Int32Array(resources.count).fill(-1);
  for (let r = 0; r < routes.count; r++) if (routes.stock[r] >= 0) resourceRoute[routes.stock[r]] = r;

  const ownBit = new Int32Array(routes.count);
  let ownRoutes = 0;
  for (let r = 0; r < routes.count; r++) if (routes.own[r]) ownBit[r] = 1 << ownRoutes++;
  if (ownRoutes > 31) throw new RangeError(`feeders of own parts must be 31 at most; got ${ownRoutes}`);

  return {
    model,
    calendars: model.calendars.map((columns) => new Calendar(columns)),
    stationCount: stations.count,
    destinationCount,
    locationCount: model.siteNames.length + lanes.count,
    destinationSite: join(stations.site, lanes.from),
    destinationBuffer: join(stations.buffer, lanes.bank),
    destinationReworkBuffer: join(stations.reworkBuffer, new Int32Array(lanes.count).fill(-1)),
    firstPlace, placeStation, stepFlags, stepEnd, stepDestination, stepInspection,
    inspectionSteps: Int32Array.from(inspections),
    resourceRoute, ownBit,
    ...pools(model),
  };
}

/** Groups resources by union of those that one step wants together; a step that waits for own parts alone gets a group of its own. */
function pools(model: Model): { stepPool: Int32Array; resourcePool: Int32Array; poolCount: number } {
  const { steps, resources } = model;
  const leader = Int32Array.from({ length: resources.count }, (_, r) => r);
  const find = (r: number): number => { while (leader[r] !== r) r = leader[r]; return r; };
  for (let t = 0; t < steps.count; t++) {
    for (let n = steps.needStart[t] + 1; n < steps.needStart[t + 1]; n++) leader[find(steps.needResource[n])] = find(steps.needResource[n - 1]);
  }
  let poolCount = 0;
  const resourcePool = new Int32Array(resources.count).fill(-1);
  for (let r = 0; r < resources.count; r++) if (find(r) === r) resourcePool[r] = poolCount++;
  for (let r = 0; r < resources.count; r++) resourcePool[r] = resourcePool[find(r)];
  const stepPool = new Int32Array(steps.count).fill(-1);
  for (let t = 0; t < steps.count; t++) {
    if (steps.needStart[t + 1] > steps.needStart[t]) stepPool[t] = resourcePool[steps.needResource[steps.needStart[t]]];
    else if (steps.ownStart[t + 1] > steps.ownStart[t]) stepPool[t] = poolCount++;
  }
  return { stepPool, resourcePool, poolCount };
}

export const isUnlimited = (capacity: number): boolean => capacity >= UNLIMITED;

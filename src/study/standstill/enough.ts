import type { Model } from '../../flow/model/model.js';
import { UNLIMITED } from '../../flow/model/model.js';
import { SEND_BACK } from '../../flow/model/quality.js';
import { remembered } from '../../scenario/values/raw.js';
import { rowsOf } from '../lists.js';
import { sumOf } from '../statistics/sums.js';
import type { Wait } from './wait.js';

/**
 * Most carriers, or people of teams, that can be with units at one time: whole teams, and no more units than
 * can be on the stretch.
 */
export function mostKept(model: Model, resource: number): number {
  const { companions, resources } = model,
    amount = resources.amount[resource];
  return ofStretches(model, resource, (id) => Math.floor(amount / companions.amount[id]));
}

/** The same if there were any number of them: so many nobody ever waits for. */
export const mostWanted = (model: Model, resource: number): number =>
  ofStretches(model, resource, () => Infinity);

/** The same by room alone, for any number of units; Infinity: a stretch has room for any. */
export const mostByRoom = (model: Model, resource: number): number =>
  ofStretches(model, resource, () => Infinity, roomOn);

function ofStretches(
  model: Model,
  resource: number,
  limit: (id: number) => number,
  units: (model: Model, id: number) => number = mostHolds,
): number {
  const { companions } = model;
  let most = 0;
  for (let id = 0; id < companions.count; id++)
    if (companions.resource[id] === resource)
      most += companions.amount[id] * Math.min(limit(id), units(model, id));
  return most;
}

/** Units that can be on the stretch of a carrier or a team. */
function mostHolds(model: Model, id: number): number {
  const { companions, steps, routes, programme } = model,
    route = steps.route[companions.from[id]];
  return Math.min(roomOn(model, id), routes.stock[route] >= 0 ? routes.target[route] : programme.quantity);
}

/**
 * Places and spaces on it. Ahead of its first station a unit has none, unless it comes back there; from step
 * to step at one station it keeps its place.
 */
function roomOn(model: Model, id: number): number {
  const { companions, steps, stations, lanes } = model,
    from = companions.from[id],
    low = lowest(model, id),
    stretch = Array.from({ length: companions.to[id] + 1 - low }, (_, i) => low + i),
    first = steps.station[from],
    comesBack =
      isSentTo(model, id) ||
      isLeft(
        stretch.map((step) => steps.station[step]),
        first,
      ),
    waits = new Set(stretch.map((step) => steps.station[step]));
  if (!comesBack) waits.delete(first);
  const atStations = sumOf(new Set(stretch.map((step) => steps.station[step])), (station) =>
    station < 0
      ? 0
      : stations.places[station] +
        (waits.has(station) ? spaces(stations.buffer[station]) : 0) +
        Math.max(0, spaces(stations.reworkBuffer[station])),
  );
  const onLanes = sumOf(new Set(stretch.map((step) => steps.lane[step])), (lane) =>
    lane < 0
      ? 0
      : lanes.trucks[lane] * lanes.capacity[lane] +
        spaces(lanes.bank[lane]) +
        (lanes.endless[lane] === 1 ? Infinity : 0),
  );
  return atStations + onLanes;
}

/**
 * The first step at which a unit may have it: that of its stretch, or an earlier one to which it is sent back
 * with it.
 */
export const lowest = (model: Model, id: number): number =>
  Math.min(model.companions.from[id], ...sentBackTo(model, id));

/** Whether one is elsewhere and then there again. */
const isLeft = (stations: readonly number[], station: number): boolean =>
  stations.findIndex((each) => each !== station) < stations.lastIndexOf(station) &&
  stations.some((each) => each !== station);

const isSentTo = (model: Model, id: number): boolean =>
  sentBackTo(model, id).some((target) => target <= model.companions.from[id]);

function sentBackTo({ companions, steps, thens }: Model, id: number): number[] {
  return rowsOf(steps.findStart, companions.from[id], companions.to[id] + 1).flatMap((find) => {
    const then = steps.findThen[find];
    return thens.kind[then] === SEND_BACK ? thens.target[then] : [];
  });
}

/**
 * By node, units that can stand there for ever at one time: of a feeder for stock no more than are in the
 * making, of the others any number.
 */
export function mostStuck({ routes, steps }: Model, waits: readonly Wait[]): ReadonlyMap<number, number> {
  const routesAt = new Map<number, Set<number>>(),
    most = (route: number): number => (routes.stock[route] >= 0 ? routes.target[route] : Infinity);
  for (const { from, step } of waits)
    remembered(routesAt, from, () => new Set<number>()).add(steps.route[step]);
  return new Map(Array.from(routesAt, ([node, all]) => [node, sumOf(all, most)] as const));
}

const spaces = (count: number): number => (count >= UNLIMITED ? Infinity : count);

import {
  BLOCKED,
  CHANGEOVER,
  DOWN,
  OFF_SHIFT,
  SHORT_CARRIER,
  SHORT_CREW,
  SHORT_EQUIPMENT,
  SHORT_PARTS,
  STARVED,
  STATE_COUNT,
  UNATTENDED,
  WORKING,
} from '../../flow/floor/states.js';
import type { Model } from '../../flow/model/model.js';
import { equipmentOf } from '../../flow/model/resources.js';
import { wholePower } from '../../random/power.js';
import { rowsOf } from '../lists.js';
import { sumOf } from '../statistics/sums.js';
import type { Seen } from './seen.js';
import { waysOf } from './ways.js';

/** Units that wait, on average, in the end for each thing. */
export interface Pressure {
  /** By station: for its places. */
  readonly stations: Float64Array;
  /** By destination, stations then lanes: for a space ahead of it that would have let them go. */
  readonly rooms: Float64Array;
  readonly lanes: Float64Array;
  /**
   * By resource: crews, equipment and supplies; what carriers and teams are short of stands with companions.
   */
  readonly resources: Float64Array;
  /** By route: sub-assemblies for a stock, own parts. */
  readonly feeders: Float64Array;
  readonly companions: Float64Array;
}

/**
 * Whether blame stays or goes on ahead, the larger share of time counts for more by this power, so that a
 * queue is followed to where it comes from though the stations in between work for a part of their time. Our
 * own.
 */
const SHARPNESS = 4;
/** Weight of own parts beside the shares of time in which stocks were out. */
const OWN_PARTS = 0.2;
/** Blame goes on from place to place at most so often: loops of rework would have no end. */
const ROUNDS = 60;

/**
 * Who waits for whom, followed to its end: a unit in a buffer waits for the station behind it, and that for
 * what its own places wait for: nothing (it works: for a place of it), a crew, parts, equipment, a carrier,
 * or room ahead, where the blame goes on to the next. An index of our own after the turning point of blocked
 * and starved stations (Li, Chang & Ni 2009): a hint at what stops a build, which a trial has to prove.
 */
export function pressure(model: Model, seen: Seen): Pressure {
  const { stations, lanes, resources, companions } = model,
    ways = waysOf(model, seen),
    found = {
      stations: new Float64Array(stations.count),
      rooms: new Float64Array(stations.count + lanes.count),
      lanes: new Float64Array(lanes.count),
      resources: new Float64Array(resources.count),
      feeders: new Float64Array(model.routes.count),
      companions: new Float64Array(companions.count),
    };
  const needs = Array.from(stations.names, (_, station) => needsAt(model, seen, station));
  const share = (station: number, state: number): number => seen.stationShares[station * STATE_COUNT + state],
    places = (station: number, state: number): number => share(station, state) * stations.places[station];

  const goOn = (from: number, units: number, into: Float64Array): void => {
    for (const [to, part] of ways[from] ?? []) {
      into[to] += units * part;
      found.rooms[to] += units * part * idleShare(to);
    }
  };
  /** Share of its time in which a destination has nothing to do though others stand ahead of it. */
  const idleShare = (to: number): number => {
    if (to >= stations.count) return seen.truckFree[to - stations.count];
    const onShift = 1 - share(to, OFF_SHIFT);
    return onShift > 0 ? share(to, STARVED) / onShift : 0;
  };
  const shortOf = (of: readonly Needed[], units: number): void => {
    const all = sumOf(of, ({ weight }) => weight);
    for (const { kind, id, weight } of of) if (all > 0) found[kind][id] += (units * weight) / all;
  };

  // What waits where it can be seen: in buffers and banks, and in places.
  let waiting = seen.bufferMean.slice();
  for (let station = 0; station < stations.count; station++) {
    goOn(station, places(station, BLOCKED), waiting);
    shortOf(needs[station].crews, places(station, SHORT_CREW));
    shortOf(needs[station].equipment, places(station, SHORT_EQUIPMENT));
    shortOf(needs[station].parts, places(station, SHORT_PARTS));
    shortOf(needs[station].companions, places(station, SHORT_CARRIER));
  }
  for (let lane = 0; lane < lanes.count; lane++) {
    const blocked = seen.truckBlocked[lane] * lanes.trucks[lane];
    goOn(stations.count + lane, blocked * lanes.capacity[lane], waiting);
  }
  for (let round = 0; round < ROUNDS && waiting.some((units) => units > 0); round++) {
    const next = new Float64Array(waiting.length),
      isLast = round === ROUNDS - 1;
    waiting.forEach((units, at) => {
      if (!(units > 0)) return;
      if (at >= stations.count) {
        const lane = at - stations.count,
          blocked = sharpened(seen.truckBlocked[lane]),
          own = sharpened(seen.truckBusy[lane] + seen.truckFree[lane]);
        const on = isLast || blocked === 0 ? 0 : blocked / (blocked + own);
        found.lanes[lane] += units * (1 - on);
        goOn(at, units * on, next);
        return;
      }
      const own = share(at, WORKING) + share(at, CHANGEOVER) + share(at, UNATTENDED) + share(at, DOWN),
        [crew, equipment, parts, carrier] = [SHORT_CREW, SHORT_EQUIPMENT, SHORT_PARTS, SHORT_CARRIER].map(
          (state) => share(at, state),
        ),
        here = own + crew + equipment + parts + carrier,
        blocked = sharpened(share(at, BLOCKED)),
        on = isLast || blocked === 0 ? 0 : blocked / (blocked + sharpened(here)),
        stays = units * (1 - on);
      goOn(at, units * on, next);
      found.stations[at] += here > 0 ? (stays * own) / here : stays;
      if (!(here > 0)) return;
      shortOf(needs[at].crews, (stays * crew) / here);
      shortOf(needs[at].equipment, (stays * equipment) / here);
      shortOf(needs[at].parts, (stays * parts) / here);
      shortOf(needs[at].companions, (stays * carrier) / here);
    });
    waiting = next;
  }
  return found;
}

const sharpened = (share: number): number => wholePower(share, SHARPNESS);

interface Needed {
  readonly kind: 'resources' | 'feeders' | 'companions';
  readonly id: number;
  readonly weight: number;
}

/** What the steps at a station claim, and how likely each is to be what they lack. */
function needsAt(
  model: Model,
  seen: Seen,
  station: number,
): Readonly<Record<'crews' | 'equipment' | 'parts' | 'companions', readonly Needed[]>> {
  const { steps, routes, resources, companions, supplies } = model,
    here = Array.from(steps.station.keys()).filter((step) => steps.station[step] === station);
  const equipment = equipmentOf(resources);
  const wanted = [
    ...new Set(here.flatMap((step) => rowsOf(steps.needStart, step).map((row) => steps.needResource[row]))),
  ];
  const weightOf = (resource: number): number => {
    const supply = supplies.resource.indexOf(resource),
      piece = equipment.indexOf(resource);
    if (piece >= 0) return seen.equipmentLacked[piece];
    return resource < resources.crews
      ? sharpened(seen.crewBusy[resource])
      : supply >= 0
        ? seen.supplyLacked[supply]
        : seen.stockOut[resource];
  };
  const rows = wanted.map((id): Needed => {
      const feeder = routes.stock.indexOf(id),
        weight = weightOf(id);
      return feeder >= 0 ? { kind: 'feeders', id: feeder, weight } : { kind: 'resources', id, weight };
    }),
    isCrew = ({ kind, id }: Needed): boolean => kind === 'resources' && id < resources.crews,
    isEquipment = ({ kind, id }: Needed): boolean => kind === 'resources' && equipment.includes(id),
    own = here.flatMap((step) => rowsOf(steps.ownStart, step).map((row) => steps.ownRoute[row])),
    kept = Array.from(companions.from.keys()).filter((id) =>
      here.some((step) => step >= companions.from[id] && step <= companions.to[id]),
    );
  const ofCrew = (id: number): boolean => companions.resource[id] < resources.crews;
  const companion = (id: number, weight: number): Needed => ({ kind: 'companions', id, weight });
  return {
    crews: [
      ...rows.filter(isCrew),
      ...kept.filter(ofCrew).map((id) => companion(id, weightOf(companions.resource[id]))),
    ],
    equipment: rows.filter(isEquipment),
    parts: [
      ...rows.filter((row) => !isCrew(row) && !isEquipment(row)),
      // How long a unit waited for its own parts is not booked apart.
      ...own.map((id): Needed => ({ kind: 'feeders', id, weight: OWN_PARTS })),
    ],
    companions: kept
      .filter((id) => !ofCrew(id))
      .map((id) => companion(id, seen.stockOut[companions.resource[id]])),
  };
}

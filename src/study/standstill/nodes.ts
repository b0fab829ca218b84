import type { Model } from '../../flow/model/model.js';
import { UNLIMITED } from '../../flow/model/model.js';
import { rowsOf } from '../lists.js';

/** What is finite, by number: stations, trucks of lanes, banks of lanes, resources, routes of own parts. */
export interface Nodes {
  /** Where a step is done: its station (of a pulse line: the line), or the trucks of its lane. */
  readonly place: (step: number) => number;
  /** Where a unit first needs room for it: the station, or the bank of the lane. */
  readonly room: (step: number) => number;
  readonly resource: (resource: number) => number;
  readonly own: (route: number) => number;
  readonly count: number;
  /** Least units that take up all of it, spaces ahead left out; 1 for what is no room. */
  readonly places: (node: number) => number;
  /** The same with the spaces ahead; Infinity without a limit. */
  readonly spots: (node: number) => number;
  readonly nameOf: (node: number) => string;
  /** A station, trucks or a bank: what units stand in. */
  readonly isRoom: (node: number) => boolean;
}

export function nodesOf({ steps, stations, lanes, resources, routes, pulseLines }: Model): Nodes {
  const lineOf = new Map<number, number>(),
    sizes = new Map<number, number>();
  for (let line = 0; line < pulseLines.count; line++) {
    const [first, ...others] = rowsOf(pulseLines.stationStart, line).map((row) => pulseLines.station[row]);
    sizes.set(first, 1 + others.length);
    for (const other of others) lineOf.set(other, first);
  }
  const trucks = stations.count,
    banks = trucks + lanes.count,
    firstResource = banks + lanes.count,
    firstOwn = firstResource + resources.count;
  const station = (id: number): number => lineOf.get(id) ?? id;
  const kindOf = (node: number): { kind: 'station' | 'lane' | 'resource' | 'own'; id: number } =>
    node < trucks
      ? { kind: 'station', id: node }
      : node < firstResource
        ? { kind: 'lane', id: (node - trucks) % lanes.count }
        : node < firstOwn
          ? { kind: 'resource', id: node - firstResource }
          : { kind: 'own', id: node - firstOwn };
  const places: Nodes['places'] = (node) =>
    node < trucks
      ? (sizes.get(node) ?? stations.places[node])
      : node < banks
        ? lanes.trucks[node - trucks]
        : 1;
  return {
    place: (step) => (steps.station[step] >= 0 ? station(steps.station[step]) : trucks + steps.lane[step]),
    room: (step) => (steps.station[step] >= 0 ? station(steps.station[step]) : banks + steps.lane[step]),
    resource: (resource) => firstResource + resource,
    own: (route) => firstOwn + route,
    count: firstOwn + routes.count,
    places,
    spots: (node) => {
      if (node < trucks) return limited(stations.buffer[node]) + places(node);
      if (node < banks) return places(node);
      return node < firstResource ? limited(lanes.bank[node - banks]) : 0;
    },
    nameOf: (node) => {
      const { kind, id } = kindOf(node);
      return { station: stations, lane: lanes, resource: resources, own: routes }[kind].names[id];
    },
    isRoom: (node) => node < firstResource,
  };
}

const limited = (spaces: number): number => (spaces < UNLIMITED ? spaces : Infinity);

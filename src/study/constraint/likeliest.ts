import { STATE_COUNT, UNATTENDED, WORKING } from '../../flow/floor/states.js';
import { CARRIER, CREW, EQUIPMENT, SUPPLY } from '../../flow/model/resources.js';
import { wholePower } from '../../random/power.js';
import { bankName } from '../../scenario/lookup/ids.js';
import { keyOfThing, type Thing } from '../../scenario/reliefs/thing.js';
import type { Site } from '../../scenario/types/plant.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { laneNamed, named } from '../lists.js';
import type { Sample } from '../sample/sample.js';
import { carrierSite } from '../sections/carriers.js';
import { sumOf } from '../statistics/sums.js';
import { type Pressure, pressure } from './pressure.js';
import type { Seen } from './seen.js';

/** A thing, and the units that wait for it in the end, on average: an index. */
export interface Likely {
  readonly thing: Thing;
  readonly units: number;
}

/** Of what waits for the places and crews of a calendar, so much may be told of its hours. */
const OF_HOURS = 0.5;
/** What waits for a feeder waits for its slowest station, or for a larger stock. */
const OF_STOCK = 0.1;
/** The busiest of a feeder's stations stands out by this power. */
const SHARPNESS = 8;

/** What is claimed for a step. */
const KINDS: ReadonlyMap<number, Thing['kind']> = new Map([
  [CREW, 'crew'],
  [EQUIPMENT, 'equipment'],
  [SUPPLY, 'supply'],
]);

/** Everything finite that units wait for, the likeliest to stop the build first. */
export function likeliest(sample: Pick<Sample, 'model' | 'scenario'>, seen: Seen): Likely[] {
  const { model, scenario } = sample,
    { stations, lanes, resources, companions, siteNames, routes } = model;
  const on = pressure(model, seen),
    ofStations = withFeeders(model, seen, on),
    banks = new Map(lanes.names.map((name, lane) => [bankName(name), lane]));
  const room = (to: number): Thing => {
    const lane = to >= stations.count ? to - stations.count : banks.get(stations.names[to]);
    return lane === undefined
      ? { kind: 'room', ...named(model, 'stations', to) }
      : { kind: 'room', ...laneNamed(model, lane) };
  };
  const all: Likely[] = [
    ...stations.names.map((_, id) => ({
      // What waits in an arrival bank waits for room behind it.
      thing: stations.isBank[id] ? room(id) : { kind: 'station' as const, ...named(model, 'stations', id) },
      units: ofStations[id],
    })),
    ...Array.from(on.rooms, (units, to) => ({ thing: room(to), units })),
    ...lanes.names.map((_, id) => ({
      thing: { kind: 'lane' as const, ...laneNamed(model, id) },
      units: on.lanes[id],
    })),
    ...resources.names.flatMap((_, id): Likely[] => {
      const kind = KINDS.get(resources.kind[id]);
      return kind === undefined
        ? []
        : [{ thing: { kind, ...named(model, 'resources', id) }, units: on.resources[id] }];
    }),
    ...companions.names.map((name, id): Likely => {
      const resource = companions.resource[id],
        isCarrier = resources.kind[resource] === CARRIER;
      return {
        thing: isCarrier
          ? { kind: 'carrier', name, site: carrierSite({ model }, id) }
          : { kind: 'team', name, site: siteNames[resources.site[resource]] },
        units: on.companions[id],
      };
    }),
    ...routes.names.map((name, route) => ({
      thing: { kind: 'feeder' as const, name, site: '' },
      units: on.feeders[route] * OF_STOCK,
    })),
  ];
  return joined([...all, ...hours(scenario, all)]).sort((a, b) => b.units - a.units);
}

/** What waits for stations, those included that hold a feeder up. */
function withFeeders(
  { routes, steps }: Sample['model'],
  { stationShares }: Seen,
  on: Pressure,
): Float64Array {
  const waiting = on.stations.slice();
  on.feeders.forEach((units, route) => {
    if (!(units > 0)) return;
    const own = new Set<number>();
    for (let step = routes.firstStep[route]; step < routes.firstStep[route + 1]; step++)
      if (steps.station[step] >= 0) own.add(steps.station[step]);
    const weights = [...own].map((station) => {
      let active = 0;
      for (let state = WORKING; state <= UNATTENDED; state++)
        active += stationShares[station * STATE_COUNT + state];
      return { station, weight: wholePower(active, SHARPNESS) };
    });
    const total = sumOf(weights, ({ weight }) => weight);
    for (const { station, weight } of weights)
      if (total > 0) waiting[station] += (units * (1 - OF_STOCK) * weight) / total;
  });
  return waiting;
}

/** Calendars, by what waits for the stations and crews that keep them. */
function hours({ sites }: Scenario, all: readonly Likely[]): Likely[] {
  return all.flatMap(({ thing: { kind, name, site }, units }): Likely[] => {
    const calendar = kind === 'station' || kind === 'crew' ? calendarOf(sites[site], kind, name) : undefined;
    return calendar === undefined
      ? []
      : [{ thing: { kind: 'hours', name: calendar, site: '' }, units: units * OF_HOURS }];
  });
}

/** By which a station or a crew works; undefined: at any time. */
function calendarOf(site: Site, kind: 'station' | 'crew', name: string): string | undefined {
  if (kind === 'crew') return site.crews[name].calendar ?? site.calendar;
  const { calendar, unattended } = site.stations[name];
  return unattended ? undefined : (calendar ?? site.calendar);
}

/** One entry a thing; those for which nothing waits are left out. */
function joined(all: readonly Likely[]): Likely[] {
  const byKey = new Map<string, Likely>();
  for (const each of all) {
    if (!(each.units > 0)) continue;
    const key = keyOfThing(each.thing),
      known = byKey.get(key);
    byKey.set(key, known === undefined ? each : { ...known, units: known.units + each.units });
  }
  return [...byKey.values()];
}

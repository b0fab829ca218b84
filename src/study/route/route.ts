import type { Model } from '../../flow/model/model.js';
import { layRoutes } from '../../scenario/lookup/laid.js';
import { allStations, routesOf } from '../../scenario/lookup/placed.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { demand } from '../capacity/demand.js';
import { companionsOf } from './companions.js';
import { type Ground, lineOf, tripOf } from './lines.js';
import { joinsAt, leavesAt } from './sides.js';
import type { RouteMap } from './types.js';

/**
 * The routes of a scenario as lines: stops and trips in their order, where feeders leave and join, what
 * inspections pass and send back. Shares are by arithmetic, see `capacity`.
 */
export function routeMap(scenario: Scenario, model: Model): RouteMap {
  const stations = allStations(scenario),
    sites = new Map(stations.map(({ name, siteName }) => [name, siteName])),
    ground: Ground = {
      scenario,
      model,
      siteOf: (station) => sites.get(station) ?? '',
      laid: layRoutes(scenario).steps,
      looks: demand(model).looks,
      drawn: new Set(),
    };
  const lines = routesOf(scenario).map((route) => ({ route, ...lineOf(ground, route) })),
    [main, ...sides] = lines,
    trips = new Set(
      lines.flatMap(({ entries }) => entries.flatMap((each) => (each.kind === 'trip' ? [each.lane] : []))),
    ),
    returns = new Set(lines.flatMap(({ backs }) => backs.flatMap(({ by }) => by))),
    lanesOff = Object.keys(scenario.lanes).filter((lane) => !trips.has(lane));
  return {
    main: { entries: main?.entries ?? [], backs: main?.backs ?? [] },
    sides: sides.map(({ route, entries, backs }) => ({
      name: route.feeder ?? '',
      kind: route.kind === 'own' ? 'own' : 'stock',
      entries,
      backs,
      leaves: leavesAt(lines, route.feeder ?? ''),
      joins: joinsAt(lines, route.feeder ?? ''),
    })),
    companions: companionsOf(scenario),
    returns: lanesOff.filter((lane) => returns.has(lane)).map((lane) => tripOf(scenario, { lane, when: {} })),
    idle: {
      stations: stations.flatMap(({ name, siteName }) =>
        ground.drawn.has(name) ? [] : [{ name, site: siteName }],
      ),
      lanes: lanesOff.filter((lane) => !returns.has(lane)),
      supplies: Object.keys(scenario.supplies).filter((supply) => joinsAt(lines, supply).length === 0),
    },
  };
}

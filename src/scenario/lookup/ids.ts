import type { Lane, Site } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';

/**
 * Whether units wait after a lane in a bank with places, which is a station and a step of its own. One
 * without a limit takes neither.
 */
export const hasBankPlaces = ({ arrivalBank }: Lane): boolean => typeof arrivalBank === 'number';

/** Name of the bank in which units wait after a lane. */
export const bankName = (lane: string): string => `${lane}: arrival bank`;

/**
 * Ids by name, each in the order in which the planner wrote them: stations site by site and then arrival
 * banks; crews site by site, then stock feeders, supplies, carriers, equipment site by site. Route 0 is the
 * unit's, feeders follow.
 */
export interface Ids {
  site(name: string): number;
  station(name: string): number;
  lane(name: string): number;
  /** Route of a feeder. */
  feeder(name: string): number;
  option(name: string): number;
  /** Site name of a station that is not a bank. */
  siteOfStation(station: string): string;
  crew(site: string, crew: string): number;
  /** Resource of the equipment of a site. */
  equipment(site: string, name: string): number;
  stock(feeder: string): number;
  /** Resource of what a step takes in numbers: the stock of a feeder, or a supply. */
  part(name: string): number;
  value(option: string, value: string): number;
}

export function idsOf(scenario: Scenario): Ids {
  const sites = Object.entries(scenario.sites),
    lanes = Object.entries(scenario.lanes),
    feeders = Object.entries(scenario.feeders);
  const stations = sites.flatMap(([name, site]) =>
    Object.keys(site.stations).map((station) => [station, name] as const),
  );
  const banks = lanes.flatMap(([name, lane]) => (hasBankPlaces(lane) ? [bankName(name)] : []));
  const crews = sites.flatMap(([name, site]) =>
    Object.keys(site.crews).map((crew) => JSON.stringify([name, crew])),
  );
  const stocks = feeders.flatMap(([feeder, { kind }]) => (kind === 'stock' ? [feeder] : []));
  const crew = finder('crew', numbered(crews)),
    stock = finder('stock feeder', numbered(stocks)),
    equipment = finder(
      'equipment',
      numbered(
        sites.flatMap(([name, site]) =>
          Object.keys(site.equipment ?? {}).map((each) => JSON.stringify([name, each])),
        ),
      ),
    ),
    beforeEquipment =
      crews.length +
      stocks.length +
      Object.keys(scenario.supplies).length +
      Object.keys(scenario.carriers).length,
    part = finder('feeder or supply', numbered([...stocks, ...Object.keys(scenario.supplies)])),
    feeder = finder('feeder', numbered(feeders.map(([name]) => name)));
  const values = new Map(
    Object.entries(scenario.programme.options).map(([option, mix]) => [
      option,
      finder(`value of option '${option}'`, numbered(Object.keys(mix))),
    ]),
  );
  const valuesOf = finder('option', values);
  return {
    site: finder('site', numbered(sites.map(([name]) => name))),
    station: finder('station', numbered([...stations.map(([station]) => station), ...banks])),
    lane: finder('lane', numbered(lanes.map(([name]) => name))),
    feeder: (name) => feeder(name) + 1,
    option: finder('option', numbered([...values.keys()])),
    siteOfStation: finder('station', new Map(stations)),
    crew: (site, name) => crew(JSON.stringify([site, name])),
    equipment: (site, name) => beforeEquipment + equipment(JSON.stringify([site, name])),
    stock: (name) => crews.length + stock(name),
    part: (name) => crews.length + part(name),
    value: (option, value) => valuesOf(option)(value),
  };
}

/** The reader has checked all names, so a miss is a fault of the program. */
export const finder =
  <T>(kind: string, map: ReadonlyMap<string, T>) =>
  (name: string): T => {
    const value = map.get(name);
    if (value === undefined) throw unchecked(kind, name);
    return value;
  };

/** What a section of the scenario has under a name. */
export function foundIn<T>(section: Readonly<Record<string, T>>, name: string, kind: string): T {
  const value = section[name];
  if (value === undefined) throw unchecked(kind, name);
  return value;
}

export const siteOf = (scenario: Scenario, name: string): Site => foundIn(scenario.sites, name, 'site');

const unchecked = (kind: string, name: string): Error =>
  new Error(`expected a known ${kind}, got '${name}'; the scenario must be checked before it is compiled`);

function numbered(list: readonly string[]): ReadonlyMap<string, number> {
  return new Map(list.map((name, i) => [name, i]));
}

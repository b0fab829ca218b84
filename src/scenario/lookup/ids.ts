import type { Site } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';

/** Name of the bank in which units wait after a lane. */
export const bankName = (lane: string): string => `${lane}: arrival bank`;

/**
 * Ids by name, each in the order in which the planner wrote them: stations site by site and then arrival
 * banks, crews site by site, then stock feeders, then supplies. Route 0 is the unit's, feeders follow.
 */
export interface Ids {
  readonly site: ReadonlyMap<string, number>;
  readonly station: ReadonlyMap<string, number>;
  readonly lane: ReadonlyMap<string, number>;
  /** Route of a feeder. */
  readonly feeder: ReadonlyMap<string, number>;
  readonly option: ReadonlyMap<string, number>;
  /** Site name of a station that is not a bank. */
  readonly siteOfStation: ReadonlyMap<string, string>;
  crew(site: string, crew: string): number;
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
  const banks = lanes.flatMap(([lane, { arrivalBank }]) =>
    arrivalBank === undefined ? [] : [bankName(lane)],
  );
  const crews = sites.flatMap(([name, site]) =>
    Object.keys(site.crews).map((crew) => JSON.stringify([name, crew])),
  );
  const stocks = feeders.flatMap(([feeder, { kind }]) => (kind === 'stock' ? [feeder] : []));
  const crewIds = numbered(crews),
    stockIds = numbered(stocks),
    partIds = numbered([...stocks, ...Object.keys(scenario.supplies)]);
  const values = new Map(
    Object.entries(scenario.programme.options).map(([option, mix]) => [option, numbered(Object.keys(mix))]),
  );
  return {
    site: numbered(sites.map(([name]) => name)),
    station: numbered([...stations.map(([station]) => station), ...banks]),
    lane: numbered(lanes.map(([name]) => name)),
    feeder: new Map(feeders.map(([feeder], i) => [feeder, i + 1])),
    option: numbered([...values.keys()]),
    siteOfStation: new Map(stations),
    crew: (site, crew) => found(crewIds, JSON.stringify([site, crew]), 'crew'),
    stock: (feeder) => crews.length + found(stockIds, feeder, 'stock feeder'),
    part: (name) => crews.length + found(partIds, name, 'feeder or supply'),
    value: (option, value) => found(found(values, option, 'option'), value, `value of option '${option}'`),
  };
}

/** The reader has checked all names, so a miss is a fault of the program. */
export function found<T>(map: ReadonlyMap<string, T>, name: string, kind: string): T {
  const value = map.get(name);
  if (value === undefined) throw unchecked(kind, name);
  return value;
}

/** The same of a section of the scenario. */
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

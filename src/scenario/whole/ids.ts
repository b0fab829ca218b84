import type { Site } from '../types/plant.js';
import type { Scenario } from '../types/scenario.js';

/** Name of the bank in which units wait after a lane. */
export const bankName = (lane: string): string => `${lane}: arrival bank`;

/**
 * Ids by name, each in the order in which the planner wrote them: stations site by site and then arrival
 * banks, crews site by site, then stock feeders, then supplies. Route 0 is the unit's, feeders follow.
 */
export interface Names {
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

export function names(scenario: Scenario): Names {
  const sites = Object.entries(scenario.sites);
  const stations = sites.flatMap(([name, site]) =>
    Object.keys(site.stations).map((station) => [station, name] as const),
  );
  const banks = Object.keys(scenario.lanes)
    .filter((lane) => scenario.lanes[lane].arrivalBank !== undefined)
    .map(bankName);
  const crews = sites.flatMap(([name, site]) =>
    Object.keys(site.crews).map((crew) => JSON.stringify([name, crew])),
  );
  const stocks = Object.keys(scenario.feeders).filter((feeder) => scenario.feeders[feeder].kind === 'stock');
  const supplies = Object.keys(scenario.supplies);
  const crewIds = numbered(crews);
  const stockIds = numbered(stocks);
  const partIds = numbered([...stocks, ...supplies]);
  const values = new Map(
    Object.entries(scenario.programme.options).map(([option, mix]) => [option, numbered(Object.keys(mix))]),
  );
  return {
    site: numbered(sites.map(([name]) => name)),
    station: numbered([...stations.map(([station]) => station), ...banks]),
    lane: numbered(Object.keys(scenario.lanes)),
    feeder: new Map(Object.keys(scenario.feeders).map((feeder, i) => [feeder, i + 1])),
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
  if (value === undefined)
    throw new Error(
      `expected a known ${kind}, saw '${name}'; the scenario must be checked before it is compiled`,
    );
  return value;
}

export function siteOf(scenario: Scenario, name: string): Site {
  const site = scenario.sites[name];
  if (site === undefined)
    throw new Error(
      `expected a known site, saw '${name}'; the scenario must be checked before it is compiled`,
    );
  return site;
}

function numbered(list: readonly string[]): ReadonlyMap<string, number> {
  return new Map(list.map((name, i) => [name, i]));
}

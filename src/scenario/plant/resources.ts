import type { RouteEntry } from '../types/steps.js';
import { CARRIER, CREW, STOCK, SUPPLY, type Model } from '../../flow/model/model.js';
import { ALWAYS, type CalendarBook } from '../calendar/book.js';
import { column } from '../whole/columns.js';
import { found, type Names } from '../whole/ids.js';
import type { LaidRoutes } from '../work/route.js';
import type { Scenario } from '../types/scenario.js';

/**
 * Crews site by site, the stocks of interchangeable sub-assemblies (each at the site where it is made),
 * supplies, carriers (where they are claimed).
 */
export function compileResources(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
): Omit<Model['resources'], 'shifts'> {
  const crews = Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.crews).map(([name, crew]) => ({
      name,
      kind: CREW,
      site: found(names.site, siteName, 'site'),
      amount: crew.headcount,
      calendar: book.id(crew.calendar ?? site.calendar, site.zone),
    })),
  );
  const stocks = Object.entries(scenario.feeders)
    .filter(([, feeder]) => feeder.kind === 'stock')
    .map(([name, feeder]) => ({
      name,
      kind: STOCK,
      site: endSite(feeder.route, scenario, names),
      amount: feeder.atStart,
      calendar: ALWAYS,
    }));
  const supplies = Object.entries(scenario.supplies).map(([name, { site, atStart }]) => ({
    name,
    kind: SUPPLY,
    site: found(names.site, site, 'site'),
    amount: atStart,
    calendar: ALWAYS,
  }));
  const siteOfStep = (step: string): number =>
    found(names.site, found(names.siteOfStation, stationOf(scenario, step), 'station'), 'site');
  const carriers = Object.entries(scenario.carriers).map(([name, { count, from }]) => ({
    name,
    kind: CARRIER,
    site: siteOfStep(from),
    amount: count,
    calendar: ALWAYS,
  }));
  const rows = [...crews, ...stocks, ...supplies, ...carriers];
  return {
    count: rows.length,
    crews: crews.length,
    kind: Uint8Array.from(rows, (row) => row.kind),
    names: rows.map((row) => row.name),
    site: column(rows, (row) => row.site),
    amount: column(rows, (row) => row.amount),
    calendar: column(rows, (row) => row.calendar),
  };
}

export function compileRoutes(scenario: Scenario, names: Names, laid: LaidRoutes): Model['routes'] {
  const feeders = Object.entries(scenario.feeders);
  return {
    count: feeders.length + 1,
    names: ['unit', ...feeders.map(([name]) => name)],
    firstStep: Int32Array.from(laid.firstStep),
    own: Uint8Array.from([0, ...feeders.map(([, feeder]) => Number(feeder.kind === 'own'))]),
    stock: Int32Array.from([
      -1,
      ...feeders.map(([name, feeder]) => (feeder.kind === 'stock' ? names.stock(name) : -1)),
    ]),
    target: Int32Array.from([
      0,
      ...feeders.map(([, feeder]) => (feeder.kind === 'stock' ? feeder.target : 0)),
    ]),
  };
}

function stationOf(scenario: Scenario, step: string): string {
  const routes = [scenario.route, ...Object.values(scenario.feeders).map(({ route }) => route)];
  const entry = routes
    .flat()
    .find(
      (each) =>
        each.kind === 'step' && (each.name === step || each.sideBySide?.some(({ name }) => name === step)),
    );
  return entry?.kind === 'step' ? entry.at : '';
}

function endSite(route: readonly RouteEntry[], scenario: Scenario, names: Names): number {
  const last = route[route.length - 1];
  if (last === undefined) return -1;
  const site =
    last.kind === 'lane' ? scenario.lanes[last.lane].to : found(names.siteOfStation, last.at, 'station');
  return found(names.site, site, 'site');
}

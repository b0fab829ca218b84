import type { Model } from '../../flow/model/model.js';
import { CARRIER, CREW, STOCK, SUPPLY } from '../../flow/model/resources.js';
import { ALWAYS } from '../calendar/book.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { foundIn } from '../lookup/ids.js';
import { equipmentResources } from '../plant/equipment.js';
import type { RouteEntry } from '../types/steps.js';

/**
 * Crews site by site, the stocks of interchangeable sub-assemblies (each at the site where it is made),
 * supplies, carriers (where they are claimed), shared equipment.
 */
export function compileResources(all: Compilation): Omit<Model['resources'], 'shifts'> {
  const { scenario, ids, laid, book } = all;
  const crews = Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.crews).map(([name, crew]) => ({
      name,
      kind: CREW,
      site: ids.site(siteName),
      amount: crew.headcount,
      calendar: book.id(crew.calendar ?? site.calendar, site.zone),
    })),
  );
  const stocks = Object.entries(scenario.feeders)
    .filter(([, feeder]) => feeder.kind === 'stock')
    .map(([name, feeder]) => ({
      name,
      kind: STOCK,
      site: endSite(feeder.route, all),
      amount: feeder.atStart,
      calendar: ALWAYS,
    }));
  const supplies = Object.entries(scenario.supplies).map(([name, { site, atStart }]) => ({
    name,
    kind: SUPPLY,
    site: ids.site(site),
    amount: atStart,
    calendar: ALWAYS,
  }));
  const carriers = Object.entries(scenario.carriers).map(([name, { count, from }]) => ({
    name,
    kind: CARRIER,
    site: ids.site(ids.siteOfStation(laid.stationOf(from))),
    amount: count,
    calendar: ALWAYS,
  }));
  const rows = [...crews, ...stocks, ...supplies, ...carriers, ...equipmentResources(all)];
  return {
    count: rows.length,
    crews: crews.length,
    ...uint8(rows, 'kind'),
    names: rows.map((row) => row.name),
    ...int32(rows, 'site', 'amount', 'calendar'),
  };
}

/** Site where a sub-assembly is when its route ends; -1 for a route without entries. */
function endSite(route: readonly RouteEntry[], { scenario, ids }: Compilation): number {
  const last = route.at(-1);
  if (last === undefined) return -1;
  const site =
    last.kind === 'lane' ? foundIn(scenario.lanes, last.lane, 'lane').to : ids.siteOfStation(last.at);
  return ids.site(site);
}

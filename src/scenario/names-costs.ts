import type { Look } from './names.js';
import { mapOf, type Outline, type RawMap } from './names-outline.js';

/** What costs name must be there: crews (or `default`), lanes, stations, supplies. */
export function costNames(raw: RawMap, { crewsOf, lanes, stations, supplies }: Outline, look: Look): void {
  const costs = mapOf(raw['costs']),
    crews = crewsOf && new Set(['default', ...[...crewsOf.values()].flatMap((names) => [...names.keys()])]);
  for (const name of Object.keys(mapOf(costs['people'])))
    look(['costs', 'people', name], name, crews, 'crew of this name in any site', true);
  for (const name of Object.keys(mapOf(costs['trucks'])))
    look(['costs', 'trucks', name], name, lanes, 'lane of this name', true);
  for (const name of Object.keys(mapOf(costs['changeovers'])))
    look(['costs', 'changeovers', name], name, stations, 'station of this name', true);
  for (const name of Object.keys(mapOf(costs['supplies'])))
    look(['costs', 'supplies', name], name, supplies, 'supply of this name', true);
}

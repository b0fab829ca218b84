import { sayPath, saySeen } from './file/problem.js';
import { type Lookup, MISSING, type Outline, outlineOf, type Uses } from './lookup/outline.js';
import { teamNames } from './plant/teams.js';
import { routeNames } from './steps/route.js';
import type { Finding, Path } from './types/problem.js';
import { nearest } from './values/nearest.js';
import { isRawMap, mapOf, placesAt, type RawMap } from './values/raw.js';
import { changeoverNames } from './whole/setting-names.js';

/** Looking for near names takes time; nobody reads so many. */
const MOST_SUGGESTIONS = 200;

/** Where names stand outside the routes that need no other key to be looked up. */
const USES: Uses = {
  'calendars/*/overtime/#/when/at': 'unitSteps',
  'sites/*/calendar': 'calendars',
  'sites/*/crews/*/calendar': 'calendars',
  'sites/*/equipment/*/calendar': 'calendars',
  'sites/*/equipment/*/failures/+/hours': 'calendars',
  'sites/*/stations/*/calendar': 'calendars',
  'sites/*/stations/*/failures/+/hours': 'calendars',
  'lanes/*/from': 'sites',
  'lanes/*/to': 'sites',
  'lanes/*/hours': 'calendars',
  'supplies/*/site': 'sites',
  'costs/people/*': 'pricedCrews',
  'costs/equipment/*': 'pricedEquipment',
  'costs/trucks/*': 'lanes',
  'costs/carriers/*': 'carriers',
  'costs/changeovers/*': 'stations',
  'costs/supplies/*': 'supplies',
  'costs/buffer place/sites/*': 'sites',
  'costs/buffer place/stations/*': 'stations',
  'costs/buffer place/lanes/*': 'lanes',
  'outages/#/stations/+': 'stations',
  'outages/#/site/+': 'sites',
  'outages/#/lanes/+': 'lanes',
  'pulse lines/*/stations/#': 'stations',
  'carriers/*/from': 'steps',
  'carriers/*/to': 'steps',
  'carriers/*/hours': 'calendars',
  'teams/*/from': 'steps',
  'teams/*/to': 'steps',
};

/**
 * Names that nothing defines, and names given twice; asked of the raw data, so also where the schema found
 * problems.
 */
export function nameFindings(raw: unknown, shape: readonly Finding[]): Finding[] {
  if (!isRawMap(raw)) return [];
  const outline = outlineOf(raw, shape);
  const found = [...repeatedNames(raw, outline)];
  const look: Lookup['look'] = (path, name, known, what, atKey = false) => {
    if (typeof name !== 'string' || known === undefined || known.has(name)) return;
    const suggestion = found.length < MOST_SUGGESTIONS ? nearest(name, known.keys()) : undefined;
    found.push({ path, wanted: `no ${what}`, seen: saySeen(name), suggestion, atKey });
  };
  const lookup: Lookup = {
    outline,
    look,
    lookAll: (around, inside, uses) => {
      for (const [address, among] of Object.entries(uses)) {
        const isKey = address.endsWith('*');
        for (const { path, value } of placesAt(inside, around, address.split('/')))
          look(path, isKey ? path.at(-1) : value, outline[among], MISSING[among], isKey);
      }
    },
    tell: (finding) => found.push(finding),
  };
  lookup.lookAll([], raw, USES);
  changeoverNames(raw, lookup);
  teamNames(raw, lookup);
  routeNames(lookup);
  return found;
}

/**
 * Steps have a name of their own over all routes, stations over all sites, parts over feeders and supplies;
 * `usual` is no name for an option.
 */
function* repeatedNames(raw: RawMap, outline: Outline): Iterable<Finding> {
  const stations = new Map<unknown, Path>();
  for (const { path } of placesAt(raw, [], ['sites', '*', 'stations', '*'])) {
    const [, , , station] = path,
      first = stations.get(station);
    if (first === undefined) stations.set(station, path);
    else
      yield {
        path,
        wanted: 'each station name once over all sites',
        seen: `${saySeen(station)} again, first in site ${first[1]}`,
        first,
        atKey: true,
      };
  }

  const steps = new Map<string, Path>();
  for (const {
    path,
    entry: { step },
  } of outline.routes.flatMap(({ entries }) => entries)) {
    if (typeof step !== 'string') continue;
    const first = steps.get(step);
    if (first === undefined) steps.set(step, path);
    else
      yield {
        path: [...path, 'step'],
        wanted: 'each step name once over all routes',
        seen: `${saySeen(step)} again, first at ${sayPath(first)}`,
        first,
      };
  }

  for (const supply of Object.keys(mapOf(raw['supplies'])))
    if (Object.hasOwn(mapOf(raw['feeders']), supply))
      yield {
        path: ['supplies', supply],
        wanted: 'another name than that of a feeder, since steps ask for both by parts',
        seen: saySeen(supply),
        atKey: true,
      };

  if (outline.options?.has('usual') === true)
    yield {
      path: ['programme', 'options', 'usual'],
      wanted: 'another name for the option; usual is the word for the chance where no option matters',
      seen: '"usual"',
      atKey: true,
    };
}

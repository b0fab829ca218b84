import { saySeen } from './file/problem.js';
import { type Lookup, MISSING, outlineOf, type Uses } from './lookup/outline.js';
import { changeoverNames } from './plant/changeovers.js';
import { teamNames } from './plant/teams.js';
import type { Finding } from './types/problem.js';
import { nearest } from './values/nearest.js';
import { isRawMap, placesAt } from './values/raw.js';
import { repeatedNames } from './whole/unique.js';
import { routeNames } from './work/route.js';

/** Looking for near names takes time; nobody reads so many. */
const MOST_SUGGESTIONS = 200;

/** Where names stand outside the routes that need no other key to be looked up. */
const USES: Uses = {
  'calendars/*/overtime/#/when/at': 'unitSteps',
  'sites/*/calendar': 'calendars',
  'sites/*/crews/*/calendar': 'calendars',
  'sites/*/stations/*/calendar': 'calendars',
  'sites/*/stations/*/changeover/on': 'options',
  'sites/*/stations/*/failures/+/hours': 'calendars',
  'lanes/*/from': 'sites',
  'lanes/*/to': 'sites',
  'lanes/*/hours': 'calendars',
  'supplies/*/site': 'sites',
  'costs/people/*': 'pricedCrews',
  'costs/trucks/*': 'lanes',
  'costs/changeovers/*': 'stations',
  'costs/supplies/*': 'supplies',
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

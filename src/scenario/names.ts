import { overtimeNames } from './calendar/overtime.js';
import { saySeen } from './file/problem.js';
import { type Lookup, outlineOf } from './lookup/outline.js';
import { costNames } from './plant/costs.js';
import { laneNames } from './plant/lanes.js';
import { outageNames } from './plant/outages.js';
import { pulseLineNames } from './plant/pulse-lines.js';
import { siteNames } from './plant/sites.js';
import { stretchNames } from './plant/stretches.js';
import { supplyNames } from './plant/supplies.js';
import type { Finding } from './types/problem.js';
import { nearest } from './values/nearest.js';
import { isRawMap, type RawMap } from './values/raw.js';
import { repeatedNames } from './whole/unique.js';
import { routeNames } from './work/route.js';

/** Looking for near names takes time; nobody reads so many. */
const MOST_SUGGESTIONS = 200;

/** Each looks up the names that one part of the scenario uses. */
const USES: readonly ((raw: RawMap, lookup: Lookup) => void)[] = [
  overtimeNames,
  siteNames,
  laneNames,
  supplyNames,
  costNames,
  outageNames,
  pulseLineNames,
  stretchNames,
];

/**
 * Names that nothing defines, and names given twice; asked of the raw data, so also where the schema found
 * problems.
 */
export function nameFindings(raw: unknown, shape: readonly Finding[]): Finding[] {
  if (!isRawMap(raw)) return [];
  const outline = outlineOf(raw, shape);
  const found: Finding[] = repeatedNames(raw, outline);
  const look: Lookup['look'] = (path, name, known, what, atKey = false) => {
    if (typeof name !== 'string' || known === undefined || known.has(name)) return;
    const suggestion = found.length < MOST_SUGGESTIONS ? nearest(name, known.keys()) : undefined;
    found.push({ path, wanted: `no ${what}`, seen: saySeen(name), suggestion, atKey });
  };
  const lookup: Lookup = {
    outline,
    look,
    calendar: (path, name) => {
      look(path, name, outline.calendars, 'calendar of this name');
    },
    tell: (finding) => found.push(finding),
  };
  for (const check of USES) check(raw, lookup);
  routeNames(lookup);
  return found;
}

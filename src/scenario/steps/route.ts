import { z } from 'zod';
import { type Lookup, MISSING, type Uses } from '../lookup/outline.js';
import { equipmentNames } from '../plant/equipment.js';
import type { LaneStep, RouteEntry } from '../types/steps.js';
import { keys, name } from '../values/keys.js';
import { remembering } from '../values/remembering.js';
import type { TimeSchema } from '../values/time.js';
import { settingNames } from '../whole/setting-names.js';
import { inspectionNames } from './inspections.js';
import { crewNames } from './needs.js';
import { besideSchema } from './side-by-side.js';
import { stepSchema } from './steps.js';
import { taskNames } from './tasks.js';
import { whenKey, whenNames } from './visits.js';

const laneStep = keys(
  {
    lane: name('the name of a lane').describe(
      'The unit travels by this lane to the next site. Example: coachworks to final plant',
    ),
    when: whenKey,
  },
  'a map with the key lane',
).transform((entry): LaneStep => ({ kind: 'lane', ...entry }));

export function routeSchema(time: TimeSchema) {
  const step = stepSchema(time);
  const entry = z.union([step, laneStep, besideSchema(step, time)], {
    error:
      'a step { step: ..., at: ... }, a lane { lane: ... } or steps side by side { at: ..., side ' +
      'by side: [...] }',
  });
  return z
    .array(remembering(entry), { error: 'a list of steps' })
    .min(1, { error: 'at least one step' })
    .transform((entries): RouteEntry[] => entries)
    .meta({ id: 'route', description: 'Steps and lanes in order.' });
}
export type RouteSchema = ReturnType<typeof routeSchema>;

/** Where names stand in an entry that need no other key to be looked up. */
const USES: Uses = {
  lane: 'lanes',
  'parts/*': 'parts',
  'takes off/+': 'feeders',
  'creates/*': 'defects',
  'finds/*': 'defects',
  'finds/*/by/+': 'lanes',
  'fails/by/+': 'lanes',
};

/** Names in the entries of all routes. */
export function routeNames(lookup: Lookup): void {
  const { outline, look } = lookup;
  for (const route of outline.routes) {
    for (const step of route.entries) {
      const { path, entry, atPath } = step;
      lookup.lookAll(path, entry, USES);
      look(atPath, entry['at'], outline.stations, MISSING.stations);
      crewNames(path, entry, lookup);
      equipmentNames(path, entry, lookup);
      whenNames([...path, 'when'], entry['when'], lookup);
      taskNames(path, entry, lookup);
      settingNames([...path, 'setting'], entry['setting'], lookup);
      inspectionNames(step, route, lookup);
    }
  }
}

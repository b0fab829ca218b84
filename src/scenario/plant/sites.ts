import { calendarName } from '../calendar/calendars.js';
import { zone } from '../calendar/zone.js';
import type { Lookup } from '../lookup/outline.js';
import { keys, named } from '../values/keys.js';
import { mapOf, type RawMap } from '../values/raw.js';
import type { TimeSchema } from '../values/time.js';
import { crewSchema } from './crews.js';
import { stationNames, stationSchema } from './stations.js';

export function siteSchema(time: TimeSchema) {
  return keys(
    {
      zone: zone.default('UTC').describe('The time zone of the site. Default: UTC. Example: Europe/Oslo'),
      calendar: calendarName.optional().describe('When the site works. Default: always open. Example: days'),
      crews: named(crewSchema, 'crews with their headcounts, such as { painters: 6 }')
        .default({})
        .describe(
          'People by skill. Example: { painters: 6, fitters: { headcount: [14, 8], calendar: two ' +
            'shifts, absence: 5 % } }',
        ),
      stations: named(
        stationSchema(time),
        'stations by name, such as { prime booth: { places: 1 } }',
      ).describe(
        'The named locations where units are worked on. Station names are unique over all sites. ' +
          'Example: { prime booth: { places: 1, buffer: 2 } }',
      ),
    },
    'a site: a map with the key stations',
  );
}

export function siteNames(raw: RawMap, lookup: Lookup): void {
  for (const [siteName, value] of Object.entries(mapOf(raw['sites']))) {
    const site = mapOf(value),
      path = ['sites', siteName];
    lookup.calendar([...path, 'calendar'], site['calendar']);
    for (const [name, crew] of Object.entries(mapOf(site['crews'])))
      lookup.calendar([...path, 'crews', name, 'calendar'], mapOf(crew)['calendar']);
    for (const [name, station] of Object.entries(mapOf(site['stations'])))
      stationNames([...path, 'stations', name], mapOf(station), lookup);
  }
}

import { calendarName } from '../calendar/calendars.js';
import { zone } from '../calendar/zone.js';
import { keys, named } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { crewSchema } from './crews.js';
import { stationSchema } from './stations.js';

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

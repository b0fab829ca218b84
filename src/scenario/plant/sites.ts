import type { Site, Station } from '../types/plant.js';

import { changeoverSchema } from './changeovers.js';
import { calendarName, crewSchema } from './crews.js';
import { failuresSchema } from './failures.js';
import { flag, keys, named, spaces, spell, whole } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';
import { zone } from '../calendar/zone.js';

const lot = keys(
  {
    least: whole(1).default(1).describe('Fewest units that start together. Default: 1'),
    most: whole(1).describe('Most units that start together; at most the places of the station. Example: 4'),
    'longest wait': spell
      .optional()
      .describe(
        'After this wait of its first unit a lot of at least `least` starts without being full. ' +
          'Default: it starts as soon as the least are there. Example: 45 min',
      ),
  },
  'a lot: a map with the keys least and most',
);

function stationSchema(time: TimeSchema) {
  return keys(
    {
      places: whole(1).default(1).describe('How many units can stand in it at once. Default: 1'),
      buffer: spaces.default(0).describe('Waiting spaces ahead of it, or `unlimited`. Default: 0'),
      'rework buffer': spaces
        .optional()
        .describe(
          'Waiting spaces for units that are sent back, or `unlimited`. Default: they share the buffer',
        ),
      unattended: flag
        .default(false)
        .describe(
          'True for equipment that is never off shift, such as an oven that bakes through the night. ' +
            'Local codes and licensed practice decide what may run unattended. Default: false',
        ),
      calendar: calendarName
        .optional()
        .describe('When the station is on shift. Default: the calendar of the site'),
      changeover: changeoverSchema(time)
        .optional()
        .describe(
          'Work between units that differ in an option. Default: none. Example: { on: colour, work: 15 min }',
        ),
      lot: lot
        .optional()
        .describe(
          'Units that are taken together, as by an oven. Default: one by one. Example: { least: 2, ' +
            'most: 4, longest wait: 45 min }',
        ),
      failures: failuresSchema(time).optional(),
      people: whole(1)
        .optional()
        .describe(
          'Most people who can work in one place at once, teams included; it limits steps side by ' +
            'side. Default: no limit. Example: 4',
        ),
    },
    'a station: a map, {} for all defaults',
  ).transform(
    (s): Station => ({
      places: s.places,
      buffer: s.buffer === 'unlimited' ? undefined : s.buffer,
      reworkBuffer: s['rework buffer'],
      unattended: s.unattended,
      calendar: s.calendar,
      changeover: s.changeover,
      lot: s.lot && { least: s.lot.least, most: s.lot.most, longestWaitMin: s.lot['longest wait'] },
      failures: s.failures ?? [],
      people: s.people,
    }),
  );
}

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
        'The named spots in which units are worked on. Station names are unique over all sites. ' +
          'Example: { prime booth: { places: 1, buffer: 2 } }',
      ),
    },
    'a site: a map with the key stations',
  ).transform((s): Site => ({ zone: s.zone, calendar: s.calendar, crews: s.crews, stations: s.stations }));
}

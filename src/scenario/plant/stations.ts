import { type Model, UNLIMITED } from '../../flow/model/model.js';
import { ALWAYS } from '../calendar/book.js';
import { calendarName } from '../calendar/calendars.js';
import { zone } from '../calendar/zone.js';
import { float64, int32, ragged, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { bankName, foundIn, siteOf } from '../lookup/ids.js';
import { allStations } from '../lookup/placed.js';
import { keys, named } from '../values/keys.js';
import { flag, limitOf, spaces, whole } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { changeoverSchema, compileChangeover } from './changeovers.js';
import { crewSchema } from './crews.js';
import { equipmentSchema } from './equipment.js';
import { failuresSchema } from './failures.js';
import { lotSchema } from './lots.js';

export function stationSchema(time: TimeSchema) {
  return keys(
    {
      places: whole(1).default(1).describe('How many units can stand in it at once. Default: 1'),
      buffer: spaces
        .default(0)
        .transform(limitOf)
        .describe('Waiting spaces ahead of it, or `unlimited`. Default: 0'),
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
          'What it takes to go from one value of an option, or one setting, to another. Default: none. ' +
            'Example: ' +
            '{ on: colour, work: 15 min }',
        ),
      lot: lotSchema
        .optional()
        .describe(
          'Units that are taken together, as in an oven. Default: one by one. Example: { least: 2, ' +
            'most: 4, longest wait: 45 min }',
        ),
      failures: failuresSchema(time)
        .optional()
        .transform((list) => list ?? []),
      people: whole(1)
        .optional()
        .describe(
          'Maximum number of people working in one place at once, teams included; it limits steps ' +
            'side by side. Default: no limit. Example: 4',
        ),
    },
    'a station: a map, {} for all defaults',
  );
}

/** A capacity as the model has it. */
export const capacity = (limit: number | undefined): number => limit ?? UNLIMITED;

/** Stations site by site, then the limited arrival banks of lanes. */
export function compileStations(all: Compilation): Model['stations'] {
  const { scenario, ids, book } = all;
  const stations = allStations(scenario).map(({ name, siteName, site, station }) => ({
    name,
    ...station,
    change: compileChangeover(all, name, station.changeover),
    isBank: false,
    site: ids.site(siteName),
    calendar: station.unattended ? ALWAYS : book.id(station.calendar ?? site.calendar, site.zone),
  }));
  const banks = Object.entries(scenario.lanes).flatMap(([lane, { to, arrivalBank }]) =>
    typeof arrivalBank !== 'number'
      ? []
      : {
          name: bankName(lane),
          places: arrivalBank,
          buffer: 0,
          reworkBuffer: undefined,
          lot: undefined,
          change: undefined,
          isBank: true,
          site: ids.site(to),
          calendar: ALWAYS,
        },
  );
  const rows = [...stations, ...banks].map(({ change, lot, reworkBuffer, ...row }) => ({
    ...row,
    buffer: capacity(row.buffer),
    reworkBuffer: reworkBuffer === 'unlimited' ? UNLIMITED : (reworkBuffer ?? -1),
    changeoverOption: change?.option ?? -1,
    changeoverAlone: change?.alone ?? false,
    values: change?.values ?? [],
    changeovers: change?.draws ?? [],
    batchMost: change?.batch?.most ?? 0,
    batchWait: change?.batch?.longestWaitMin ?? Infinity,
    lotLeast: lot?.least ?? 0,
    lotMost: lot?.most ?? 0,
    lotWait: lot?.longestWaitMin ?? 0,
  }));
  const changeovers = ragged(rows, (row) => row.changeovers);
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    ...int32(rows, 'site', 'places', 'buffer', 'reworkBuffer', 'calendar', 'changeoverOption', 'batchMost'),
    ...int32(rows, 'lotLeast', 'lotMost'),
    ...float64(rows, 'batchWait', 'lotWait'),
    ...uint8(rows, 'isBank', 'changeoverAlone'),
    changeoverValues: rows.map(({ values }) => values),
    changeoverStart: changeovers.start,
    changeoverDraw: changeovers.column(Number),
  };
}

/**
 * Calendar in which work at a station goes on whoever does it: the station's; for an unattended one only that
 * of its people and equipment.
 */
export function workCalendar(
  { scenario, book }: Compilation,
  siteName: string,
  stationName: string,
  claimed: readonly number[],
): number {
  const site = siteOf(scenario, siteName),
    station = foundIn(site.stations, stationName, 'station');
  if (!station.unattended)
    return book.common([book.id(station.calendar ?? site.calendar, site.zone), ...claimed]);
  if (claimed.length > 0) return book.common(claimed);
  return book.id(site.calendar, site.zone);
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
      equipment: equipmentSchema(time),
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

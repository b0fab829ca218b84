import { z } from 'zod';
import { calendarSchema } from './calendar/calendars.js';
import type { ReadTable } from './file/csv.js';
import { leversSchema } from './levers.js';
import { carriersSchema } from './plant/carriers.js';
import { costsSchema } from './plant/costs.js';
import { laneSchema } from './plant/lanes.js';
import { outagesSchema } from './plant/outages.js';
import { pulseLineSchema } from './plant/pulse-lines.js';
import { siteSchema } from './plant/stations.js';
import { supplySchema } from './plant/supplies.js';
import { teamSchema } from './plant/teams.js';
import { programmeSchema } from './programme/programme.js';
import { defectSchema } from './steps/defects.js';
import { feederSchema } from './steps/feeders.js';
import { routeSchema } from './steps/route.js';
import type { Scenario } from './types/scenario.js';
import { keys, name, named, oneOrMore } from './values/keys.js';
import { text } from './values/scalars.js';
import { type ReadObserved, timeSchema } from './values/time.js';

/** Read and taken out before the schema is asked; it stands in the schema for those who read or write it. */
export const includeSchema = oneOrMore(name('the name of a file'), 'the name of a file, or a list of them')
  .optional()
  .transform((): undefined => undefined)
  .describe(
    'Other files with parts of this scenario, paths relative to the file that names them. ' +
      'Default: none. Example: [paint.yaml, final-plant.yaml]',
  );

const WANTED_MEASURED =
  'a map of paths with the values to stand there, such as { route.prime.work: { mean: 42 min, cv: 0.31 } }';
/** Put in place before the schema is asked, as above. */
const measuredSchema = z
  .record(z.string(), z.unknown(), { error: WANTED_MEASURED })
  .optional()
  .transform((): undefined => undefined)
  .describe(
    'Values that stand in place of others, by path, as in a file of what-ifs; `fit` writes them. Default: ' +
      'none. Example: { route.prime.work: { mean: 42 min, cv: 0.31, basis: { measured: 84 } } }',
  );

/**
 * The schema of a scenario file. Observed times and build lists are read by `readObserved` and `readTable`
 * while parsing.
 */
export function scenarioSchema(readObserved: ReadObserved, readTable: ReadTable) {
  const time = timeSchema(readObserved);
  const route = routeSchema(time);
  return keys(
    {
      scenario: name('the name of the scenario').describe(
        'The name of the scenario, shown on every report. Example: Rescue tender, four a day',
      ),
      note: text.optional().describe('A remark, shown on the report. Example: every number is invented'),
      programme: programmeSchema(time, readTable).describe(
        'What is to be built, how fast, from when, with which options.',
      ),
      calendars: named(calendarSchema, 'calendars by name')
        .default({})
        .describe('Working hours, by name; sites, crews, stations and lanes refer to them.'),
      sites: named(siteSchema(time), 'sites by name')
        .refine((sites) => Object.keys(sites).length > 0, { error: 'at least one site' })
        .describe('The plants, by name, with their crews and stations.'),
      feeders: named(feederSchema(route), 'feeders by name')
        .default({})
        .describe('Off-line routes whose sub-assemblies join the unit at a step.'),
      supplies: named(supplySchema(time), 'supplies by name')
        .default({})
        .describe(
          'Bought-in parts, by name: stocks replenished in lots from outside; steps take them by ' +
            '`parts`. Example: { power packs: { site: final plant, at start: 6, reorder: { level: 4, ' +
            'lot: 8, lead time: 15 days } } }',
        ),
      lanes: named(laneSchema(time), 'lanes by name')
        .default({})
        .describe('Transport from site to site, by name.'),
      carriers: named(carriersSchema(time), 'carriers by name')
        .default({})
        .describe(
          'Carts, dollies and fixtures, by name: one of them stays with a unit from one step to ' +
            'another, across stations, nights and lanes, and then returns. Example: { body dollies: { ' +
            'count: 12, from: set up frame, to: receive, return: 3 h } }',
        ),
      teams: named(teamSchema, 'teams by name')
        .default({})
        .describe(
          'People of a crew who stay with one unit from one step to another of the same site, by name. ' +
            'Example: { power team: { crew: technicians, people: 2, from: fit battery, to: hand over } }',
        ),
      defects: named(defectSchema, 'kinds of defect by name, such as { runs: {} }')
        .default({})
        .describe('Kinds of defect that steps create and find. Example: { runs: {} }'),
      costs: costsSchema
        .optional()
        .describe(
          'Prices, for the cost of a unit shipped. Default: no costs in the results. Example: { ' +
            'currency: EUR, people: { default: 42 } }',
        ),
      outages: outagesSchema
        .default([])
        .describe(
          'Periods known in advance during which stations are down or lanes do not run; the results ' +
            'say what each costs the build and when it has caught up. Planned maintenance outside ' +
            'working hours needs no outage: leave those hours out of the calendar. Example: ' +
            '[{ stations: [colour booth], from: 2027-08-09, to: 2027-08-20, note: new paint line }]',
        ),
      'pulse lines': named(pulseLineSchema, 'pulse lines by name')
        .default({})
        .describe(
          'Stations whose units all move on together, once per takt, when all of them are done. ' +
            'Example: { final line: { stations: [trim, marriage, final], takt: 4 h } }',
        ),
      levers: leversSchema
        .default([])
        .describe(
          'What readers of the report may try in the page, by name: a value of this file and how far ' +
            'it may be moved. Example: { places in the colour booth: { change: ' +
            'sites.coachworks.stations.colour booth.places, from: 1, to: 3, price: 450000 } }',
        ),
      route: route.describe('The ordered steps and lanes of a unit.'),
      measured: measuredSchema,
      include: includeSchema,
    },
    'a scenario: a map with the keys scenario, programme, sites and route',
  ).transform(({ scenario: name, note, programme, pulseLines, ...parts }): Scenario => {
    const zone = programme.zone ?? Object.values(parts.sites)[0]?.zone ?? 'UTC';
    // The digest of a scenario goes by the order of keys.
    return { ...parts, pulseLines, name, note, programme: { ...programme, zone }, assumptions: [] };
  });
}

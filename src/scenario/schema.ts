import { z } from 'zod';
import type { Scenario } from './types/scenario.js';
import { calendarSchema } from './calendar/calendars.js';
import { carriersSchema, teamSchema } from './plant/carriers.js';
import { costsSchema } from './plant/costs.js';
import { defectSchema } from './work/finds.js';
import { includeSchema, requiredInWhole, withIncludedRoutes } from './file/include-schema.js';
import { outagesSchema } from './plant/failures.js';
import { laneSchema } from './plant/lanes.js';
import { programmeSchema } from './programme/programme.js';
import { pulseLineSchema } from './plant/pulse-lines.js';
import { keys, name, named } from './values/keys.js';
import { feederSchema, routeSchema } from './work/steps.js';
import { withAssumptions } from './json-schema.js';
import { siteSchema } from './plant/sites.js';
import { supplySchema } from './plant/supplies.js';
import { timeSchema } from './values/time.js';
import type { ReadTable } from './file/csv.js';
import type { ReadObserved } from './values/observed.js';

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
      note: z
        .string({ error: 'a text' })
        .optional()
        .describe('A remark, shown on the report. Example: every number is invented'),
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
          'Bought-in parts, by name: stocks filled up in lots from outside, which steps take by ' +
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
            'another, over stations, nights and lanes, and comes back. Example: { body dollies: { count: ' +
            '12, from: set up frame, to: receive, return: 3 h } }',
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
          'Prices, for the cost of a unit shipped. Default: nothing is said of costs. Example: { ' +
            'currency: EUR, people: { default: 42 } }',
        ),
      outages: outagesSchema
        .default([])
        .describe(
          'Times, known beforehand, in which stations are down or lanes do not run; the results say ' +
            'how long the shop takes to recover. Planned maintenance outside the working hours needs ' +
            'none: leave those hours out of the calendar. Example: [{ stations: [colour booth], from: ' +
            '2027-08-09, to: 2027-08-20, note: new paint line }]',
        ),
      'pulse lines': named(pulseLineSchema, 'pulse lines by name')
        .default({})
        .describe(
          'Stations whose units all move on together, once per takt, when all of them are done. ' +
            'Example: { final line: { stations: [trim, marriage, final], takt: 4 h } }',
        ),
      route: route.describe('The ordered steps and lanes of a unit.'),
      include: includeSchema,
    },
    'a scenario: a map with the keys scenario, programme, sites and route',
  ).transform(({ scenario, note, programme, include, 'pulse lines': pulseLines, ...parts }): Scenario => {
    void include; // merged before
    const zone = programme.zone ?? Object.values(parts.sites)[0]?.zone ?? 'UTC';
    return {
      ...parts,
      costs: parts.costs,
      pulseLines,
      name: scenario,
      note,
      programme: { ...programme, zone },
      assumptions: [],
    };
  });
}

/** JSON Schema (draft 7, as editors read it best) of what a planner may write; descriptions included. */
export const jsonSchema = (): Readonly<Record<string, unknown>> =>
  requiredInWhole(withAssumptions(keySchema()));

/** The same without what may be said of values. */
export function keySchema(): Readonly<Record<string, unknown>> {
  const schema = scenarioSchema(
    () => ({ values: [], fault: undefined }),
    () => ({ headings: [], line: 1, rows: [] }),
  );
  return withIncludedRoutes({
    ...z.toJSONSchema(schema, { io: 'input', target: 'draft-7', reused: 'inline' }),
    title: 'rateproof scenario',
  });
}

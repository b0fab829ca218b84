import { z } from 'zod';
import { EQUIPMENT } from '../../flow/model/resources.js';
import { FIRST, LAST, WHOLE } from '../../flow/model/steps.js';
import { calendarName } from '../calendar/calendars.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import type { Lookup } from '../lookup/outline.js';
import { allSteps, type PlacedStation, type StationedStep } from '../lookup/placed.js';
import type { Equipment } from '../types/plant.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { EquipmentNeed, StationStep } from '../types/steps.js';
import { keys, named, together } from '../values/keys.js';
import { mapOf, own, type RawMap } from '../values/raw.js';
import { whole } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { failuresSchema } from './failures.js';

const count = whole(1, 1000);

/** The key `equipment` of a site. */
export function equipmentSchema(time: TimeSchema) {
  const one = z
    .union(
      [
        count.transform((pieces): Equipment => ({ count: pieces, calendar: undefined, failures: [] })),
        keys(
          {
            count: count.describe('How many pieces there are. Example: 2'),
            calendar: calendarName
              .optional()
              .describe('When it can be used. Default: the calendar of the site'),
            failures: failuresSchema(time)
              .optional()
              .transform((list) => list ?? []),
          },
          'a map with the key count',
        ),
      ],
      { error: 'a number from 1, such as 2, or { count: 2, calendar: days }' },
    )
    .describe('How many there are, or a map with count and more. Example: { count: 2, calendar: days }');
  return named(one, 'equipment with how many there are, such as { hoist: 1 }')
    .optional()
    .describe(
      'Hoists, cranes, test rigs that stations of the site share, by name; steps claim them by ' +
        '`equipment`. Lifting, rigs and road tests follow local codes and licensed practice. ' +
        'Default: none. Example: { hoist: 1, test rig: { count: 2, calendar: days } }',
    );
}

/** The key `equipment` of a step. */
export function equipmentKey(time: TimeSchema) {
  const need = z
    .union(
      [
        count.transform((pieces): EquipmentNeed => ({ count: pieces, first: undefined, last: undefined })),
        keys(
          {
            count: count.default(1).describe('How many pieces. Default: 1. Example: 2'),
            first: time
              .optional()
              .describe(
                'It is free again when this much of the work has been done, or at the end of the work if ' +
                  'that is sooner. Default: it is kept to the end of all work. Example: 40 min',
              ),
            last: time
              .optional()
              .describe(
                'It is claimed when only this much of the work is left; while the unit waits for it, its ' +
                  'people are free. Default: it is claimed with all that the step needs. Example: 30 min',
              ),
          },
          'a map with first or last',
        ).superRefine(
          together(({ first, last }, wrong) => {
            if (first !== undefined && last !== undefined)
              wrong(
                ['last'],
                'either first or last; write two steps where it is needed at both ends',
                'both',
              );
          }),
        ),
      ],
      { error: 'a number from 1, such as 1, or { count: 1, first: 40 min }' },
    )
    .describe('How many pieces, or a map. Example: { count: 1, first: 40 min }');
  return named(need, 'equipment with how many pieces, such as { hoist: 1 }')
    .optional()
    .describe(
      'Equipment of the site of the station, claimed together with all else that the step needs, and ' +
        'free when its people are. Default: none. Example: { hoist: { count: 1, first: 40 min } }',
    );
}

export function equipmentNames(path: Path, entry: RawMap, { outline, look }: Lookup): void {
  const site = outline.stations?.get(String(entry['at']));
  if (site === undefined) return;
  for (const name of Object.keys(mapOf(entry['equipment'])))
    look(
      [...path, 'equipment', name],
      name,
      outline.equipmentOf?.get(site),
      `equipment of this name in site ${site}`,
      true,
    );
}

/** More pieces than there are, and what is not done with a part of the work or with pieces that fail. */
export function* equipmentFindings(scenario: Scenario): Iterable<Finding> {
  for (const placed of allSteps(scenario)) {
    const { path, step, where } = placed;
    for (const [name, need] of Object.entries(step.equipment ?? {})) {
      const equipment = where && own(where.site.equipment ?? {}, name),
        here = [...path, 'equipment', name];
      if (where === undefined || equipment === undefined) continue;
      if (need.count > equipment.count)
        yield {
          path: here,
          wanted: `at most ${equipment.count}, the number of ${name} in site ${where.siteName}`,
          seen: String(need.count),
        };
      if (equipment.failures.length > 0 && where.station.lot !== undefined)
        yield {
          path: here,
          wanted: 'equipment that never fails, at a station that takes units in lots',
          seen: `${name}, which has failures`,
          atKey: true,
        };
      const key = need.first !== undefined ? 'first' : need.last !== undefined ? 'last' : undefined,
        against = key && againstParts(placed, where, equipment);
      if (key !== undefined && against !== undefined) yield { path: [...here, key], ...against };
    }
  }
}

/** Why equipment is not for a part of the work of a step. */
function againstParts(
  { step, path }: StationedStep,
  { site, station }: PlacedStation,
  equipment: Equipment,
): Pick<Finding, 'wanted' | 'seen'> | undefined {
  const { work, passes, oneShift, crew } = step;
  if (path.at(-2) === 'side by side')
    return { wanted: 'equipment for the whole work of a step side by side', seen: 'a part of it' };
  if (work === undefined)
    return {
      wanted: 'a step with work, or equipment for all of its passes',
      seen: passes === undefined ? 'no work' : 'passes',
    };
  if (oneShift)
    return { wanted: 'a step that is not `in one shift`, or equipment for the whole work', seen: 'both' };
  if (station.lot !== undefined)
    return { wanted: 'a station that takes units one by one, or equipment for the whole work', seen: 'lots' };
  // Its hours are those of the step, which has only one calendar for all its work.
  const hours = equipment.calendar ?? site.calendar,
    others = [
      ...(station.unattended ? [] : [station.calendar ?? site.calendar]),
      ...Object.keys(crew).map((name) => own(site.crews, name)?.calendar ?? site.calendar),
    ];
  return hours === undefined || others.includes(hours)
    ? undefined
    : {
        wanted: 'equipment with the hours of the station or a crew of the step, or for the whole work',
        seen: `calendar ${hours}`,
      };
}

/** Equipment site by site, as resources. */
export function equipmentResources({ scenario, ids, book }: Compilation) {
  return Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.equipment ?? {}).map(([name, { count: amount, calendar }]) => ({
      name,
      kind: EQUIPMENT,
      site: ids.site(siteName),
      amount,
      calendar: book.id(calendar ?? site.calendar, site.zone),
    })),
  );
}

/** What a step at a station of a site claims of it. */
export const equipmentNeeds = (step: StationStep, site: string, { ids, draws }: Compilation) =>
  Object.entries(step.equipment ?? {}).map(([name, { count: amount, first, last }]) => ({
    resource: ids.equipment(site, name),
    amount,
    part: first !== undefined ? FIRST : last !== undefined ? LAST : WHOLE,
    draw:
      first === undefined && last === undefined ? NO_DRAW : draws.add(`${step.name}/${name}`, first ?? last),
  }));

import { z } from 'zod';
import { type CrewShiftColumns, NEXT_SHIFT, OWN_SHIFT } from '../../flow/model/crews.js';
import { calendarName } from '../calendar/calendars.js';
import { column } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import type { Crew, CrewShifts, Site } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys } from '../values/keys.js';
import { own } from '../values/raw.js';
import { chance, whole, word } from '../values/scalars.js';

const headcount = whole(1);
const byShift = z
  .array(whole(0))
  .min(1)
  .refine((counts) => counts.some((count) => count > 0), { error: 'a headcount above 0 on some shift' });

/** A crew: a headcount, or more about it. */
export const crewSchema = z
  .union(
    [
      headcount.transform((count): Crew => ({ headcount: count, calendar: undefined })),
      keys(
        {
          headcount: z
            .union([headcount, byShift], {
              error: 'a headcount from 1, or a list with one for each shift, such as [6, 3]',
            })
            .describe(
              'People of this skill: one number for every shift, or a list with one for each entry of ' +
                'the `hours` of its calendar, in that order. Example: [6, 3]',
            ),
          calendar: calendarName
            .optional()
            .describe('When the crew is in. Default: the calendar of the site'),
          absence: chance
            .refine((share) => share < 1, { error: 'a chance below 100 %' })
            .default(0)
            .describe(
              'Chance that a person is absent from a shift, drawn for each person and shift. Default: ' +
                '0. Example: 6 %',
            ),
          'hand over': word('next shift', 'wait')
            .default('next shift')
            .describe(
              'What happens to unfinished work at the end of a shift: `next shift` (default), the next ' +
                'shift of this crew continues it if it has enough people; `wait`, it waits until the ' +
                'shift that began it is back. The same holds for teams of the crew.',
            ),
        },
        'a map with the key headcount',
      ).transform(({ headcount: written, calendar, absence, handOver }): Crew => {
        const headcounts = typeof written === 'number' ? undefined : written,
          headcount = typeof written === 'number' ? written : Math.max(...written);
        if (headcounts === undefined && absence === 0 && handOver === 'next shift')
          return { headcount, calendar };
        return { headcount, calendar, shifts: { headcounts, absence, handOver } };
      }),
    ],
    { error: 'a headcount from 1, such as 6, or { headcount: 6, calendar: days }' },
  )
  .describe('A headcount, or a map with headcount and more. Example: { headcount: [6, 3], absence: 6 % }');

/** Headcounts that do not fit the shifts. */
export function* crewFindings({ sites, calendars }: Scenario): Iterable<Finding> {
  for (const [site, { crews, calendar: usual }] of Object.entries(sites)) {
    for (const [name, { calendar = usual, shifts }] of Object.entries(crews)) {
      if (shifts === undefined) continue;
      const path = ['sites', site, 'crews', name],
        { headcounts } = shifts,
        key = headcounts !== undefined ? 'headcount' : shifts.absence > 0 ? 'absence' : 'hand over',
        hours = calendar === undefined ? undefined : own(calendars, calendar)?.hours.length;
      if (calendar === undefined)
        yield {
          path: [...path, key],
          wanted: 'a crew with a calendar, which says what its shifts are; give the crew or its site one',
          seen: 'none',
        };
      else if (hours !== undefined && headcounts !== undefined && headcounts.length !== hours)
        yield {
          path: [...path, 'headcount'],
          wanted: `one number, or ${hours}, one for each shift in the hours of calendar ${calendar}`,
          seen: `a list of ${headcounts.length}`,
        };
    }
  }
}

/** The shifts of each crew of which something changes from shift to shift; null for the others. */
export function compileShifts(all: Compilation): (CrewShiftColumns | null)[] {
  return Object.entries(all.scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.crews).map(([name, crew]) =>
      crew.shifts === undefined
        ? null
        : shiftsOf(crew, crew.shifts, site, `crew ${name} in ${siteName}`, all),
    ),
  );
}

function shiftsOf(
  { headcount, calendar }: Crew,
  { headcounts, absence, handOver }: CrewShifts,
  site: Site,
  title: string,
  { book, draws }: Compilation,
): CrewShiftColumns {
  const windows = book.roster(calendar ?? site.calendar, site.zone),
    firsts = [...windows.entries()].filter(([w, { instance }]) => windows[w - 1]?.instance !== instance);
  return {
    firstWindow: Int32Array.from([...firsts.map(([w]) => w), windows.length]),
    position: column(firsts, ([, { shift }]) => shift),
    people: column(firsts, ([, { shift }]) => headcounts?.[shift] ?? headcount),
    handOver: handOver === 'wait' ? OWN_SHIFT : NEXT_SHIFT,
    absence,
    absenceDraw: absence > 0 ? draws.chance(`${title}/absence`) : NO_DRAW,
  };
}

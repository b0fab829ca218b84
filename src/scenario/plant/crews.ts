import type { Crew, Site } from '../types/plant.js';
import type { CalendarSpec, ClockSpan, Overtime } from '../types/calendars.js';
import type { Finding, Path } from '../types/problem.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { z } from 'zod';
import { NEXT_SHIFT, OWN_SHIFT } from '../../flow/model/model.js';
import type { CrewShiftColumns, Model, OvertimeColumns } from '../../flow/model/model.js';
import type { CalendarBook } from '../calendar/book.js';
import { WEEK, lengthOf } from '../calendar/calendars.js';
import { isoWeek } from '../calendar/date.js';

import type { Scenario } from '../types/scenario.js';
import { chance, keys, name, whole, word } from '../values/keys.js';
import { NO_DRAW } from '../whole/draws.js';
import type { Draws } from '../whole/draws.js';
import { found } from '../whole/ids.js';
import { own } from '../whole/placed.js';
import type { LaidRoutes } from '../work/route.js';

export const calendarName = name('the name of a calendar');
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
              'Each person is missing in each shift with this chance, drawn person by person. Default: ' +
                '0. Example: 6 %',
            ),
          'hand over': word('next shift', 'wait')
            .default('next shift')
            .describe(
              'What happens to work that outlasts its shift: `next shift`, people of the next shift of ' +
                'this crew go on with it, as far as there are enough (default); `wait`, it waits for the ' +
                'next shift of those who began it.',
            ),
        },
        'a map with the key headcount',
      ).transform((c): Crew => {
        const headcounts = typeof c.headcount === 'number' ? undefined : c.headcount;
        const most = typeof c.headcount === 'number' ? c.headcount : Math.max(...c.headcount);
        if (headcounts === undefined && c.absence === 0 && c['hand over'] === 'next shift')
          return { headcount: most, calendar: c.calendar };
        return {
          headcount: most,
          calendar: c.calendar,
          shifts: { headcounts, absence: c.absence, handOver: c['hand over'] },
        };
      }),
    ],
    { error: 'a headcount from 1, such as 6, or { headcount: 6, calendar: days }' },
  )
  .describe('A headcount, or a map with headcount and more. Example: { headcount: [6, 3], absence: 6 % }');

/**
 * Headcounts that do not fit the shifts, overtime in the usual hours or twice, rules that know no due date.
 */
export function crewFindings(scenario: Scenario): Finding[] {
  return [
    ...shiftsFindings(scenario),
    ...Object.entries(scenario.calendars).flatMap(([name, calendar]) =>
      overtimeFindings(scenario, ['calendars', name, 'overtime'], calendar),
    ),
  ];
}

function shiftsFindings({ sites, calendars }: Scenario): Finding[] {
  return Object.entries(sites).flatMap(([site, { crews, calendar: usual }]) =>
    Object.entries(crews).flatMap(([name, { calendar = usual, shifts }]): Finding[] => {
      const path = ['sites', site, 'crews', name];
      if (shifts === undefined) return [];
      const { headcounts } = shifts,
        key = headcounts !== undefined ? 'headcount' : shifts.absence > 0 ? 'absence' : 'hand over';
      if (calendar === undefined)
        return [
          {
            path: [...path, key],
            wanted: 'a crew with a calendar, which says what its shifts are; give the crew or its site one',
            seen: 'none',
          },
        ];
      const hours = own(calendars, calendar)?.hours.length;
      if (hours === undefined || headcounts === undefined || headcounts.length === hours) return [];
      return [
        {
          path: [...path, 'headcount'],
          wanted: `one number, or ${hours}, one for each shift in the hours of calendar ${calendar}`,
          seen: `a list of ${headcounts.length}`,
        },
      ];
    }),
  );
}

function overtimeFindings({ programme }: Scenario, path: Path, calendar: CalendarSpec): Finding[] {
  const usual = minutesOf(calendar.on, calendar.hours);
  return calendar.overtime.flatMap((entry, i): Finding[] => {
    const here = minutesOf(entry.on ?? calendar.on, entry.hours),
      found: Finding[] = [];
    if (meet(here, usual))
      found.push({
        path: [...path, i, 'hours'],
        wanted: 'hours outside the shifts of the calendar',
        seen: 'some inside',
      });
    const before = calendar.overtime
      .slice(0, i)
      .findIndex(
        (other) => sameDates(entry, other) && meet(here, minutesOf(other.on ?? calendar.on, other.hours)),
      );
    if (before >= 0)
      found.push({
        path: [...path, i, 'hours'],
        wanted: `hours that no earlier entry of overtime has on the same days; entry ${before + 1} has some of them`,
        seen: 'the same hours',
      });
    if (entry.when !== undefined && programme.release.kind !== 'rate')
      found.push({
        path: [...path, i, 'when'],
        wanted: 'a programme with a `rate`, which says when units are due; leave the rule out or give a rate',
        seen: 'none',
      });
    return found;
  });
}

/** Minutes of a week: 1 in one of the spans on one of the days. */
function minutesOf(on: readonly number[], hours: readonly ClockSpan[]): Uint8Array {
  const week = new Uint8Array(WEEK);
  for (const day of on)
    for (const span of hours)
      for (let i = 0; i < lengthOf(span); i++)
        week[((day - 1) * MINUTES_PER_DAY + span.startMin + i) % WEEK] = 1;
  return week;
}

const meet = (a: Uint8Array, b: Uint8Array): boolean => a.some((minute, i) => minute === 1 && b[i] === 1);

const sameDates = (a: Overtime, b: Overtime): boolean =>
  (a.from ?? '') <= (b.to ?? '9') && (b.from ?? '') <= (a.to ?? '9');

/** The shifts of each crew of which something changes from shift to shift; null for the others. */
export function compileShifts(
  scenario: Scenario,
  book: CalendarBook,
  draws: Draws,
): (CrewShiftColumns | null)[] {
  return Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.crews).map(([name, crew]) =>
      crew.shifts === undefined ? null : shiftsOf(crew, site, `crew ${name} in ${siteName}`, book, draws),
    ),
  );
}

function shiftsOf(
  { headcount, calendar, shifts }: Crew,
  site: Site,
  title: string,
  book: CalendarBook,
  draws: Draws,
): CrewShiftColumns {
  const { headcounts, absence = 0, handOver } = shifts!;
  const windows = book.roster(calendar ?? site.calendar, site.zone);
  const firstWindow: number[] = [],
    position: number[] = [];
  windows.forEach(({ instance, shift }, w) => {
    if (w > 0 && windows[w - 1].instance === instance) return;
    firstWindow.push(w);
    position.push(shift);
  });
  return {
    firstWindow: Int32Array.from([...firstWindow, windows.length]),
    position: Int32Array.from(position),
    people: Int32Array.from(position, (shift) => headcounts?.[shift] ?? headcount),
    handOver: handOver === 'wait' ? OWN_SHIFT : NEXT_SHIFT,
    absence,
    absenceDraw: absence > 0 ? draws.chance(`${title}/absence`) : NO_DRAW,
  };
}

/**
 * The overtime rules of all calendars in use, in the order of their bits. To be called when all calendars
 * are.
 */
export function compileOvertime(
  scenario: Scenario,
  book: CalendarBook,
  laid: LaidRoutes,
  programme: Model['programme'],
): OvertimeColumns[] {
  return book.rules.map(({ calendar, zone, entry }) => {
    const { when, note } = scenario.calendars[calendar].overtime[entry],
      { behind, leadTimeMin, at, decided } = when!;
    const windows = book.roster(calendar, zone),
      periodOf = (day: number): string => (decided === 'daily' ? String(day) : isoWeek(day));
    const periods: number[] = [];
    windows.forEach(({ start, day }, w) => {
      if (w === 0 || periodOf(windows[w - 1].day) !== periodOf(day)) periods.push(start);
    });
    const step = at === undefined ? -1 : found(laid.stepId, at, 'step');
    return {
      name: `${calendar} in ${zone}, ${count(behind, at)}${note === undefined ? '' : ` (${note})`}`,
      calendar: book.id(calendar, zone),
      periods: Float64Array.from([...periods, Infinity]),
      due: programme.times.map((time) => time + leadTimeMin),
      step,
      behind,
    };
  });
}

const count = (behind: number, at: string | undefined): string =>
  `${behind} unit${behind === 1 ? '' : 's'} behind${at === undefined ? '' : ` at ${at}`}`;

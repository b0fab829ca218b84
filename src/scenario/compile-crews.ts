import {
  NEXT_SHIFT,
  OWN_SHIFT,
  type CrewShiftColumns,
  type Model,
  type OvertimeColumns,
} from '../flow/model.js';
import type { CalendarBook } from './calendar-book.js';
import { isoWeek } from './calendar-date.js';
import { NO_DRAW, type Draws } from './compile-draws.js';
import { found } from './compile-names.js';
import type { LaidRoutes } from './compile-route.js';
import type { Crew, Scenario, Site } from './scenario.js';

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

/** The overtime rules of all calendars in use, in the order of their bits. To be called when all calendars are. */
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

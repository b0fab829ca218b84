import { LEAVE_FULL, LEAVE_FULL_OR_WAIT, LEAVE_TIMETABLE, type Model } from '../flow/model.js';
import type { CalendarBook } from './calendar-book.js';
import { MINUTES_PER_DAY } from './calendar-date.js';
import { column } from './compile-columns.js';
import type { Draws } from './compile-draws.js';
import { found, siteOf, type Names } from './compile-names.js';
import type { RunSpan } from './compile-span.js';
import { capacity } from './compile-stations.js';
import type { Lane, Scenario } from './scenario.js';

const RULE = { full: LEAVE_FULL, 'full or wait': LEAVE_FULL_OR_WAIT, timetable: LEAVE_TIMETABLE } as const;

/** Lanes: loading keeps the calendar of the site of departure, unloading that of the site of arrival, driving the driving hours. */
export function compileLanes(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
  draws: Draws,
  span: RunSpan,
): Model['lanes'] {
  const rows = Object.entries(scenario.lanes).map(([name, lane]) => {
    const from = siteOf(scenario, lane.from),
      to = siteOf(scenario, lane.to);
    return {
      name,
      lane,
      load: draws.add(`${name}/load`, lane.load),
      drive: draws.add(`${name}/drive`, lane.drive),
      unload: draws.add(`${name}/unload`, lane.unload),
      return: draws.add(`${name}/return`, lane.return),
      loadCalendar: book.id(from.calendar, from.zone),
      driveCalendar: book.id(lane.hours, from.zone),
      unloadCalendar: book.id(to.calendar, to.zone),
    };
  });
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    from: column(rows, (row) => found(names.site, row.lane.from, 'site')),
    to: column(rows, (row) => found(names.site, row.lane.to, 'site')),
    trucks: column(rows, (row) => row.lane.trucks),
    capacity: column(rows, (row) => row.lane.capacity),
    loadDraw: column(rows, (row) => row.load),
    driveDraw: column(rows, (row) => row.drive),
    unloadDraw: column(rows, (row) => row.unload),
    returnDraw: column(rows, (row) => row.return),
    loadCalendar: column(rows, (row) => row.loadCalendar),
    driveCalendar: column(rows, (row) => row.driveCalendar),
    unloadCalendar: column(rows, (row) => row.unloadCalendar),
    rule: column(rows, (row) => RULE[row.lane.leaves.kind]),
    wait: Float64Array.from(rows, ({ lane: { leaves } }) =>
      leaves.kind === 'full or wait' ? leaves.longestWaitMin : Infinity,
    ),
    timetable: rows.map((row) => departures(row.lane, scenario, book, span)),
    bank: column(rows, (row) => capacity(row.lane.bank)),
    docksFrom: column(rows, (row) => capacity(row.lane.docks.from)),
    docksTo: column(rows, (row) => capacity(row.lane.docks.to)),
  };
}

/** Times of departure in the span, sorted: the clock times on each working day of the site of departure. */
function departures(
  { from, leaves }: Lane,
  scenario: Scenario,
  book: CalendarBook,
  span: RunSpan,
): Float64Array {
  if (leaves.kind !== 'timetable') return new Float64Array(0);
  const site = siteOf(scenario, from);
  const clock = book.clock(site.zone);
  const times = new Set<number>();
  for (const { day } of book.workingDays(site.calendar, site.zone)) {
    for (const minute of leaves.atMin) times.add(clock.instant(day * MINUTES_PER_DAY + minute) - span.origin);
  }
  return Float64Array.from(times)
    .filter((time) => time >= 0 && time <= span.horizon)
    .sort();
}

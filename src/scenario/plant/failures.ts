import type { Finding, Path } from '../types/problem.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/moments.js';
import type { CalendarBook } from '../calendar/book.js';
import { dayNumber } from '../calendar/date.js';

import type { RunSpan } from '../programme/span.js';
import type { Failure, Moment, Outage } from '../types/failures.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, oneOrMore, word } from '../values/keys.js';
import { CLOCK, DATE, clockOf, isDate } from '../values/quantity.js';
import type { TimeSchema } from '../values/time.js';
import { column, entriesOf, starts } from '../whole/columns.js';
import type { Draws } from '../whole/draws.js';
import { found, siteOf } from '../whole/ids.js';
import type { Names } from '../whole/ids.js';
import type { Look } from '../whole/names.js';
import { listOf, mapOf } from '../whole/outline.js';
import type { Outline, RawMap } from '../whole/outline.js';
import { siteOfStation } from '../whole/placed.js';

/** The key `failures` of a station. */
export function failuresSchema(time: TimeSchema) {
  const failure = keys(
    {
      every: time.describe(
        'Time from one repair to the next failure. Example: { exponential: { mean: 60 h } }',
      ),
      by: word('operating time', 'calendar time')
        .default('operating time')
        .describe(
          'How `every` is counted: `operating time`, the minutes in which the place is working, in ' +
            'changeover, settling or in process (default); or `calendar time`, by the clock, in use or not.',
        ),
      repair: time.describe('Time of one repair. Example: { mean: 4 h, cv: 0.8 }'),
      hours: name('the name of a calendar')
        .optional()
        .describe(
          'When repairs go on: a calendar; they stop outside it and go on. Default: day and night. ' +
            'Example: days',
        ),
    },
    'a failure: a map with the keys every and repair',
  ).transform((f): Failure => ({ every: f.every, by: f.by, repair: f.repair, hours: f.hours }));
  return oneOrMore(failure, 'a failure { every: ..., repair: ... }, or a list of them').describe(
    'How the equipment fails: each place has its own; that of a station with lots fails as a ' +
      'whole. What goes on is broken off and taken up after the repair with what was left; its ' +
      'crew stays with it. Several ways to fail are a list; a place is up when none of them holds ' +
      'it down. Default: never. Example: { every: { exponential: { mean: 60 h } }, repair: { mean: ' +
      '4 h, cv: 0.8 } }',
  );
}

const MOMENT_WANTED = 'a day, such as "2027-08-09", or a day and a clock time, such as "2027-08-09 06:00"';
const moment = z
  .string({ error: MOMENT_WANTED })
  .refine((text) => momentOf(text) !== undefined, { error: MOMENT_WANTED, abort: true })
  .transform((text) => momentOf(text)!);

function momentOf(text: string): Moment | undefined {
  const [day = '', clock, ...more] = text.trim().split(/ +/);
  if (more.length > 0 || !DATE.test(day) || !isDate(day)) return undefined;
  if (clock === undefined) return { day, minute: undefined };
  const minute = CLOCK.test(clock) ? clockOf(clock) : undefined;
  return minute === undefined ? undefined : { day, minute };
}

const names = (what: string) => oneOrMore(name(what), `${what}, or a list of them`);

/** The top-level key `outages`. */
export const outagesSchema = z.array(
  keys(
    {
      stations: names('the name of a station')
        .optional()
        .describe('Stations of which all places are down; of one site. Example: [colour booth]'),
      site: name('the name of a site')
        .optional()
        .describe('Instead of `stations`: all stations of this site. Example: coachworks'),
      lanes: names('the name of a lane')
        .optional()
        .describe(
          'Lanes from which no truck departs in this time; those under way drive on. Example: ' +
            '[coachworks to final plant]',
        ),
      from: moment.describe(
        'First day, or day and clock time, in the zone of the site (of lanes alone: of the site that ' +
          'the first one leaves). Example: 2027-08-09',
      ),
      to: moment.describe(
        'Last day, which belongs to the outage, or day and clock time of its end. Example: 2027-08-20',
      ),
      note: z
        .string({ error: 'a text' })
        .optional()
        .describe('What it is, shown on the report. Example: new paint line'),
    },
    'an outage: a map with the keys stations (or site, or lanes), from and to',
  )
    .superRefine((o, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      if (o.stations !== undefined && o.site !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['site'],
          message: 'either stations or a site',
          params: { seen: 'both' },
        });
      if (o.stations === undefined && o.site === undefined && o.lanes === undefined)
        context.addIssue({
          code: 'custom',
          path: [],
          message: 'what is down: stations, a site or lanes',
          params: { seen: 'none of them' },
        });
    })
    .transform(
      (o): Outage => ({
        stations: o.stations ?? [],
        site: o.site,
        lanes: o.lanes ?? [],
        from: o.from,
        to: o.to,
        note: o.note,
      }),
    ),
  { error: 'a list of outages, such as [{ stations: [colour booth], from: 2027-08-09, to: 2027-08-20 }]' },
);

/** Calendars of repairs. One failure may stand without its list. */
export function failureNames(
  path: Path,
  failures: unknown,
  calendar: (path: Path, name: unknown) => void,
): void {
  listOf(failures).forEach((failure, i) => {
    calendar([...path, ...(Array.isArray(failures) ? [i] : []), 'hours'], mapOf(failure)['hours']);
  });
}

/** Stations, sites and lanes of outages. */
export function outageNames(raw: RawMap, outline: Outline, look: Look): void {
  listOf(raw['outages']).forEach((value, i) => {
    const outage = mapOf(value),
      path = ['outages', i];
    const each = (key: string, known: Parameters<Look>[2], what: string): void => {
      listOf(outage[key]).forEach((name, n) => {
        look([...path, key, ...(Array.isArray(outage[key]) ? [n] : [])], name, known, what);
      });
    };
    each('stations', outline.stations, 'station of this name');
    each('site', outline.sites, 'site of this name');
    each('lanes', outline.lanes, 'lane of this name');
  });
}

/** Equipment that fails without end. */
export function failureFindings(scenario: Scenario): Finding[] {
  return Object.entries(scenario.sites).flatMap(([site, { stations }]) =>
    Object.entries(stations).flatMap(([name, { failures }]) =>
      failures.flatMap((failure, i): Finding[] => {
        const path = ['sites', site, 'stations', name, 'failures', i, 'every'];
        return meanOf(failure.every) > 0
          ? []
          : [{ path, wanted: 'a time greater than 0 between failures', seen: '0' }];
      }),
    ),
  );
}

/**
 * Outages that end before they begin, or before the programme does; over several sites, so that their dates
 * have no zone; named twice.
 */
export function outageFindings(scenario: Scenario): Finding[] {
  const siteOf = siteOfStation(scenario),
    { start } = scenario.programme;
  return scenario.outages.flatMap((outage, i): Finding[] => {
    const path = ['outages', i],
      found: Finding[] = [];
    if (!comesAfter(outage))
      found.push({
        path: [...path, 'to'],
        wanted: `an end after the beginning, ${sayMoment(outage.from)}`,
        seen: `"${sayMoment(outage.to)}"`,
      });
    else if (outage.to.day < start)
      found.push({
        path: [...path, 'to'],
        wanted: `an end not before the start of the programme, ${start}`,
        seen: `"${sayMoment(outage.to)}"`,
      });
    for (const key of ['stations', 'lanes'] as const) {
      const twice = outage[key].findIndex((name, n) => outage[key].indexOf(name) < n);
      if (twice >= 0)
        found.push({
          path: [...path, key, twice],
          wanted: `each of the ${key} once`,
          seen: `"${outage[key][twice]!}" again`,
        });
    }
    const sites = new Set(outage.stations.flatMap((name) => siteOf.get(name) ?? []));
    if (sites.size > 1)
      found.push({
        path: [...path, 'stations'],
        wanted: 'stations of one site, whose zone the dates are in; write an outage for each site',
        seen: [...sites].join(' and '),
      });
    return found;
  });
}

/** A last day belongs to the outage. Days and clock times of the same form compare as texts. */
function comesAfter({ from, to }: Outage): boolean {
  if (from.day !== to.day) return from.day < to.day;
  return to.minute === undefined || (from.minute ?? 0) < to.minute;
}

function sayMoment({ day, minute }: Moment): string {
  if (minute === undefined) return day;
  return `${day} ${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** Ways to fail, by station. All places of a station draw from the same streams, in turn. */
export function compileFailures(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
  draws: Draws,
): Model['failures'] {
  const rows = Object.values(scenario.sites).flatMap(({ stations, zone }) =>
    Object.entries(stations).flatMap(([name, { failures }]) =>
      failures.map((failure) => ({
        station: found(names.station, name, 'station'),
        byClock: failure.by === 'calendar time',
        every: draws.add(`${name}/failure`, failure.every),
        repair: draws.add(`${name}/repair`, failure.repair),
        repairCalendar: book.id(failure.hours, zone),
      })),
    ),
  );
  return {
    count: rows.length,
    station: column(rows, (row) => row.station),
    byClock: Uint8Array.from(rows, (row) => Number(row.byClock)),
    everyDraw: column(rows, (row) => row.every),
    repairDraw: column(rows, (row) => row.repair),
    repairCalendar: column(rows, (row) => row.repairCalendar),
  };
}

/** Days looked at before the watched outage and, at most, after it. */
const DAYS_BEFORE = 14,
  DAYS_AFTER = 26 * 7;

/**
 * Outages by their instants; the longest one that begins in the run is watched, in days of the programme's
 * zone.
 */
export function compileOutages(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
  span: RunSpan,
): Model['outages'] {
  const runEnd = Math.min(span.end, span.horizon);
  const rows = scenario.outages.map((outage) => {
    const clock = book.clock(zoneOf(scenario, names, outage));
    const instant = ({ day, minute }: Moment, otherwise: number): number =>
      clock.instant(dayNumber(day) * MINUTES_PER_DAY + (minute ?? otherwise)) - span.origin;
    const stations =
      outage.site === undefined ? outage.stations : Object.keys(siteOf(scenario, outage.site).stations);
    return {
      name:
        outage.note ??
        [...(outage.site === undefined ? outage.stations : [outage.site]), ...outage.lanes].join(', '),
      stations: stations.map((name) => found(names.station, name, 'station')),
      lanes: outage.lanes.map((name) => found(names.lane, name, 'lane')),
      from: Math.max(0, instant(outage.from, 0)),
      to: Math.max(0, instant(outage.to, MINUTES_PER_DAY)),
    };
  });
  const longest = Math.max(0, ...rows.filter(({ from }) => from < runEnd).map(({ from, to }) => to - from));
  const watched = rows.findIndex(({ from, to }) => from < runEnd && to - from === longest);
  const firstDay =
    watched < 0
      ? span.startDay
      : Math.max(
          span.startDay,
          Math.floor(span.clock.local(span.origin + rows[watched].from) / MINUTES_PER_DAY) - DAYS_BEFORE,
        );
  const watchFrom = span.clock.instant(firstDay * MINUTES_PER_DAY) - span.origin;
  const watchTo = watched < 0 ? watchFrom : Math.min(runEnd, rows[watched].to + DAYS_AFTER * MINUTES_PER_DAY);
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    from: Float64Array.from(rows, ({ from }) => from),
    to: Float64Array.from(rows, ({ to }) => to),
    stationStart: starts(rows, ({ stations }) => stations),
    station: entriesOf(
      rows,
      ({ stations }) => stations,
      (station) => station,
    ),
    laneStart: starts(rows, ({ lanes }) => lanes),
    lane: entriesOf(
      rows,
      ({ lanes }) => lanes,
      (lane) => lane,
    ),
    watched,
    watchFrom,
    watchDays: watched < 0 ? 0 : Math.floor((watchTo - watchFrom) / MINUTES_PER_DAY) + 1,
  };
}

function zoneOf(scenario: Scenario, names: Names, { stations, site, lanes }: Outage): string {
  const named =
    site ??
    (stations.length > 0
      ? found(names.siteOfStation, stations[0], 'station')
      : scenario.lanes[lanes[0]].from);
  return siteOf(scenario, named).zone;
}

import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { dayNumber } from '../calendar/date.js';
import { float64, ragged } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { foundIn, type Ids, siteOf } from '../lookup/ids.js';
import { stationsOf } from '../lookup/placed.js';
import type { Moment, Outage } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, oneOrMore, together } from '../values/keys.js';
import { sayClock } from '../values/quantity.js';
import { moment, spell, text, whole } from '../values/scalars.js';

/** More would be a calendar. */
const MOST_TIMES = 1000;

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
          'Lanes on which no truck departs during this time; trucks under way continue. Example: ' +
            '[coachworks to final plant]',
        ),
      from: moment.describe(
        'First day, or day and clock time, in the zone of the site (of lanes alone: of the site that ' +
          'the first one leaves). Example: 2027-08-09',
      ),
      to: moment.describe(
        'Last day, which belongs to the outage, or day and clock time of its end. Example: 2027-08-20',
      ),
      every: spell
        .refine((minutes) => minutes % MINUTES_PER_DAY === 0, { error: 'whole days, such as "14 days"' })
        .optional()
        .describe(
          'From one beginning to the next, in whole days, for an outage that comes again. Default: it ' +
            'comes once. Example: 14 days',
        ),
      times: whole(2, MOST_TIMES)
        .optional()
        .describe('How often it comes in all, with `every`. Default: up to the end of the run. Example: 33'),
      note: text.optional().describe('What it is, shown on the report. Example: new paint line'),
    },
    'an outage: a map with the keys stations (or site, or lanes), from and to',
  )
    .superRefine(
      together(({ stations, site, lanes, every, times }, wrong) => {
        if (times !== undefined && every === undefined)
          wrong(['times'], 'every beside it, such as every: 14 days', 'none');
        if (stations !== undefined && site !== undefined)
          wrong(['site'], 'either stations or a site', 'both');
        if (stations === undefined && site === undefined && lanes === undefined)
          wrong([], 'what is down: stations, a site or lanes', 'none of them');
      }),
    )
    .transform(
      ({ stations = [], site, lanes = [], every, ...rest }): Outage => ({
        ...{ stations, site, lanes },
        ...rest,
        everyDays: every === undefined ? undefined : every / MINUTES_PER_DAY,
      }),
    ),
  { error: 'a list of outages, such as [{ stations: [colour booth], from: 2027-08-09, to: 2027-08-20 }]' },
);

/**
 * Outages that end before they begin, or before the programme does; over several sites, so that their dates
 * have no zone; named twice.
 */
export function* outageFindings(scenario: Scenario): Iterable<Finding> {
  const stations = stationsOf(scenario),
    { start } = scenario.programme;
  for (const [i, outage] of scenario.outages.entries()) {
    const path = ['outages', i];
    if (!comesAfter(outage))
      yield {
        path: [...path, 'to'],
        wanted: `an end after the beginning, ${sayMoment(outage.from)}`,
        seen: `"${sayMoment(outage.to)}"`,
      };
    else if (outage.to.day < start)
      yield {
        path: [...path, 'to'],
        wanted: `an end not before the start of the programme, ${start}`,
        seen: `"${sayMoment(outage.to)}"`,
      };
    else if (outage.everyDays !== undefined && daysOf(outage) > outage.everyDays)
      yield {
        path: [...path, 'every'],
        wanted: `at least the ${daysOf(outage)} days that it lasts`,
        seen: `${outage.everyDays} days`,
      };
    for (const key of ['stations', 'lanes'] as const) {
      const names = outage[key],
        twice = names.find((name, n) => names.indexOf(name) < n);
      if (twice !== undefined)
        yield {
          path: [...path, key, names.indexOf(twice, names.indexOf(twice) + 1)],
          wanted: `each of the ${key} once`,
          seen: `"${twice}" again`,
        };
    }
    const sites = new Set(outage.stations.flatMap((name) => stations.get(name)?.siteName ?? []));
    if (sites.size > 1)
      yield {
        path: [...path, 'stations'],
        wanted: 'stations of one site, whose zone the dates are in; write an outage for each site',
        seen: [...sites].join(' and '),
      };
  }
}

/** A last day belongs to the outage. Days and clock times of the same form compare as texts. */
function comesAfter({ from, to }: Outage): boolean {
  if (from.day !== to.day) return from.day < to.day;
  return to.minute === undefined || (from.minute ?? 0) < to.minute;
}

/** Days that it touches. */
const daysOf = ({ from, to }: Outage): number => dayNumber(to.day) - dayNumber(from.day) + 1;

/** Each time that it comes before a day, as days after the first. */
function shiftsOf({ from, everyDays, times = MOST_TIMES }: Outage, endDay: number): number[] {
  if (everyDays === undefined) return [0];
  const first = dayNumber(from.day),
    most = Math.max(1, Math.min(times, Math.ceil((endDay - first) / everyDays)));
  return Array.from({ length: most }, (_, i) => i * everyDays);
}

const sayMoment = ({ day, minute }: Moment): string =>
  minute === undefined ? day : `${day} ${sayClock(minute)}`;

/** Outages by their instants. */
export function compileOutages({ scenario, ids, book, span }: Compilation): Model['outages'] {
  const endDay = dayNumber(scenario.programme.start) + Math.ceil(span.horizon / MINUTES_PER_DAY);
  const rows = scenario.outages.flatMap((outage) => {
    const clock = book.clock(zoneOf(outage, scenario, ids));
    const instant = ({ day, minute }: Moment, later: number, otherwise: number): number =>
      clock.instant((dayNumber(day) + later) * MINUTES_PER_DAY + (minute ?? otherwise)) - span.origin;
    const stations =
      outage.site === undefined ? outage.stations : Object.keys(siteOf(scenario, outage.site).stations);
    return shiftsOf(outage, endDay).map((later) => ({
      name:
        outage.note ??
        [...(outage.site === undefined ? outage.stations : [outage.site]), ...outage.lanes].join(', '),
      stations: stations.map((name) => ids.station(name)),
      lanes: outage.lanes.map((name) => ids.lane(name)),
      from: Math.max(0, instant(outage.from, later, 0)),
      to: Math.max(0, instant(outage.to, later, MINUTES_PER_DAY)),
    }));
  });
  const stations = ragged(rows, (row) => row.stations),
    lanes = ragged(rows, (row) => row.lanes);
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    ...float64(rows, 'from', 'to'),
    stationStart: stations.start,
    station: stations.column(Number),
    laneStart: lanes.start,
    lane: lanes.column(Number),
  };
}

/** That of its site, else of the site of its first station, else of the one that its first lane leaves. */
function zoneOf(
  { stations: [station], site, lanes: [lane = ''] }: Outage,
  scenario: Scenario,
  ids: Ids,
): string {
  const named =
    site ?? (station === undefined ? foundIn(scenario.lanes, lane, 'lane').from : ids.siteOfStation(station));
  return siteOf(scenario, named).zone;
}

import type { Model } from '../flow/model.js';
import type { CalendarBook } from './calendar-book.js';
import { dayNumber, MINUTES_PER_DAY } from './calendar-date.js';
import { column, entriesOf, starts } from './compile-columns.js';
import type { Draws } from './compile-draws.js';
import { found, siteOf, type Names } from './compile-names.js';
import type { RunSpan } from './compile-span.js';
import type { Scenario } from './scenario.js';
import type { Moment, Outage } from './scenario-failures.js';

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

/** Outages by their instants; the longest one that begins in the run is watched, in days of the programme's zone. */
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

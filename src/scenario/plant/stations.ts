import type { Station } from '../types/plant.js';
import { UNLIMITED, type Model } from '../../flow/model/model.js';
import { ALWAYS, type CalendarBook } from '../calendar/book.js';
import { column, entriesOf, starts } from '../whole/columns.js';
import { compileChangeover, type ChangeoverRow } from './changeovers.js';
import type { Draws } from '../whole/draws.js';
import { bankName, found, siteOf, type Names } from '../whole/ids.js';
import type { Scenario } from '../types/scenario.js';

/** A capacity as the model has it. */
export const capacity = (limit: number | undefined): number => limit ?? UNLIMITED;

interface StationRow {
  readonly name: string;
  readonly site: number;
  readonly calendar: number;
  readonly isBank: boolean;
  readonly station: Pick<Station, 'places' | 'buffer' | 'reworkBuffer' | 'lot'>;
  readonly changeover: ChangeoverRow | undefined;
}

/** Stations site by site, then the arrival banks of lanes. */
export function compileStations(
  scenario: Scenario,
  names: Names,
  book: CalendarBook,
  draws: Draws,
): Model['stations'] {
  const rows: StationRow[] = [];
  for (const [siteName, site] of Object.entries(scenario.sites)) {
    for (const [name, station] of Object.entries(site.stations)) {
      rows.push({
        name,
        station,
        changeover: compileChangeover(scenario, name, station.changeover, names, draws),
        isBank: false,
        site: found(names.site, siteName, 'site'),
        calendar: station.unattended ? ALWAYS : book.id(station.calendar ?? site.calendar, site.zone),
      });
    }
  }
  for (const [lane, { to, arrivalBank }] of Object.entries(scenario.lanes)) {
    if (arrivalBank === undefined) continue;
    const station = { places: arrivalBank, buffer: 0, reworkBuffer: undefined, lot: undefined };
    rows.push({
      name: bankName(lane),
      station,
      site: found(names.site, to, 'site'),
      calendar: ALWAYS,
      isBank: true,
      changeover: undefined,
    });
  }
  const drawsOf = ({ changeover }: StationRow): readonly number[] => changeover?.draws ?? [];
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    site: column(rows, (row) => row.site),
    places: column(rows, (row) => row.station.places),
    buffer: column(rows, (row) => capacity(row.station.buffer)),
    reworkBuffer: column(rows, ({ station: { reworkBuffer } }) =>
      reworkBuffer === 'unlimited' ? UNLIMITED : (reworkBuffer ?? -1),
    ),
    calendar: column(rows, (row) => row.calendar),
    isBank: Uint8Array.from(rows, (row) => Number(row.isBank)),
    changeoverOption: column(rows, (row) => row.changeover?.option ?? -1),
    changeoverStart: starts(rows, drawsOf),
    changeoverDraw: entriesOf(rows, drawsOf, (draw) => draw),
    batchMost: column(rows, (row) => row.changeover?.batch?.most ?? 0),
    batchWait: Float64Array.from(rows, (row) => row.changeover?.batch?.longestWaitMin ?? Infinity),
    lotLeast: column(rows, (row) => row.station.lot?.least ?? 0),
    lotMost: column(rows, (row) => row.station.lot?.most ?? 0),
    lotWait: Float64Array.from(rows, (row) => row.station.lot?.longestWaitMin ?? 0),
  };
}

/**
 * Calendars in which work at a station goes on whoever does it: the station's; for an unattended one only
 * that of its people.
 */
export function workCalendar(
  scenario: Scenario,
  siteName: string,
  stationName: string,
  crewCalendars: readonly number[],
  book: CalendarBook,
): number {
  const site = siteOf(scenario, siteName);
  const station = found(new Map(Object.entries(site.stations)), stationName, 'station');
  if (!station.unattended)
    return book.common([book.id(station.calendar ?? site.calendar, site.zone), ...crewCalendars]);
  if (crewCalendars.length > 0) return book.common(crewCalendars);
  return book.id(site.calendar, site.zone);
}

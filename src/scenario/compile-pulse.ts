import type { Model } from '../flow/model.js';
import { entriesOf, starts } from './compile-columns.js';
import { found, type Names } from './compile-names.js';
import type { Scenario } from './scenario.js';

/** Pulse lines in the order of the scenario; the takt counts in the calendar of their stations. */
export function compilePulseLines(
  scenario: Scenario,
  names: Names,
  stations: Model['stations'],
): Model['pulseLines'] {
  const rows = Object.entries(scenario.pulseLines).map(([name, line]) => ({
    name,
    takt: line.taktMin,
    stations: line.stations.map((station) => found(names.station, station, 'station')),
  }));
  return {
    count: rows.length,
    names: rows.map(({ name }) => name),
    stationStart: starts(rows, (row) => row.stations),
    station: entriesOf(
      rows,
      (row) => row.stations,
      (station) => station,
    ),
    takt: Float64Array.from(rows, ({ takt }) => takt),
    calendar: Int32Array.from(rows, (row) => stations.calendar[row.stations[0]]),
  };
}

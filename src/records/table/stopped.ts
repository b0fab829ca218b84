import { type Mapping, Names } from '../names.js';
import { Oddities, type OddityKind } from '../oddity.js';
import { Unreadable } from '../unreadable.js';
import { markOf } from './clocked.js';
import { minutesIn } from './minutes.js';
import { columnFinder } from './named-columns.js';
import { dateReader, headAndRows, type LeftOut, type TableLine, type TableRead } from './table.js';
import type { WallClock } from './wall-clock.js';

/** What the planner calls the columns of a stop log. */
export interface StopColumns {
  readonly station?: string | undefined;
  readonly began?: string | undefined;
  readonly ended?: string | undefined;
  readonly up?: string | undefined;
  readonly down?: string | undefined;
}

/** The stops of one station or piece of equipment. */
export interface StationStops {
  readonly station: string;
  /** Minutes since 1970-01-01T00:00Z; `to`: Infinity where it was still down. None of the form of minutes. */
  readonly stops: readonly { readonly from: number; readonly to: number }[];
  /** Minutes up ahead of each stop, and down; undefined where a row does not tell them. */
  readonly minutes: readonly { readonly up: number | undefined; readonly down: number | undefined }[];
}

export interface StopsRead extends TableRead {
  /** A row has when a stop began and ended, or minutes up and down. */
  readonly form: 'times' | 'minutes';
  readonly stations: readonly StationStops[];
}

interface Stop {
  readonly from: number;
  readonly to: number;
  readonly row: TableLine;
}

/** What a scenario knows of stations and equipment. */
export interface KnownStations {
  readonly names: Iterable<string>;
  /** By which clock times without an offset are read. */
  readonly clockOf: (station: string) => WallClock | undefined;
}

/**
 * Stops from the rows of a table, the head first: `station,from,to`, of which `to` is empty while it is down,
 * or `station,up,down` in minutes, of which `down` is empty where it had not failed when the log ends.
 * Without a scenario times are taken as they are written.
 * @throws Unreadable where nothing can be read: no rows, no such column
 */
export function readStops(
  table: readonly TableLine[],
  columns: StopColumns = {},
  known?: KnownStations,
  mapping: Mapping = {},
): StopsRead {
  const { head, rows } = headAndRows(table, 'station,from,to'),
    { find, perhaps } = columnFinder(head),
    at = {
      station: find(columns.station ?? 'station', '--station'),
      from: perhaps(columns.began, 'from', '--began'),
      to: perhaps(columns.ended, 'to', '--ended'),
      up: perhaps(columns.up, 'up', '--up'),
      down: perhaps(columns.down, 'down', '--down'),
    },
    isTimes = at.from >= 0 && at.to >= 0;
  if (!isTimes && (at.up < 0 || at.down < 0))
    throw new Unreadable(
      `line 1: expected the columns from and to, or up and down, got ${head.join(', ')}`,
      'a stop log has when each stop began and ended, or minutes up and down: name the columns, for ' +
        'example --began "down at" --ended "up at"',
    );
  const cellOf = (row: TableLine, column: number): string => row.cells[column] ?? '',
    dates = dateReader(rows.flatMap((row) => [cellOf(row, at.from), cellOf(row, at.to)])),
    mark = isTimes ? '.' : markOf(rows.flatMap((row) => [cellOf(row, at.up), cellOf(row, at.down)])),
    names = new Names(known?.names, mapping.stations),
    oddities = new Oddities(),
    leftOut: LeftOut[] = [],
    seen = new Set<string>(),
    stations = new Map<string, { stops: Stop[]; minutes: StationStops['minutes'][number][] }>();
  const out = (row: TableLine, kind: OddityKind, example: string, told: string): void => {
    oddities.add(kind, 'left out', row.line, example, `${told} Left out.`);
    leftOut.push({ ...row, kind });
  };
  for (const row of rows) {
    const written = cellOf(row, at.station),
      station = written === '' ? undefined : names.of(written);
    if (station === undefined) {
      if (written === '') out(row, 'no station', row.cells.join(' '), 'The row names no station.');
      else
        out(
          row,
          'unknown station',
          written,
          `The scenario has no station or equipment ${JSON.stringify(written)}${names.hint(written)}`,
        );
      continue;
    }
    const all = stations.get(station) ?? { stops: [], minutes: [] },
      keep = (): void => void stations.set(station, all);
    if (!isTimes) {
      const [up, down] = [at.up, at.down].map((column) => {
        const text = cellOf(row, column);
        return text === '' ? undefined : minutesIn(text, mark);
      });
      if (Number.isNaN(up) || Number.isNaN(down) || (up === undefined && down === undefined))
        out(
          row,
          'unreadable number',
          row.cells.join(' '),
          'Expected minutes up and down, such as 42.5 or "1.5 h".',
        );
      else if ((up ?? 0) < 0 || (down ?? 0) < 0)
        out(row, 'negative time', row.cells.join(' '), 'A time below 0.');
      else {
        all.minutes.push({ up, down });
        keep();
      }
      continue;
    }
    const clock = known?.clockOf(station);
    const read = (text: string): number => {
      const time = dates(text);
      if (time === undefined) return NaN;
      return time.isLocal && clock !== undefined ? clock.instant(time.minutes) : time.minutes;
    };
    const [began, ended] = [cellOf(row, at.from), cellOf(row, at.to)],
      from = read(began),
      to = ended === '' ? Infinity : read(ended),
      key = JSON.stringify([station, from, to]);
    if (Number.isNaN(from) || Number.isNaN(to))
      out(
        row,
        began === '' ? 'no time' : 'unreadable time',
        Number.isNaN(from) ? began : ended,
        'Expected a time such as 2027-08-16 06:00 or 16.08.2027 06:00.',
      );
    else if (to < from)
      out(row, 'ends before it begins', row.cells.join(' '), 'The stop ends before it begins.');
    else if (seen.has(key))
      out(row, 'duplicate', row.cells.join(' '), 'The same stop stands on a row above.');
    else {
      seen.add(key);
      all.stops.push({ from, to, row });
      keep();
    }
  }
  // One that has stopped again since was up in between.
  for (const all of stations.values()) {
    const lastFrom = all.stops.reduce((last, { from }) => Math.max(last, from), -Infinity);
    for (const { row } of all.stops.filter(({ from, to }) => to === Infinity && from < lastFrom))
      out(
        row,
        'missing end',
        row.cells.join(' '),
        'A stop without an end, though the station stopped again later.',
      );
    all.stops = all.stops.filter(({ from, to }) => to < Infinity || from >= lastFrom);
  }
  return {
    head,
    rows: rows.length,
    leftOut: leftOut.sort((a, b) => a.line - b.line),
    oddities: oddities.list(),
    form: isTimes ? 'times' : 'minutes',
    stations: [...stations].map(([station, { stops, minutes }]) => ({
      station,
      stops: stops.map(({ from, to }) => ({ from, to })),
      minutes,
    })),
  };
}

import type { Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/distribution.js';
import { calendarName } from '../calendar/calendars.js';
import { column } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { found } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, oneOrMore } from '../values/keys.js';
import { listOf, mapOf } from '../values/raw.js';
import { word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';

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
      hours: calendarName
        .optional()
        .describe(
          'When repairs are worked on: a calendar; they stop outside it and resume. Default: day and ' +
            'night. Example: days',
        ),
    },
    'a failure: a map with the keys every and repair',
  );
  return oneOrMore(failure, 'a failure { every: ..., repair: ... }, or a list of them').describe(
    'How the equipment fails: each place has its own; that of a station with lots fails as a whole. ' +
      'Work in progress is interrupted and resumes after the repair; its crew stays with it. Several ' +
      'ways to fail are a list; a place is down while any of them is under repair. Default: never. ' +
      'Example: { every: { exponential: { mean: 60 h } }, repair: { mean: 4 h, cv: 0.8 } }',
  );
}

/** Calendars of repairs. One failure may stand without its list. */
export function failureNames(path: Path, failures: unknown, { calendar }: Lookup): void {
  listOf(failures).forEach((failure, i) => {
    calendar([...path, ...(Array.isArray(failures) ? [i] : []), 'hours'], mapOf(failure)['hours']);
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

/** Ways to fail, by station. All places of a station draw from the same streams, in turn. */
export function compileFailures({ scenario, ids, book, draws }: Compilation): Model['failures'] {
  const rows = Object.values(scenario.sites).flatMap(({ stations, zone }) =>
    Object.entries(stations).flatMap(([name, { failures }]) =>
      failures.map((failure) => ({
        station: found(ids.station, name, 'station'),
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

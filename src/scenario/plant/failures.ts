import type { Model } from '../../flow/model/model.js';
import { meanOf } from '../../random/distribution.js';
import { calendarName } from '../calendar/calendars.js';
import { int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { allStations } from '../lookup/placed.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, oneOrMore } from '../values/keys.js';
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

/** Whatever may fail: stations, then the equipment that stations share; with its place in the file. */
function failing(scenario: Scenario) {
  const stations = allStations(scenario).map(({ station, ...rest }) => ({
    ...rest,
    ...station,
    isShared: false,
  }));
  const shared = Object.entries(scenario.sites).flatMap(([siteName, site]) =>
    Object.entries(site.equipment ?? {}).map(([name, { failures }]) => ({
      name,
      path: ['sites', siteName, 'equipment', name],
      siteName,
      site,
      failures,
      isShared: true,
    })),
  );
  return [...stations, ...shared];
}

/** Equipment that fails without end. */
export function* failureFindings(scenario: Scenario): Iterable<Finding> {
  for (const { path, failures } of failing(scenario))
    for (const [i, { every }] of failures.entries())
      if (meanOf(every) <= 0)
        yield {
          path: [...path, 'failures', i, 'every'],
          wanted: 'a time greater than 0 between failures',
          seen: '0',
        };
}

/**
 * Ways to fail, by station, then by shared equipment. All pieces of a kind draw from the same streams, in
 * turn.
 */
export function compileFailures({ scenario, ids, book, draws }: Compilation): Model['failures'] {
  const rows = failing(scenario).flatMap(({ name, siteName, site, failures, isShared }) =>
    failures.map((failure) => ({
      station: isShared ? -1 : ids.station(name),
      resource: isShared ? ids.equipment(siteName, name) : -1,
      byClock: failure.by === 'calendar time',
      everyDraw: draws.add(`${name}/failure`, failure.every),
      repairDraw: draws.add(`${name}/repair`, failure.repair),
      repairCalendar: book.id(failure.hours, site.zone),
    })),
  );
  return {
    count: rows.length,
    ...int32(rows, 'station', 'resource', 'everyDraw', 'repairDraw', 'repairCalendar'),
    ...uint8(rows, 'byClock'),
  };
}

import { z } from 'zod';
import { LEAVE_FULL, LEAVE_FULL_OR_WAIT, LEAVE_TIMETABLE } from '../../flow/model/lanes.js';
import type { Model } from '../../flow/model/model.js';
import { MINUTES_PER_DAY } from '../../flow/model/time.js';
import { calendarName } from '../calendar/calendars.js';
import { float64, int32, uint8 } from '../lookup/columns.js';
import type { Compilation } from '../lookup/compilation.js';
import { siteOf } from '../lookup/ids.js';
import type { Lane } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name } from '../values/keys.js';
import { limitOf, someSpaces, spell, timetable, whole, word } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { capacity } from './stations.js';

const leaves = z.union(
  [
    word('when full').transform((): Lane['leaves'] => ({ kind: 'full' })),
    keys(
      {
        at: timetable.describe(
          'A timetable: clock times in the zone of `from`, on the working days of its calendar. ' +
            'Example: ["08:00", "13:00"]',
        ),
      },
      'a map with the key at',
    ).transform(({ at }): Lane['leaves'] => ({ kind: 'timetable', atMin: at })),
    keys(
      {
        'when full or after': spell.describe(
          'The longest wait of the first unit aboard; then the truck leaves, full or not. Example: 4 h',
        ),
      },
      'a map with the key when full or after',
    ).transform((rule): Lane['leaves'] => ({
      kind: 'full or wait',
      longestWaitMin: rule.whenFullOrAfter,
    })),
  ],
  { error: 'when full, { at: ["08:00"] } or { when full or after: 4 h }' },
);

const docks = keys(
  {
    from: whole(1).optional().describe('Trucks that can be loaded at once. Default: no limit'),
    to: whole(1).optional().describe('Trucks that can be unloaded at once. Default: no limit'),
  },
  'docks: a map with the keys from and to',
);

export function laneSchema(time: TimeSchema) {
  return keys(
    {
      from: name('the name of a site').describe('The site that units leave. Example: coachworks'),
      to: name('the name of a site').describe('The site that they reach. Example: final plant'),
      trucks: whole(1).describe('Trucks (or trains, ships) on this lane. Example: 2'),
      capacity: whole(1).describe('Units that one truck carries. Example: 2'),
      load: time
        .prefault('0 min')
        .describe(
          'Time to load a truck. Loading and securing follow local codes. Default: 0 min. Example: 30 min',
        ),
      drive: time.describe('Driving time of one trip. Example: { low: 3 h, likely: 3.5 h, high: 5 h }'),
      unload: time.prefault('0 min').describe('Time to unload a truck. Default: 0 min. Example: 30 min'),
      return: time
        .prefault('0 min')
        .describe('Time of the empty return trip. Default: 0 min. Example: 3.5 h'),
      leaves: leaves
        .prefault('when full')
        .describe(
          'When a truck leaves: `when full` (default), by a timetable { at: ["08:00", "13:00"] }, or { ' +
            'when full or after: 4 h }',
        ),
      hours: calendarName
        .optional()
        .describe('Driving hours: a calendar; a drive stops outside them and resumes. Default: any time'),
      bank: someSpaces
        .optional()
        .transform(limitOf)
        .describe(
          'Waiting spaces ahead of loading, one at least: a truck loads what waits there. Default: ' +
            'unlimited. Example: 4',
        ),
      'arrival bank': someSpaces
        .optional()
        .describe(
          'Waiting spaces after unloading, or `unlimited`. Default: none, a unit goes straight to its ' +
            'next station. Example: 2',
        ),
      docks: docks
        .optional()
        .transform((each) => each ?? { from: undefined, to: undefined })
        .describe(
          'Trucks that can stand at the docks at once. Default: no limit. Example: { from: 1, to: 1 }',
        ),
    },
    'a lane: a map with the keys from, to, trucks, capacity and drive',
  );
}

/** A truck that leaves only when full, ahead of which so many can never wait; a bank without a space. */
export function* laneFindings({ lanes }: Scenario): Iterable<Finding> {
  for (const [name, { bank, capacity: load, leaves }] of Object.entries(lanes)) {
    const least = leaves.kind === 'full' ? load : 1;
    if (bank === undefined || bank >= least) continue;
    yield {
      path: ['lanes', name, 'bank'],
      wanted:
        least === 1
          ? 'a space at least'
          : `at least the ${load} units that fill a truck, since it leaves only when full; ` +
            'or another rule, such as leaves: { when full or after: 4 h }',
      seen: String(bank),
    };
  }
}

const RULE = { full: LEAVE_FULL, 'full or wait': LEAVE_FULL_OR_WAIT, timetable: LEAVE_TIMETABLE } as const;

/**
 * Lanes: loading keeps the calendar of the site of departure, unloading that of the site of arrival, driving
 * the driving hours.
 */
export function compileLanes(all: Compilation): Model['lanes'] {
  const { scenario, ids, book, draws } = all;
  const rows = Object.entries(scenario.lanes).map(([name, lane]) => {
    const from = siteOf(scenario, lane.from),
      to = siteOf(scenario, lane.to);
    return {
      name,
      timetable: departures(lane, all),
      from: ids.site(lane.from),
      to: ids.site(lane.to),
      trucks: lane.trucks,
      capacity: lane.capacity,
      loadDraw: draws.add(`${name}/load`, lane.load),
      driveDraw: draws.add(`${name}/drive`, lane.drive),
      unloadDraw: draws.add(`${name}/unload`, lane.unload),
      returnDraw: draws.add(`${name}/return`, lane.return),
      loadCalendar: book.id(from.calendar, from.zone),
      driveCalendar: book.id(lane.hours, from.zone),
      unloadCalendar: book.id(to.calendar, to.zone),
      rule: RULE[lane.leaves.kind],
      wait: lane.leaves.kind === 'full or wait' ? lane.leaves.longestWaitMin : Infinity,
      bank: capacity(lane.bank),
      endless: Number(lane.arrivalBank === 'unlimited'),
      docksFrom: capacity(lane.docks.from),
      docksTo: capacity(lane.docks.to),
    };
  });
  return {
    count: rows.length,
    names: rows.map((row) => row.name),
    ...int32(rows, 'from', 'to', 'trucks', 'capacity', 'loadDraw', 'driveDraw', 'unloadDraw', 'returnDraw'),
    ...int32(rows, 'loadCalendar', 'driveCalendar', 'unloadCalendar', 'rule', 'bank'),
    ...int32(rows, 'docksFrom', 'docksTo'),
    ...uint8(rows, 'endless'),
    ...float64(rows, 'wait'),
    timetable: rows.map((row) => row.timetable),
  };
}

/** Times of departure in the span, sorted: the clock times on each working day of the site of departure. */
function departures({ from, leaves }: Lane, { scenario, book, span }: Compilation): Float64Array {
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

import { z } from 'zod';
import { clockOf, CLOCK } from './quantity.js';
import type { Lane } from './scenario.js';
import { keys, name, spaces, spell, whole, word } from './schema-quantity.js';
import { calendarName } from './schema-crew.js';
import type { TimeSchema } from './schema-time.js';

const CLOCK_WANTED = 'a clock time, such as "08:00"';
const clock = z
  .string({ error: CLOCK_WANTED })
  .regex(CLOCK, { error: CLOCK_WANTED, abort: true })
  .refine((text) => (clockOf(text) ?? 1440) < 1440, { error: `${CLOCK_WANTED}, before 24:00`, abort: true })
  .transform((text) => clockOf(text)!);

const leaves = z.union(
  [
    word('when full').transform((): Lane['leaves'] => ({ kind: 'full' })),
    keys(
      {
        at: z
          .array(clock, { error: 'a list of clock times, such as ["08:00", "13:00"]' })
          .min(1, { error: 'at least one clock time' })
          .refine((times) => new Set(times).size === times.length, { error: 'each clock time once' })
          .describe(
            'A timetable: clock times in the zone of `from`, on the working days of its calendar. Example: ["08:00", "13:00"]',
          ),
      },
      'a map with the key at',
    ).transform(({ at }): Lane['leaves'] => ({ kind: 'timetable', atMin: [...at].sort((a, b) => a - b) })),
    keys(
      {
        'when full or after': spell.describe(
          'The longest wait of the first unit aboard; then the truck leaves as it is. Example: 4 h',
        ),
      },
      'a map with the key when full or after',
    ).transform((rule): Lane['leaves'] => ({
      kind: 'full or wait',
      longestWaitMin: rule['when full or after'],
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
      return: time.prefault('0 min').describe('Time of the way back, empty. Default: 0 min. Example: 3.5 h'),
      leaves: leaves
        .prefault('when full')
        .describe(
          'When a truck leaves: `when full` (default), by a timetable { at: ["08:00", "13:00"] }, or { when full or after: 4 h }',
        ),
      hours: calendarName
        .optional()
        .describe('Driving hours: a calendar; a drive stops outside them and goes on. Default: any time'),
      bank: spaces.optional().describe('Waiting spaces ahead of loading. Default: unlimited. Example: 4'),
      'arrival bank': whole(1)
        .optional()
        .describe(
          'Waiting spaces after unloading. Default: none, a unit goes straight to its next station. Example: 2',
        ),
      docks: docks
        .optional()
        .describe(
          'Trucks that can stand at the docks at once. Default: no limit. Example: { from: 1, to: 1 }',
        ),
    },
    'a lane: a map with the keys from, to, trucks, capacity and drive',
  ).transform(
    (l): Lane => ({
      from: l.from,
      to: l.to,
      trucks: l.trucks,
      capacity: l.capacity,
      load: l.load,
      drive: l.drive,
      unload: l.unload,
      return: l.return,
      leaves: l.leaves,
      hours: l.hours,
      bank: l.bank === 'unlimited' ? undefined : l.bank,
      arrivalBank: l['arrival bank'],
      docks: { from: l.docks?.from, to: l.docks?.to },
    }),
  );
}

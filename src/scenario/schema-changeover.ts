import type { Changeover } from './scenario.js';
import { keys, name, named, spell, whole } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';

const batch = keys(
  {
    most: whole(1).describe(
      'Most units of one value that a place takes in a row while a unit of another value waits. Example: 5',
    ),
    'longest wait': spell
      .optional()
      .describe(
        'A unit that is first in order and has waited so long in the buffer, by the clock, goes next whatever its value. Default: no limit. Example: 16 h',
      ),
  },
  'a batch: a map with the key most, such as { most: 5, longest wait: 16 h }',
);

/** Work between units that differ in an option, and the order in which units of one value are taken. */
export function changeoverSchema(time: TimeSchema) {
  const fromTo = named(
    named(time, 'times by the value that comes next, such as { white: 45 min }'),
    'times by the value before and the value after, such as { red: { white: 45 min } }',
  );
  return keys(
    {
      on: name('the name of an option').describe(
        'The option whose change from one unit to the next on a place costs work. Example: colour',
      ),
      work: time.describe('The time of one changeover. Example: 15 min'),
      'from to': fromTo
        .default({})
        .describe(
          'Times that depend on the value before and the value after; other pairs take `work`. 0 min: no changeover. Default: `work` for every pair. Example: { red: { white: 45 min }, white: { red: 15 min, yellow: 0 min } }',
        ),
      batch: batch
        .optional()
        .describe(
          'Units of one value are taken from the buffer in a row, to save changeovers. Default: in order of arrival. Example: { most: 5, longest wait: 16 h }',
        ),
    },
    'a changeover: a map with the keys on and work',
  ).transform(
    (c): Changeover => ({
      option: c.on,
      work: c.work,
      fromTo: c['from to'],
      batch: c.batch && { most: c.batch.most, longestWaitMin: c.batch['longest wait'] },
    }),
  );
}

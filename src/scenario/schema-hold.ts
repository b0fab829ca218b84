import { z } from 'zod';
import type { StationStep } from './scenario.js';
import { keys, name } from './schema-quantity.js';
import type { TimeSchema } from './schema-time.js';

/** A step that units with noted items may not pass. */
export function holdSchema(time: TimeSchema) {
  return z.union(
    [
      z
        .literal(true, { error: 'true, or leave the key out' })
        .transform((): StationStep['hold'] => ({ mend: undefined })),
      keys(
        {
          mend: time
            .optional()
            .describe(
              'The work on a noted item that has no time of its own, that is one passed on at the limit of a loop. Needed where there can be such an item. Example: 45 min',
            ),
        },
        'a map with the key mend',
      ).transform((hold): StationStep['hold'] => ({ mend: hold.mend })),
    ],
    { error: 'true, or what noted items take, such as { mend: 45 min }' },
  );
}

/** An inspection that measures again what an earlier one has measured. */
export function comparisonSchema(time: TimeSchema) {
  return z.union(
    [
      name('the name of an earlier inspection').transform((step): StationStep['comparesWith'] => ({
        step,
        differs: undefined,
      })),
      keys(
        {
          step: name('the name of an earlier inspection').describe(
            'The earlier inspection or test of the same route. Example: measure wheels',
          ),
          'if it differs': time
            .optional()
            .describe(
              'Extra work of the crew, there and then, where one of the two found something and the other nothing. Default: none. Example: 40 min',
            ),
        },
        'a map with the key step',
      ).transform((c): StationStep['comparesWith'] => ({ step: c.step, differs: c['if it differs'] })),
    ],
    { error: 'the name of an earlier inspection, or { step: ..., if it differs: 40 min }' },
  );
}

import { z } from 'zod';
import type { Distribution } from '../../random/distribution.js';
import { leastOf } from '../../random/distribution.js';
import { namedForms, plainForms } from './forms.js';
import { keys, name } from './keys.js';
import type { ReadObserved } from './observed.js';
import { timeAdvice } from './quantity.js';
import { duration, word } from './scalars.js';

const TIME_WANTED = 'a time, such as "20 min" or { low: 35 min, likely: 42 min, high: 60 min }';

/**
 * The schema of a random time, giving its distribution in minutes; observed times are read by `readObserved`.
 */
export function timeSchema(readObserved: ReadObserved) {
  const observed = keys(
    {
      observed: name('the name of a CSV file').describe(
        'A CSV file with a heading line, path relative to the folder of the scenario file; all ' +
          'observed times are equally likely. Example: times.csv',
      ),
      column: name('the heading of a column').describe(
        'The heading of the column with the times. Example: minutes',
      ),
      unit: word('s', 'min', 'h', 'days').describe('The unit of the numbers in the column.'),
    },
    'a map with the keys observed, column and unit',
  ).transform((map, context): Distribution => {
    const { values, fault } = readObserved(map.observed, map.column, map.unit);
    if (fault !== undefined)
      context.addIssue({
        code: 'custom',
        message: fault.wanted,
        params: fault,
        path: fault.source === undefined ? ['observed'] : [],
      });
    return { kind: 'empirical', values };
  });
  const constant = duration.transform((value): Distribution => ({ kind: 'constant', value }));
  // Exclusive, since a plain union would explain a misspelt key by the one form that lacks nothing else.
  return z
    .xor([constant, ...plainForms, ...namedForms, observed], {
      error: (issue) =>
        typeof issue.input === 'number' || typeof issue.input === 'string'
          ? timeAdvice(issue.input)
          : TIME_WANTED,
    })
    .superRefine((distribution, context) => {
      try {
        leastOf(distribution);
      } catch (error) {
        context.addIssue({ code: 'custom', message: error instanceof Error ? error.message : TIME_WANTED });
      }
    })
    .meta({
      id: 'time',
      description:
        'A time: fixed, or drawn anew each time. Write "20 min", { low, likely, high }, { low, high ' +
        '}, { mean, cv }, { mean, sd }, or a form by name.',
    });
}
export type TimeSchema = ReturnType<typeof timeSchema>;

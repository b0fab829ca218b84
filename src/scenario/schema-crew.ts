import { z } from 'zod';
import type { Crew } from './scenario.js';
import { chance, keys, name, whole, word } from './schema-quantity.js';

export const calendarName = name('the name of a calendar');
const headcount = whole(1);
const byShift = z
  .array(whole(0))
  .min(1)
  .refine((counts) => counts.some((count) => count > 0), { error: 'a headcount above 0 on some shift' });

/** A crew: a headcount, or more about it. */
export const crewSchema = z
  .union(
    [
      headcount.transform((count): Crew => ({ headcount: count, calendar: undefined })),
      keys(
        {
          headcount: z
            .union([headcount, byShift], {
              error: 'a headcount from 1, or a list with one for each shift, such as [6, 3]',
            })
            .describe(
              'People of this skill: one number for every shift, or a list with one for each entry of the `hours` of its calendar, in that order. Example: [6, 3]',
            ),
          calendar: calendarName
            .optional()
            .describe('When the crew is in. Default: the calendar of the site'),
          absence: chance
            .refine((share) => share < 1, { error: 'a chance below 100 %' })
            .default(0)
            .describe(
              'Each person is missing in each shift with this chance, drawn person by person. Default: 0. Example: 6 %',
            ),
          'hand over': word('next shift', 'wait')
            .default('next shift')
            .describe(
              'What happens to work that outlasts its shift: `next shift`, people of the next shift of this crew go on with it, as far as there are enough (default); `wait`, it waits for the next shift of those who began it.',
            ),
        },
        'a map with the key headcount',
      ).transform((c): Crew => {
        const headcounts = typeof c.headcount === 'number' ? undefined : c.headcount;
        const most = typeof c.headcount === 'number' ? c.headcount : Math.max(...c.headcount);
        if (headcounts === undefined && c.absence === 0 && c['hand over'] === 'next shift')
          return { headcount: most, calendar: c.calendar };
        return {
          headcount: most,
          calendar: c.calendar,
          shifts: { headcounts, absence: c.absence, handOver: c['hand over'] },
        };
      }),
    ],
    { error: 'a headcount from 1, such as 6, or { headcount: 6, calendar: days }' },
  )
  .describe('A headcount, or a map with headcount and more. Example: { headcount: [6, 3], absence: 6 % }');

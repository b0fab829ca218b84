import type { Chance, Find } from '../types/steps.js';
import { z } from 'zod';

import { chance, keys, name, named, optionValue, whole, word } from '../values/keys.js';
import type { TimeSchema } from '../values/time.js';

const byValue = named(chance, 'values of the option with their chances, such as { red: 7 % }');

/** One chance, or one that differs by option. */
export const chanceByOption = z
  .union(
    [
      chance.transform((usual): Chance => ({ usual, byOption: [] })),
      z
        .object(
          { usual: chance.describe('The chance where no option says otherwise. Example: 4 %') },
          { error: 'a chance by option, such as { usual: 4 %, colour: { red: 7 % } }' },
        )
        .catchall(byValue)
        .transform(
          ({ usual, ...options }): Chance => ({
            usual,
            byOption: Object.entries(options).flatMap(([option, values]) =>
              Object.entries(values).map(([value, c]) => ({ option, value, chance: c })),
            ),
          }),
        ),
    ],
    { error: 'a chance, such as 6 %, or one by option such as { usual: 4 %, colour: { red: 7 % } }' },
  )
  .meta({
    id: 'chance-by-option',
    description: 'A chance, or one by option: { usual: 4 %, colour: { red: 7 % } }',
  });

const FIND_WANTED =
  'what is found and what then, such as { chance: 85 %, repair: 25 min }, { chance: 90 %, back ' +
  'to: prime }, { chance: 80 %, carry: 30 min } or { chance: 100 %, scrap: true }';

/** What an inspection finds of a defect, or how a test fails, and what follows. */
export function findSchema(time: TimeSchema) {
  return keys(
    {
      chance: chanceByOption.describe(
        'The chance that it is found (of a test: that it fails), also by option: { usual: 4 %, ' +
          'colour: { red: 7 % } }. Example: 85 %',
      ),
      repair: time
        .optional()
        .describe('It is repaired there and then: the time of the repair. Example: 25 min'),
      'back to': name('the name of a step')
        .optional()
        .describe(
          'The unit is sent back to this step, the same or an earlier one of its route, and goes ' +
            'forward again from there. Example: prime',
        ),
      limit: whole(1, 1000).optional().describe('Most times one unit is sent back for this. Default: 5'),
      'at limit': word('pass', 'scrap')
        .optional()
        .describe(
          'At the limit the unit goes on with the item open (`pass`, default) or is scrapped ' +
            '(`scrap`). An item left open is noted, and mended at the next step with `hold`, if there is one.',
        ),
      scrap: z
        .literal(true, { error: 'true, or leave the key out' })
        .optional()
        .describe('True: the unit is scrapped.'),
      carry: time
        .optional()
        .describe(
          'It is noted and the unit goes on with it; it is mended at the next step with `hold`, where ' +
            'it takes this work. Example: 30 min',
        ),
    },
    FIND_WANTED,
  )
    .superRefine((find, context) => {
      if (context.issues.length > 0) return; // misspelt keys first
      const said = (['repair', 'back to', 'scrap', 'carry'] as const).filter(
        (key) => find[key] !== undefined,
      );
      if (said.length !== 1)
        context.addIssue({
          code: 'custom',
          message: 'exactly one of repair, back to, carry and scrap: true',
          params: { seen: said.length === 0 ? 'none of them' : said.join(' and ') },
        });
      for (const key of ['limit', 'at limit'] as const) {
        if (find[key] !== undefined && find['back to'] === undefined)
          context.addIssue({ code: 'custom', path: [key], message: `${key} only together with back to` });
      }
    })
    .transform(
      (find): Find => ({
        chance: find.chance,
        then:
          find.repair !== undefined
            ? { kind: 'repair', work: find.repair }
            : find['back to'] !== undefined
              ? {
                  kind: 'back',
                  to: find['back to'],
                  limit: find.limit ?? 5,
                  atLimit: find['at limit'] ?? 'pass',
                }
              : find.carry !== undefined
                ? { kind: 'carry', work: find.carry }
                : { kind: 'scrap' },
      }),
    );
}

export const defectSchema = keys(
  {
    note: z
      .string({ error: 'a text' })
      .optional()
      .describe('A remark for those who read the file. Example: too thick a coat'),
  },
  'a kind of defect: a map, {} without a note',
).transform((d) => ({ note: d.note }));

/** Option -> values that meet it. A single name means that this option is yes. */
export const conditionSchema = z.union(
  [
    name('the name of an option').transform((option): Record<string, string[]> => ({ [option]: ['yes'] })),
    named(
      z.union(
        [
          optionValue.transform((value) => [value]),
          z.array(optionValue).min(1, { error: 'at least one value' }),
        ],
        { error: 'a value of the option, or a list of them' },
      ),
      'options with the values that meet the condition',
    ),
  ],
  { error: 'a condition, such as stripe or { stripe: yes, colour: [red, lime] }' },
);

/** Whether what is found may be noted and left open: carried on, or passed on at the limit of a loop. */
export const makesNote = ({ then }: Find): boolean =>
  then.kind === 'carry' || (then.kind === 'back' && then.atLimit === 'pass');

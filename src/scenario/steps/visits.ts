import { z } from 'zod';
import { REWORK_BOTH, REWORK_ONLY, REWORK_SKIP } from '../../flow/model/steps.js';
import { saySeen } from '../file/problem.js';
import { int32, ragged, uint8 } from '../lookup/columns.js';
import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import type { Lookup } from '../lookup/outline.js';
import type { Path } from '../types/problem.js';
import type { Condition, StationStep } from '../types/steps.js';
import { keys } from '../values/keys.js';
import { listOf, mapOf } from '../values/raw.js';
import { whole, word } from '../values/scalars.js';
import { conditionSchema, masksOf, optionNames } from './conditions.js';

/** Of a step, and of a lane in a route. */
export const whenKey = conditionSchema
  .optional()
  .transform((when): Condition => when ?? {})
  .describe(
    'Only units that meet this condition visit the step; all options named must match. `when: ' +
      'stripe` means { stripe: yes }. Default: every unit. Example: { stripe: yes, colour: [red, lime] ' +
      '}',
  );

const sample = z.union(
  [
    z
      .string({ error: 'a sample, such as 1 in 5' })
      .regex(/^1 in [1-9]\d{0,5}$/, { error: 'a sample, such as 1 in 5' })
      .transform((text): StationStep['sample'] => ({ oneIn: Number(text.slice(5)), by: 'turn' })),
    keys(
      {
        '1 in': whole(1).describe('One in this many units visits the step. Example: 5'),
        by: word('turn', 'random')
          .default('turn')
          .describe('`turn`: every n-th unit (default); `random`: each unit with chance 1/n.'),
      },
      'a map with the key 1 in',
    ).transform(({ '1In': oneIn, by }): StationStep['sample'] => ({ oneIn, by })),
  ],
  { error: 'a sample, such as 1 in 5 or { 1 in: 5, by: random }' },
);

/** Keys of a step that say which units visit it; `when` besides. */
export const visitKeys = {
  rework: word('both', 'skip', 'only')
    .default('both')
    .describe(
      '`both`: also visited by a unit in rework (default); `skip`: not done again; `only`: visited ' +
        'only after a send-back.',
    ),
  sample: sample
    .optional()
    .describe(
      'Only some units visit the step: `1 in 5` is every fifth; { 1 in: 5, by: random } draws. ' +
        'Default: every unit',
    ),
};

export function whenNames(path: Path, when: unknown, lookup: Lookup): void {
  if (typeof when === 'string') {
    const { options } = lookup.outline;
    lookup.look(path, when, options, 'option of this name');
    if (options?.get(when)?.has('yes') === false)
      lookup.tell({
        path,
        wanted: `the values of option ${when}, such as { ${when}: ... }, since yes is none of them`,
        seen: saySeen(when),
      });
  }
  for (const [option, wanted] of Object.entries(mapOf(when)))
    optionNames(lookup, [...path, option], option, listOf(wanted), false);
}

const REWORK = { both: REWORK_BOTH, skip: REWORK_SKIP, only: REWORK_ONLY } as const;

export interface VisitRow {
  readonly when: readonly { readonly option: number; readonly mask: number }[];
  readonly rework: number;
  readonly sampleN: number;
  readonly sampleDraw: number;
}

/** A visit of every unit that meets the conditions, all of them. */
export const visitOf = (conditions: readonly Condition[], { ids }: Compilation): VisitRow => ({
  when: conditions.flatMap((when) => masksOf(when, ids)),
  rework: REWORK_BOTH,
  sampleN: 0,
  sampleDraw: NO_DRAW,
});

export function visitRow(
  { name, rework, sample }: StationStep,
  conditions: readonly Condition[],
  all: Compilation,
): VisitRow {
  const visit = { ...visitOf(conditions, all), rework: REWORK[rework] };
  if (sample === undefined || sample.oneIn === 1) return visit;
  const sampleDraw = sample.by === 'random' ? all.draws.chance(`${name}/sample`) : NO_DRAW;
  return { ...visit, sampleN: sample.oneIn, sampleDraw };
}

export function visitColumns(rows: readonly VisitRow[]) {
  const when = ragged(rows, (row) => row.when);
  return {
    ...uint8(rows, 'rework'),
    ...int32(rows, 'sampleN', 'sampleDraw'),
    whenStart: when.start,
    whenOption: when.column(({ option }) => option),
    whenMask: when.column(({ mask }) => mask),
  };
}

import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { ragged } from '../lookup/columns.js';
import type { Ids } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import type { Path } from '../types/problem.js';
import type { Chance } from '../types/steps.js';
import { named } from '../values/keys.js';
import { mapOf } from '../values/raw.js';
import { chance } from '../values/scalars.js';
import { optionNames } from './conditions.js';

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

/** Options and values by which a chance differs. */
export function chanceNames(at: Path, value: unknown, lookup: Lookup): void {
  for (const [option, chances] of Object.entries(mapOf(value)))
    if (option !== 'usual') optionNames(lookup, [...at, option], option, Object.keys(mapOf(chances)), true);
}

export const isAlways = (chance: Chance): boolean =>
  chance.usual === 1 && chance.byOption.every((row) => row.chance === 1);

/** 100 % for the units of some option at least. */
export const isAlwaysForSome = (chance: Chance): boolean =>
  chance.usual === 1 || chance.byOption.some((row) => row.chance === 1);

/** Chances by option, numbered as they are added. */
export class Chances {
  private readonly rows: Chance[] = [];
  constructor(private readonly ids: Ids) {}

  add(chance: Chance): number {
    return this.rows.push(chance) - 1;
  }

  columns(): Model['chances'] {
    const { rows, ids } = this,
      chances = ragged(rows, (row) => row.byOption);
    return {
      base: Float64Array.from(rows, (row) => row.usual),
      start: chances.start,
      option: chances.column(({ option }) => ids.option(option)),
      value: chances.column(({ option, value }) => ids.value(option, value)),
      chance: Float64Array.from(chances.entries, (entry) => entry.chance),
    };
  }
}

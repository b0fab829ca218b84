import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import { column, ragged } from '../lookup/columns.js';
import type { Draws } from '../lookup/compilation.js';
import type { Ids } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import type { Path } from '../types/problem.js';
import type { Chance, TimeByOption } from '../types/steps.js';
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

/** Options and values by which a time differs; one for all units has none. */
export function timeNames(at: Path, value: unknown, lookup: Lookup): void {
  if (Object.hasOwn(mapOf(value), 'usual')) chanceNames(at, value, lookup);
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

/** Times by option, numbered as they are added; each has a draw of its own. */
export class Times {
  private readonly rows: { readonly usual: number; readonly others: readonly OptionDraw[] }[] = [];
  constructor(
    private readonly ids: Ids,
    private readonly draws: Draws,
  ) {}

  add(name: string, time: TimeByOption): number {
    const isOne = time.kind !== 'by option';
    return (
      this.rows.push({
        usual: this.draws.add(name, isOne ? time : time.usual),
        others: isOne
          ? []
          : time.rows.map(({ option, value, time: other }) => ({
              option: this.ids.option(option),
              value: this.ids.value(option, value),
              draw: this.draws.add(`${name} where ${option} is ${value}`, other),
            })),
      }) - 1
    );
  }

  columns(): Model['repairTimes'] {
    const others = ragged(this.rows, (row) => row.others);
    return {
      usual: column(this.rows, (row) => row.usual),
      start: others.start,
      option: others.column(({ option }) => option),
      value: others.column(({ value }) => value),
      draw: others.column(({ draw }) => draw),
    };
  }
}

interface OptionDraw {
  readonly option: number;
  readonly value: number;
  readonly draw: number;
}

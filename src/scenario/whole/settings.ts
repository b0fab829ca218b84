import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import type { Compilation } from '../lookup/compilation.js';
import { foundIn } from '../lookup/ids.js';
import { allSteps, type PlacedStep } from '../lookup/placed.js';
import type { Changeover } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { Setting, StationStep } from '../types/steps.js';
import { name, named } from '../values/keys.js';
import { once, own, remembered } from '../values/raw.js';

/**
 * Settings: what a step needs its station set to, such as the temperature of an oven. A changeover `on:
 * setting` goes by them as others go by the values of an option.
 */

/**
 * Stands for an option in a changeover; an option of this name goes first, as it did before there were any.
 */
export const SETTING = 'setting';

export const isOnSetting = (changeover: Changeover | undefined, { programme }: Scenario): boolean =>
  changeover?.option === SETTING && !Object.hasOwn(programme.options, SETTING);

const settingName = z
  .union([name('a setting, such as 80 degrees'), z.number()], { error: 'a setting, such as 80 degrees' })
  .transform(String);
const WANTED = 'a setting, such as 80 degrees, or one by option such as { colour: { red: 80 degrees } }',
  byValue = named(settingName, 'values of the option with their settings, such as { red: 80 degrees }');

export const settingKey = z
  .union(
    [
      settingName.transform((usual): Setting => ({ usual, option: undefined, byValue: {} })),
      z
        .object(
          {
            usual: settingName
              .optional()
              .describe('The setting where the option says nothing else. Default: none. Example: 60 degrees'),
          },
          { error: WANTED },
        )
        .catchall(byValue)
        .transform(({ usual, ...options }, context): Setting => {
          const [first, ...others] = Object.entries(options);
          if (first !== undefined && others.length === 0)
            return { usual, option: first[0], byValue: first[1] };
          context.addIssue({
            code: 'custom',
            message: 'one option, such as { colour: { red: 80 degrees }, usual: 60 degrees }',
            params: { seen: others.length > 0 ? Object.keys(options).join(', ') : 'none' },
          });
          return z.NEVER;
        }),
    ],
    { error: WANTED },
  )
  .optional()
  .describe(
    'What the station has to be set to, such as the temperature of an oven; one name, or one by the value ' +
      'of an option, with `usual` for all other values. The station has a changeover `on: setting`. ' +
      'Default: none. Example: 80 degrees',
  );

/** Setting by value of the step's option, in the order of its values; one where there is no option. */
function settingsOf({ setting }: StationStep, { programme }: Scenario): (string | undefined)[] {
  if (setting === undefined) return [];
  const { usual, option, byValue: settings } = setting;
  return option === undefined
    ? [usual]
    : Object.keys(own(programme.options, option) ?? {}).map((value) => own(settings, value) ?? usual);
}

/**
 * Settings of the steps at a station, in the order of routes; those side by side have that of their group.
 */
export const settingsAt = (scenario: Scenario, station: string): readonly string[] =>
  byStation(scenario).get(station) ?? [];

const byStation = once((scenario: Scenario): ReadonlyMap<string, readonly string[]> => {
  const settings = new Map<string, string[]>();
  for (const { step } of allSteps(scenario)) {
    const known = remembered(settings, step.at, () => []);
    for (const setting of settingsOf(step, scenario))
      if (setting !== undefined && !known.includes(setting)) known.push(setting);
  }
  return settings;
});

/** Settings at stations that are not set up for them, and steps without one at those that are. */
export function* settingFindings(scenario: Scenario): Iterable<Finding> {
  for (const placed of allSteps(scenario)) {
    const { path, step, where, route } = placed,
      { setting } = step,
      here = [...path, 'setting'];
    if (where === undefined || isInner(placed)) continue;
    const { changeover } = where.station;
    if (setting !== undefined && Object.hasOwn(scenario.programme.options, SETTING))
      yield {
        path: here,
        wanted: 'no option with the name setting where steps have settings; give the option another name',
        atKey: true,
      };
    else if (setting !== undefined && !isOnSetting(changeover, scenario))
      yield {
        path: here,
        wanted:
          'a setting only at a station with a changeover `on: setting`, such as { on: setting, process: ' +
          '20 min }',
        seen:
          changeover === undefined
            ? `"${step.at}", which has no changeover`
            : `"${step.at}", whose changeover is on ${changeover.option}`,
        atKey: true,
      };
    else if (setting === undefined && isOnSetting(changeover, scenario))
      yield {
        path: step.sideBySide === undefined ? [...path, 'step'] : path,
        wanted: `a step with a setting, such as setting: 80 degrees, since "${step.at}" is set up for it`,
        seen: `"${step.name}", which has none`,
      };
    else if (setting?.option !== undefined && route.kind === 'stock')
      yield {
        path: here,
        wanted: 'nothing by option in a feeder of stock, whose sub-assemblies are not yet of a unit',
        atKey: true,
      };
    else if (setting?.option !== undefined && settingsOf(step, scenario).includes(undefined))
      yield {
        path: [...here, setting.option],
        wanted: 'a setting for each value of the option, or `usual` for all others',
        seen: `only ${Object.keys(setting.byValue).join(', ')}`,
        atKey: true,
      };
  }
}

const isInner = ({ path }: PlacedStep): boolean => path.at(-2) === 'side by side';

export interface SettingRow {
  readonly option: number;
  /** By value of the option, or one. */
  readonly table: readonly number[];
  /** What has to be the same of two steps that share a lot. */
  readonly kind: string;
}

/** Nothing is set up, and no lot shared. */
export const noSetting = (name: string): SettingRow => ({ option: -1, table: [-1], kind: `only ${name}` });

export function settingRow(step: StationStep, { scenario, ids }: Compilation, hours: number): SettingRow {
  const { name, at, crew, work, passes, process, attendedEnd, oneShift, workFactor, learning, parts, hold } =
      step,
    { changeover } = foundIn(foundIn(scenario.sites, ids.siteOfStation(at), 'site').stations, at, 'station');
  if (changeover === undefined) return noSetting(name);
  if (!isOnSetting(changeover, scenario)) {
    const values = Object.keys(foundIn(scenario.programme.options, changeover.option, 'option'));
    return { ...noSetting(name), option: ids.option(changeover.option), table: [...values.keys()] };
  }
  const known = settingsAt(scenario, at),
    option = step.setting?.option,
    alike = [
      at,
      crew,
      work,
      passes,
      process,
      attendedEnd,
      oneShift,
      workFactor,
      learning,
      parts,
      hold,
      hours,
    ];
  return {
    option: option === undefined ? -1 : ids.option(option),
    table: settingsOf(step, scenario).map((setting) => known.indexOf(setting ?? '')),
    kind: Object.values(parts).includes('own') ? noSetting(name).kind : JSON.stringify(alike),
  };
}

export function settingColumns(rows: readonly SettingRow[]) {
  const kinds = new Map<string, number>();
  for (const { kind } of rows) if (!kinds.has(kind)) kinds.set(kind, kinds.size);
  let end = 0;
  return {
    settingOption: Int32Array.from(rows, ({ option }) => option),
    settingStart: Int32Array.from(rows, ({ table }) => (end += table.length) - table.length),
    settingTable: Int32Array.from(rows.flatMap(({ table }) => table)),
    lotKind: Int32Array.from(rows, ({ kind }) => kinds.get(kind) ?? -1),
  } satisfies Partial<Model['steps']>;
}

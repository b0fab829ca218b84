import { type Lookup, MISSING, type Outline } from '../lookup/outline.js';
import { optionNames } from '../steps/conditions.js';
import type { Path } from '../types/problem.js';
import { isRawMap, mapOf, placesAt, type RawMap } from '../values/raw.js';
import { SETTING } from './settings.js';

/** Options and values by which the setting of a step differs. */
export function settingNames(path: Path, setting: unknown, lookup: Lookup): void {
  for (const [option, values] of Object.entries(mapOf(setting)))
    if (option !== 'usual') optionNames(lookup, [...path, option], option, Object.keys(mapOf(values)), true);
}

/** The option, and its values, or the settings, in the times from one to another. */
export function changeoverNames(raw: RawMap, { outline, look }: Lookup): void {
  for (const { path: here, value } of placesAt(raw, [], ['sites', '*', 'stations', '*', 'changeover'])) {
    const { on: option, 'from to': times } = mapOf(value);
    if (typeof option !== 'string') continue;
    const onSetting = option === SETTING && outline.options?.has(SETTING) !== true,
      known = onSetting ? settingsSeen(outline, here[3]) : outline.options?.get(option);
    look(
      [...here, 'on'],
      option,
      outline.options && new Set([...outline.options.keys(), SETTING]),
      MISSING.options,
    );
    const pairs = [placesAt(times, [], ['*']), placesAt(times, [], ['*', '*'])].flat();
    for (const { path } of pairs)
      look(
        [...here, 'from to', ...path],
        path.at(-1),
        known,
        onSetting
          ? 'setting of this name at a step of the station'
          : `value of this name in option ${option}`,
        true,
      );
  }
}

/** The settings that the raw steps at a station name. */
const settingsSeen = ({ routes }: Outline, station: unknown): Set<string> =>
  new Set(
    routes.flatMap(({ entries }) =>
      entries
        .flatMap(({ entry: { at, setting } }) =>
          at !== station || setting === undefined
            ? []
            : isRawMap(setting)
              ? Object.values(setting).flatMap((each) => (isRawMap(each) ? Object.values(each) : [each]))
              : [setting],
        )
        .flatMap((each) => (typeof each === 'string' || typeof each === 'number' ? [String(each)] : [])),
    ),
  );

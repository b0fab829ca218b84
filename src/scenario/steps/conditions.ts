import { z } from 'zod';
import { type Ids } from '../lookup/ids.js';
import type { Lookup } from '../lookup/outline.js';
import { routesOf, stepsOf } from '../lookup/placed.js';
import type { Finding, Path } from '../types/problem.js';
import type { OptionMix } from '../types/programme.js';
import type { Scenario } from '../types/scenario.js';
import type { Condition, RouteEntry } from '../types/steps.js';
import { name, named } from '../values/keys.js';
import { own } from '../values/raw.js';
import { optionValue } from '../values/scalars.js';

/** Values of one option that a mask of 32 bits can tell apart. */
const MOST_VALUES = 32;

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

/** An option, and values of it: keys of a map, or what stands at `at`. */
export function optionNames(
  { outline, look }: Lookup,
  at: Path,
  option: string,
  names: readonly unknown[],
  atKey: boolean,
): void {
  look(at, option, outline.options, 'option of this name', true);
  names.forEach((name, i) => {
    const text =
      name === true ? 'yes' : name === false ? 'no' : typeof name === 'number' ? String(name) : name;
    const place = atKey ? [String(text)] : names.length > 1 ? [i] : [];
    look(
      [...at, ...place],
      text,
      outline.options?.get(option),
      `value of this name in option ${option}`,
      atKey,
    );
  });
}

/** The values of an option that units can have and that meet a condition. */
export function possibleValues(options: OptionMix, option: string, when: Condition): string[] {
  const wanted = own(when, option);
  return Object.entries(own(options, option) ?? {}).flatMap(([value, share]) =>
    share > 0 && (wanted === undefined || wanted.includes(value)) ? [value] : [],
  );
}

/** Everything that meets `narrow` meets `wide` too. */
export function covers(wide: Condition, narrow: Condition, options: OptionMix): boolean {
  return Object.entries(wide).every(([option, values]) =>
    possibleValues(options, option, narrow).every((value) => values.includes(value)),
  );
}

/** Options that conditions cannot tell apart. */
export function* conditionFindings(scenario: Scenario): Iterable<Finding> {
  const conditions = routesOf(scenario).flatMap((route) => [
    ...route.entries,
    ...stepsOf(route).map(({ step }) => step),
  ]);
  for (const option of new Set(conditions.flatMap(({ when }) => Object.keys(when)))) {
    const count = Object.keys(own(scenario.programme.options, option) ?? {}).length;
    if (count > MOST_VALUES)
      yield {
        path: ['programme', 'options', option],
        wanted:
          `at most ${MOST_VALUES} values where a step has a condition on the option; merge values that ` +
          'are built alike',
        seen: String(count),
        atKey: true,
      };
  }
}

/** A condition as options with masks of the values that meet it. */
export function masksOf(when: Condition, ids: Ids): { option: number; mask: number }[] {
  return Object.entries(when).map(([option, values]) => {
    const mask = values.reduce((bits, value) => {
      const bit = ids.value(option, value);
      if (bit >= MOST_VALUES)
        throw new RangeError(
          `programme.options.${option}: expected at most ${MOST_VALUES} values where a step has a ` +
            'condition on it, got more; merge values that are built alike',
        );
      return bits | (1 << bit);
    }, 0);
    return { option: ids.option(option), mask };
  });
}

/** A value for each option on which a condition of a route depends. */
export type Variety = Readonly<Record<string, string>>;

/** Where there are more varieties times entries than this, the first varieties stand for all. */
const MOST_VISITS = 1_000_000;

export const meets = (when: Condition, variety: Variety): boolean =>
  Object.entries(when).every(
    ([option, values]) => variety[option] === undefined || values.includes(variety[option]),
  );

/** Each combination of the options that the conditions of a route ask for. */
export function varietiesOf(scenario: Scenario, entries: readonly RouteEntry[]): Variety[] {
  const asked = [...new Set(entries.flatMap(({ when }) => Object.keys(when)))].flatMap((option) => {
    const values = possibleValues(scenario.programme.options, option, {});
    return values.length === 0 ? [] : [{ option, values }];
  });
  const most = Math.max(1, Math.floor(MOST_VISITS / entries.length));
  let count = 1;
  // The last option changes fastest.
  const strides = asked.toReversed().map(({ option, values }) => {
    const stride = count;
    count *= values.length;
    return { option, values, stride };
  });
  return Array.from({ length: Math.min(count, most) }, (_, number) =>
    Object.fromEntries(
      strides
        .toReversed()
        .map(({ option, values, stride }) => [
          option,
          values[Math.floor(number / stride) % values.length] ?? '',
        ]),
    ),
  );
}

import { type Compilation, NO_DRAW } from '../lookup/compilation.js';
import { allStations } from '../lookup/placed.js';
import type { Changeover } from '../types/plant.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, named, together } from '../values/keys.js';
import { own } from '../values/raw.js';
import { spell, whole } from '../values/scalars.js';
import { exact } from '../values/thousands.js';
import type { TimeSchema } from '../values/time.js';
import { isOnSetting, settingsAt } from '../whole/settings.js';

const batch = keys(
  {
    most: whole(1).describe(
      'Maximum number of units of one value that a place takes in a row while a unit of another ' +
        'value waits; at a station with lots, of lots. Example: 5',
    ),
    'longest wait': spell
      .optional()
      .describe(
        'A unit that is first in order and has waited this long in the buffer, by the clock, goes next ' +
          'whatever its value. Default: no limit. Example: 16 h',
      ),
  },
  'a batch: a map with the key most, such as { most: 5, longest wait: 16 h }',
);

/** Work between units that differ in an option, and the order in which units of one value are taken. */
export function changeoverSchema(time: TimeSchema) {
  const fromTo = named(
    named(time, 'times by the value that comes next, such as { white: 45 min }'),
    'times by the value before and the value after, such as { red: { white: 45 min } }',
  );
  return keys(
    {
      on: name('the name of an option, or setting').describe(
        'The option whose change from one unit to the next in a place causes this, or `setting`: it ' +
          'goes by ' +
          'the `setting` of the steps done there. An option that is called setting goes first. Example: ' +
          'colour',
      ),
      work: time
        .optional()
        .describe(
          'The time of one changeover that people make, in their hours. Either `work` or `process`. ' +
            'Default: ' +
            'none. Example: 15 min',
        ),
      process: time
        .optional()
        .describe(
          'Instead of `work`: a changeover that passes by itself, day and night and without people, ' +
            'such as ' +
            'an oven that heats up. Local codes and licensed practice decide temperatures and what may run ' +
            'unattended. Default: none. Example: 20 min',
        ),
      'from to': fromTo
        .default({})
        .describe(
          'Times that depend on the value before and the value after; other pairs take `work` or ' +
            '`process`. 0 min: no changeover. Default: the same for every pair. Example: { red: { ' +
            'white: 45 min }, white: { ' +
            'red: 15 min, yellow: 0 min } }',
        ),
      batch: batch
        .optional()
        .describe(
          'Units of one value are taken from the buffer in a row, to save changeovers. Default: in ' +
            'order of arrival. Example: { most: 5, longest wait: 16 h }',
        ),
    },
    'a changeover: a map with the keys on and work',
  )
    .superRefine(
      together(({ work, process }, wrong) => {
        if (work !== undefined && process !== undefined)
          wrong(['process'], 'either work or process: people set the place up, or it sets itself', 'both');
        else if (work === undefined && process === undefined)
          wrong([], 'a changeover with the key work, or with process where it passes by itself', 'neither');
      }),
    )
    .transform(
      ({ on, work, process, fromTo, batch }): Changeover => ({
        option: on,
        // One of them is there.
        work: work ?? process ?? { kind: 'constant', value: 0 },
        fromTo,
        batch: batch && { most: batch.most, longestWaitMin: batch.longestWait },
        alone: process === undefined ? undefined : true,
      }),
    );
}

/** A model holds the time of each. */
const MOST_PAIRS = 1_000_000;

/** Changeovers from a value to itself, and batches where there is nothing to choose from. */
export function* changeoverFindings(scenario: Scenario): Iterable<Finding> {
  let pairs = 0;
  for (const { path: here, name, station } of allStations(scenario)) {
    const { changeover, buffer, lot } = station,
      path = [...here, 'changeover'];
    if (changeover === undefined) continue;
    const before = pairs;
    pairs += valuesOf(scenario, name, changeover).length ** 2;
    if (pairs > MOST_PAIRS && before <= MOST_PAIRS)
      yield {
        path: [...path, 'on'],
        wanted:
          `an option with fewer values: at most ${exact(MOST_PAIRS)} pairs of values over all stations ` +
          'with a changeover; merge values that are built alike',
        seen: exact(pairs),
      };
    for (const [value, times] of Object.entries(changeover.fromTo))
      if (Object.hasOwn(times, value))
        yield {
          path: [...path, 'from to', value, value],
          wanted: 'a pair of two values; between units of one value there is no changeover',
          seen: `"${value}" to "${value}"`,
          atKey: true,
        };
    if (changeover.batch === undefined) continue;
    if (lot !== undefined && !isOnSetting(changeover, scenario))
      yield {
        path: [...path, 'batch'],
        wanted: 'no batch by an option at a station with lots, whose units are taken together',
        atKey: true,
      };
    else if (lot === undefined && buffer !== undefined && buffer < 2)
      yield {
        path: [...path, 'batch'],
        wanted: 'a buffer of at least 2 spaces ahead of the station, to have a choice',
        seen: `buffer: ${buffer}`,
        atKey: true,
      };
  }
}

/** Values of the option, or settings of the steps at the station. */
const valuesOf = (scenario: Scenario, station: string, changeover: Changeover): readonly string[] =>
  isOnSetting(changeover, scenario)
    ? settingsAt(scenario, station)
    : Object.keys(own(scenario.programme.options, changeover.option) ?? {});

interface ChangeoverRow {
  /** -1: settings. */
  readonly option: number;
  readonly values: readonly string[];
  readonly alone: boolean;
  /** By value before * values + value after. */
  readonly draws: readonly number[];
  readonly batch: Changeover['batch'];
}

/**
 * One draw for all pairs of values that take the usual time, and one for each pair with a time of its own;
 * nothing for what neither takes time nor chooses.
 */
export function compileChangeover(
  { scenario, ids, draws }: Compilation,
  station: string,
  changeover: Changeover | undefined,
): ChangeoverRow | undefined {
  if (changeover === undefined) return undefined;
  const { option, work, fromTo, batch, alone } = changeover;
  const usual = draws.add(`${station}/changeover`, work);
  const onSetting = isOnSetting(changeover, scenario),
    values = valuesOf(scenario, station, changeover);
  const byPair = values.flatMap((from) =>
    values.map((to) => {
      if (from === to) return NO_DRAW;
      const time = own(own(fromTo, from) ?? {}, to);
      return time === undefined ? usual : draws.add(`${station}/changeover ${from} to ${to}`, time);
    }),
  );
  // Of settings a lot gathers one, though it takes no time to change them.
  if (!onSetting && batch === undefined && byPair.every((draw) => draw === NO_DRAW)) return undefined;
  return {
    option: onSetting ? -1 : ids.option(option),
    values,
    alone: alone === true,
    draws: byPair,
    batch,
  };
}

import { z } from 'zod';
import type { Model } from '../../flow/model/model.js';
import type { Draws } from '../lookup/compilation.js';
import { allSteps, findsOf } from '../lookup/placed.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { named } from '../values/keys.js';
import { chance } from '../values/scalars.js';
import { isOnSetting } from '../whole/settings.js';

/** The values of an option with their shares; one share makes a yes or no option. */
export const mixSchema = z.union(
  [
    chance.transform((yes): Record<string, number> => ({ yes, no: 1 - yes })),
    named(chance, 'values with their shares').refine(
      (shares) => Math.abs(Object.values(shares).reduce((a, b) => a + b, 0) - 1) <= 1e-6,
      { error: 'shares that add up to 100 %', when: whenMap },
    ),
  ],
  {
    error:
      'values with their shares, such as { red: 70 %, white: 30 % }, or one chance for yes or no, ' +
      'such as 35 %',
  },
);
/** The sum is asked for only where each share could be read. */
function whenMap(payload: { value: unknown; issues: unknown[] }): boolean {
  return payload.issues.length === 0 && typeof payload.value === 'object' && payload.value !== null;
}

/**
 * Sub-assemblies for stock are built before their unit is known, so nothing on their way can go by its
 * options.
 */
export function* stockOptionFindings(scenario: Scenario): Iterable<Finding> {
  const byOption = (path: Path): Finding => ({
    path,
    wanted: 'nothing by option in a feeder of stock, whose sub-assemblies are not yet of a unit',
    atKey: true,
  });
  for (const placed of allSteps(scenario)) {
    const { path, route, step, where } = placed;
    if (route.kind !== 'stock') continue;
    if (Object.keys(step.workFactor).length > 0) yield byOption([...path, 'work factor']);
    const chances = [
      ...Object.entries(step.creates).map(([kind, chance]) => ({ at: [...path, 'creates', kind], chance })),
      ...findsOf(placed).map(({ path: at, find }) => ({ at: [...at, 'chance'], chance: find.chance })),
    ];
    for (const { at, chance } of chances) if (chance.byOption.length > 0) yield byOption(at);
    const works = [
      ...findsOf(placed).flatMap(({ path: at, find: { then } }) =>
        'work' in then ? [{ at: [...at, then.kind], work: then.work }] : [],
      ),
      ...(step.hold?.mend === undefined ? [] : [{ at: [...path, 'hold', 'mend'], work: step.hold.mend }]),
    ];
    for (const { at, work } of works) if (work.kind === 'by option') yield byOption(at);
    if (where?.station.changeover !== undefined && !isOnSetting(where.station.changeover, scenario))
      yield {
        path: [...path, 'at'],
        wanted: 'a station without changeover on an option, since sub-assemblies for stock have no options',
        seen: `"${step.at}"`,
      };
  }
}

/** Options with cumulative chances. Called first, so that the draw of option o (`option/<name>`) has id o. */
export function compileOptions(scenario: Scenario, draws: Draws): Model['options'] {
  return Object.entries(scenario.programme.options).map(([name, mix]) => {
    draws.chance(`option/${name}`);
    const weights = Object.values(mix);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    let sum = 0;
    const cumulative = Float64Array.from(weights, (weight) => (sum += weight) / total);
    cumulative[cumulative.length - 1] = 1;
    return { name, values: Object.keys(mix), cumulative };
  });
}

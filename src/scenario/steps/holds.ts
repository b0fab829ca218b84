import { z } from 'zod';
import { sayPath } from '../file/problem.js';
import { joinIndex } from '../lookup/joins.js';
import {
  allSteps,
  findsOf,
  furthestBack,
  type PlacedRoute,
  routesOf,
  type StationedStep,
  stepsByName,
  stepsOf,
} from '../lookup/placed.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import type { StationStep } from '../types/steps.js';
import { keys, name } from '../values/keys.js';
import { mark } from '../values/scalars.js';
import type { TimeSchema } from '../values/time.js';
import { timeByOptionSchema } from '../values/time-by-option.js';
import { makesNote } from './finds.js';

/** A step that units with noted items may not pass. */
export function holdSchema(time: TimeSchema) {
  const byOption = timeByOptionSchema(time);
  return z.union(
    [
      mark.transform((): StationStep['hold'] => ({ mend: undefined })),
      keys(
        {
          mend: byOption
            .optional()
            .describe(
              'The work on a noted item that has no time of its own, i.e. one passed on at the limit of ' +
                'a loop; also by option. Required if such items can occur. Example: 45 min',
            ),
        },
        'a map with the key mend',
      ),
    ],
    { error: 'true, or what noted items take, such as { mend: 45 min }' },
  );
}

/** An inspection that measures again what an earlier one has measured. */
export function comparisonSchema(time: TimeSchema) {
  return z.union(
    [
      name('the name of an earlier inspection').transform((step): StationStep['comparesWith'] => ({
        step,
        differs: undefined,
      })),
      keys(
        {
          step: name('the name of an earlier inspection').describe(
            'The earlier inspection or test of the same route. Example: measure wheels',
          ),
          'if it differs': time
            .optional()
            .describe(
              'Extra work of the crew, in place, if only one of the two found something. Default: none. ' +
                'Example: 40 min',
            ),
        },
        'a map with the key step',
      ).transform(({ step, ifItDiffers }): StationStep['comparesWith'] => ({ step, differs: ifItDiffers })),
    ],
    { error: 'the name of an earlier inspection, or { step: ..., if it differs: 40 min }' },
  );
}

/**
 * Holds that nothing comes to, that do not know how long to mend, or that some units would slip by;
 * comparisons with what is no inspection.
 */
export function* holdFindings(scenario: Scenario): Iterable<Finding> {
  const notes = routesOf(scenario).flatMap((route) => notesOf(route) ?? []);
  for (const placed of allSteps(scenario)) {
    yield* ofHold(scenario, notes, placed);
    yield* ofComparison(placed);
  }
}

/** What may be noted on a route: the first index at all, and the first of what has no time of its own. */
interface Notes {
  readonly route: PlacedRoute;
  readonly first: number;
  readonly untimed: { readonly index: number; readonly path: Path } | undefined;
}
function notesOf(route: PlacedRoute): Notes | undefined {
  const notes = stepsOf(route).flatMap((placed) =>
      findsOf(placed).flatMap(({ path, find }) =>
        makesNote(find) ? [{ index: placed.index, path, isBack: find.then.kind === 'back' }] : [],
      ),
    ),
    [first] = notes;
  return first && { route, first: first.index, untimed: notes.find(({ isBack }) => isBack) };
}

function* ofHold(scenario: Scenario, all: readonly Notes[], placed: StationedStep): Iterable<Finding> {
  const path = [...placed.path, 'hold'],
    { hold, at, sample } = placed.step;
  if (hold === undefined) return;
  if (placed.where?.station.lot !== undefined)
    yield {
      path,
      wanted: `no hold at "${at}", which works on lots; give the hold a station of its own`,
      atKey: true,
    };
  if (sample !== undefined)
    yield {
      path: [...placed.path, 'sample'],
      wanted: 'no sample at a hold, which no unit with noted items may pass',
      atKey: true,
    };
  const { route, index } = placed,
    latest = Math.max(index, furthestBack(route)[index] ?? -1);
  const notes = all.filter((other) =>
    other.route === route
      ? other.first <= latest
      : (joinIndex(scenario, other.route, route) ?? Infinity) <= latest,
  );
  if (notes.length === 0)
    yield {
      path,
      wanted:
        'an earlier find with carry, or with a back to that passes units on at its limit; without ' +
        'one, nothing is ever held here',
      atKey: true,
    };
  const untimed = notes.find(
    (other) => other.untimed !== undefined && (other.route !== route || other.untimed.index <= latest),
  )?.untimed;
  if (untimed !== undefined && hold.mend === undefined)
    yield {
      path,
      wanted:
        '{ mend: ... }, the work on items that come without a time, such as those passed on at the ' +
        `limit of ${sayPath(untimed.path)}`,
      seen: 'none',
    };
}

function* ofComparison(placed: StationedStep): Iterable<Finding> {
  const path = [...placed.path, 'compares with'],
    { at, comparesWith } = placed.step;
  if (comparesWith === undefined) return;
  const { step, differs } = comparesWith,
    earlier = stepsByName(placed.route).get(step);
  if (findsOf(placed).length === 0)
    yield {
      path,
      wanted: 'a step that finds something or may fail; this one is no inspection',
      atKey: true,
    };
  if (earlier !== undefined && findsOf(earlier).length === 0)
    yield { path, wanted: 'an inspection or test', seen: `"${step}", which finds nothing` };
  if (differs !== undefined && placed.where?.station.lot !== undefined)
    yield {
      path: [...path, 'if it differs'],
      wanted: `no extra work at "${at}", which works on lots; give the inspection a station ` + 'of its own',
      atKey: true,
    };
}

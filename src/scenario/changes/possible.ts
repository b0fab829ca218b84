import { z } from 'zod';
import { saySeen } from '../file/problem.js';
import { leftOf } from '../made/left.js';
import { MOST_TIMES, making, makingFindings } from '../made/making.js';
import { type PossibleChange, RELIEF_KINDS } from '../types/possible.js';
import type { Finding, Path } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { keys, name, named, oneOrMore } from '../values/keys.js';
import { nearest } from '../values/nearest.js';
import { whole, word } from '../values/scalars.js';
import { money } from '../whole/space-price.js';
import { leadTime } from './lead-time.js';
import { type KnownChanges, requiresFindings } from './requires.js';

const EDITS = 'a list of path: new value, such as - sites.hall.stations.bench.places: 2';

const edit = z.record(z.string(), z.unknown(), { error: EDITS });
const others = (what: string) => oneOrMore(name(what), `${what}, or a list of them`);

const changeSchema = keys(
  {
    relief: word(...RELIEF_KINDS)
      .optional()
      .describe(
        'One more of something, or a thing made better, as `reliefs` tries it: the word in its table of ' +
          'what is tried. Either this or `changes`. Example: place',
      ),
    of: name('the name of a station, crew, lane, step or what else there is more of')
      .optional()
      .describe('With `relief`: of what, by its name. Example: colour booth'),
    site: name('the name of a site')
      .optional()
      .describe('With `relief`: the site, where crews of the name are in several. Example: coachworks'),
    which: name('which of several')
      .optional()
      .describe(
        'With `relief`: `rework` for a space of a rework buffer, `arrival bank` for one behind a lane, the ' +
          'kind of defect, where a step creates several. Example: rework',
      ),
    changes: z
      .union([edit, z.array(edit).min(1, { error: EDITS })], { error: EDITS })
      .optional()
      .describe(
        'A bundle of edits in the place of `relief`, as in a file of what-ifs: made together, and once. ' +
          'Example: [{ sites.coachworks.stations.colour booth.places: 2 }]',
      ),
    price: money
      .optional()
      .describe(
        'Money, once, each time that it is made. Default: not given, and the reports say so. Example: 410000',
      ),
    day: money
      .default(0)
      .describe(
        'Money a day of the calendar once it is made, beside wages, trucks, carriers and floor, which are ' +
          'counted anyway. Default: 0. Example: 35',
      ),
    'ready after': leadTime
      .optional()
      .describe('From its order until it is there. Default: at once. Example: 5 months'),
    'at most': whole(1, MOST_TIMES)
      .optional()
      .describe('How often it can be made. Default: no limit; a bundle once. Example: 1'),
    excludes: others('the name of another change under costs: changes')
      .default([])
      .describe('Changes that cannot be made beside it. Default: none. Example: third shift in paint'),
    requires: others('the name of another change under costs: changes')
      .default([])
      .describe('Changes without which it cannot be made. Default: none. Example: more room in paint'),
    made: making.optional(),
  },
  'a change: a map with relief and of, or with changes, and perhaps price, ready after, at most',
);

/** The key `changes` of `costs`. */
export const possibleSchema = named(changeSchema, 'changes by name').transform((changes) =>
  Object.entries(changes).map(
    ([own, { relief: kind, of = '', site, which, changes: edits, ...terms }]): PossibleChange => ({
      name: own,
      relief: kind === undefined ? undefined : { kind, of, site, which },
      changes: edits,
      ...terms,
    }),
  ),
);

/** All changes that a scenario names, those that are made in it too. */
export const namedChanges = ({ costs }: Scenario): readonly PossibleChange[] => costs?.changes ?? [];

/** What can still be made beside what is made in it. */
export const possibleOf = (scenario: Scenario): readonly PossibleChange[] => leftOf(namedChanges(scenario));

/** What cannot be meant of possible changes; whether each reads is asked where it is made. */
export function* possibleFindings(scenario: Scenario): Iterable<Finding> {
  const all = namedChanges(scenario),
    known = new Map(all.map((each) => [each.name, each])),
    twins = new Map<string, string>();
  for (const each of all) {
    const { relief, changes, atMost, made } = each;
    const at = (...rest: Path): Path => ['costs', 'changes', each.name, ...rest];
    if (relief === undefined && changes === undefined && made !== undefined)
      yield {
        path: at(),
        wanted: 'the name of a change that has relief (with of) or changes, here or in a file included',
        seen: saySeen(each.name),
        suggestion: nearest(
          each.name,
          all.flatMap((other) => ((other.relief ?? other.changes) ? other.name : [])),
        ),
        atKey: true,
      };
    else if ((relief === undefined) === (changes === undefined))
      yield {
        path: at(),
        wanted: 'either relief (with of) or changes',
        seen: relief === undefined ? 'neither' : 'both',
        atKey: true,
      };
    else if (relief?.of === '')
      yield { path: at('relief'), wanted: 'the key of beside it: of what there is more', seen: 'none' };
    if (changes !== undefined && atMost !== undefined && atMost > 1)
      yield {
        path: at('at most'),
        wanted: '1 or no limit, since a bundle of edits is made once',
        seen: `${atMost}`,
      };
    if (relief !== undefined) {
      const key = JSON.stringify(relief),
        twin = twins.get(key);
      if (twin === undefined) twins.set(key, each.name);
      else
        yield {
          path: at('relief'),
          wanted: `a relief that ${saySeen(twin)} is not already`,
          seen: relief.kind,
        };
    }
    yield* namesFindings(each, known, at);
  }
  yield* requiresFindings(all, known);
  yield* makingFindings(all, known, scenario.programme);
}

function* namesFindings(
  { name: own, excludes, requires }: PossibleChange,
  known: KnownChanges,
  at: (...rest: Path) => Path,
): Iterable<Finding> {
  for (const [key, names] of [
    ['excludes', excludes],
    ['requires', requires],
  ] as const)
    for (const other of names)
      if (other === own) yield { path: at(key), wanted: 'the name of another change', seen: saySeen(other) };
      else if (!known.has(other))
        yield {
          path: at(key),
          wanted: 'no change of this name under costs: changes',
          seen: saySeen(other),
          suggestion: nearest(other, known.keys()),
        };
}

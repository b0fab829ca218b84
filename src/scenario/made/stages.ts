import { withBundles } from '../changes/bundle.js';
import type { Changeable } from '../changes/edit.js';
import { requiredBy } from '../changes/requires.js';
import { saySeen } from '../file/problem.js';
import { findRelief } from '../reliefs/named.js';
import type { PossibleChange } from '../types/possible.js';
import type { Finding } from '../types/problem.js';
import type { Scenario } from '../types/scenario.js';
import { defined } from '../values/lists.js';
import { withStanding } from './everywhere.js';
import { sinceOf } from './making.js';

/** A change that is made. */
export interface MadeChange {
  readonly change: PossibleChange;
  readonly times: number;
  /** ISO date from which on it is there; undefined, or not after the start: from the first day on. */
  readonly from: string | undefined;
}

/** A scenario in which none of some changes is made yet. */
export interface Unmade {
  readonly scenario: Scenario;
  /** The same as data, as written; asked only for bundles of edits. */
  readonly data: () => Changeable;
  /** What is done to what comes of data: between bundles and reliefs. */
  readonly prepare: (scenario: Scenario) => Scenario;
}

/** Changes that do not go together, in words; the findings are at their places below `costs.changes`. */
export class NotTogether extends RangeError {
  constructor(
    who: string,
    readonly findings: readonly Finding[],
  ) {
    const { wanted, seen } = defined(findings[0]);
    super(`${who}: expected ${wanted}${seen === undefined ? '' : `, got ${seen}`}`);
  }
}

/**
 * The scenario with changes that are made, each from its day on, and with how it is before they are there.
 * @throws NotTogether
 */
export function withChanges(unmade: Unmade, made: readonly MadeChange[]): Scenario {
  const { programme } = unmade.scenario,
    all = inOrder(made).map((each) => ({ ...each, from: sinceOf(each.from, programme) })),
    days = [...new Set(all.flatMap(({ from }) => from ?? []))].sort(),
    names = made.map(({ change }) => change.name),
    last = withAll(unmade, all, names);
  if (days.length === 0) return last;
  return {
    ...last,
    before: days.map((until) => ({
      until,
      scenario: withAll(
        unmade,
        all.filter(({ from }) => from === undefined || from < until),
        names,
      ),
    })),
  };
}

/**
 * All from the first day on. Bundles come first, all at once; then reliefs, each looked up in what the ones
 * before have left; what they cost a day is among the standing costs.
 */
function withAll(unmade: Unmade, made: readonly MadeChange[], names: readonly string[]): Scenario {
  const bundles = made.flatMap(({ change }) => (change.changes === undefined ? [] : change));
  let scenario = bundles.length === 0 ? unmade.scenario : withEdits(unmade, bundles, names),
    day = 0;
  for (const { change, times } of made) {
    const { name, relief } = change;
    day += times * change.day;
    for (let i = 0; relief !== undefined && i < times; i++) {
      const found = findRelief(scenario, relief);
      if (found.fault !== undefined) {
        const { wanted, seen = 'none' } = found.fault;
        throw new NotTogether(name, [
          { path: ['costs', 'changes', name, 'made'], wanted, seen, atKey: true },
        ]);
      }
      scenario = found.relief.change(scenario);
    }
  }
  return withStanding(scenario, day);
}

/** @param names in the order in which they are told */
function withEdits(
  { data, prepare }: Unmade,
  bundles: readonly PossibleChange[],
  names: readonly string[],
): Scenario {
  const made = withBundles(data(), bundles, defined(bundles[0]).name);
  if (made.findings === undefined) return prepare(made.scenario);
  const told = names.filter((name) => bundles.some((bundle) => bundle.name === name));
  throw new NotTogether(told.map(saySeen).join(' with '), made.findings);
}

/**
 * One order, however they are listed: what another one requires ahead of it, else by name. Reliefs of one
 * thing may round, and names that bundles add keep their order.
 */
function inOrder(made: readonly MadeChange[]): readonly MadeChange[] {
  const known = new Map(made.map(({ change }) => [change.name, change])),
    names = [...known.keys()].sort(),
    order = [...new Set(names.flatMap((name) => [...requiredBy(defined(known.get(name)), known), name]))];
  return order.flatMap((name) => made.filter(({ change }) => change.name === name));
}

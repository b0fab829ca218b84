import type { Changeable } from '../../scenario/changes/edit.js';
import { longerOf, readyOn } from '../../scenario/changes/lead-time.js';
import { namedChanges, possibleOf } from '../../scenario/changes/possible.js';
import { requiredBy } from '../../scenario/changes/requires.js';
import { changeableOf, type ScenarioData, withWarmUp } from '../../scenario/data.js';
import { saySeen } from '../../scenario/file/problem.js';
import { sinceOf } from '../../scenario/made/making.js';
import { withChanges } from '../../scenario/made/stages.js';
import { madeIn } from '../../scenario/made/with-made.js';
import type { LeadTime, Making, PossibleChange } from '../../scenario/types/possible.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { once } from '../../scenario/values/raw.js';
import { defined } from '../lists.js';
import { sumOf } from '../statistics/sums.js';

/** How often each of some possible changes is made, by name; once at least. */
export type ChangeSet = ReadonlyMap<string, number>;

/** What a set of changes costs, and when all of it is there. */
export interface Terms {
  /** Money, once: of those whose price is given. */
  readonly price: number;
  /** Names of those whose price is not. */
  readonly unpriced: readonly string[];
  /** Money a day of the calendar. */
  readonly day: number;
  /** Of the one that takes longest, if all are ordered on one day; undefined: at once. */
  readonly readyAfter: LeadTime | undefined;
  /** ISO date; that of the order where none takes time. */
  readonly readyOn: string;
}

/**
 * The possible changes of a scenario, but for what is made in it, and sets of them: whether a set can be
 * made, what it costs, when it is there, and the scenario with it. `data` is the scenario as data, without
 * which no bundle can be made, and nothing beside what is made; `prepare` is done to a scenario between its
 * bundles and its reliefs, such as another rate.
 */
export class PossibleChanges {
  private readonly known: ReadonlyMap<string, PossibleChange>;

  constructor(
    private readonly base: Scenario,
    private readonly data: ScenarioData | undefined,
    private readonly prepare: (scenario: Scenario) => Scenario = (scenario) => scenario,
  ) {
    this.known = new Map(possibleOf(base).map((each) => [each.name, each]));
  }

  /** In the planner's order. */
  get all(): readonly PossibleChange[] {
    return [...this.known.values()];
  }

  /** The change with all that it requires, what is required first ahead, once each. */
  withRequired(name: string): ChangeSet {
    return new Map([...requiredBy(this.of(name), this.known), name].map((each) => [each, 1]));
  }

  /** Why a set cannot be made by what is said of its changes, as a clause; null: it can. */
  forbidden(set: ChangeSet): string | null {
    for (const [name, times] of set) {
      const { changes, atMost = changes === undefined ? Infinity : 1, requires, excludes } = this.of(name),
        missing = requires.find((other) => !set.has(other)),
        barred = excludes.find((other) => set.has(other));
      if (times > atMost) return `${saySeen(name)} can be made ${atMost === 1 ? 'once' : `${atMost} times`}`;
      if (missing !== undefined) return `${saySeen(name)} requires ${saySeen(missing)}`;
      if (barred !== undefined) return `${saySeen(name)} excludes ${saySeen(barred)}`;
    }
    return null;
  }

  /** What a set costs and when it is there, if all of it is ordered on a day, an ISO date. */
  terms(set: ChangeSet, ordered = this.base.programme.start): Terms {
    const all = [...set].map(([name, times]) => ({ ...this.of(name), times })),
      readyAfter = all.reduce<LeadTime | undefined>(
        (longest, each) => longerOf(ordered, longest, each.readyAfter),
        undefined,
      );
    return {
      price: sumOf(all, ({ price = 0, times }) => times * price),
      unpriced: all.flatMap(({ name, price }) => (price === undefined ? [name] : [])),
      day: sumOf(all, ({ day, times }) => times * day),
      readyAfter,
      readyOn: readyAfter === undefined ? ordered : readyOn(ordered, readyAfter),
    };
  }

  /**
   * Since when each change of a set is there: ordered on a day, an ISO date, when its lead time is over;
   * without it from the first day on. None is there before what it requires.
   */
  dated(set: ChangeSet, ordered?: string): (Making & { readonly name: string })[] {
    const { programme } = this.base,
      since = new Map(madeIn(this.base).map(({ change, from }) => [change.name, from ?? '']));
    // What is required stands ahead of what requires it.
    for (const name of [...set.keys()].flatMap((each) => [...this.withRequired(each).keys()])) {
      const { readyAfter } = this.of(name),
        own = ordered === undefined || readyAfter === undefined ? ordered : readyOn(ordered, readyAfter),
        after = this.required(name).flatMap((other) => since.get(other) ?? []);
      since.set(name, [own ?? '', ...after].sort().at(-1) ?? '');
    }
    return [...set].map(([name, times]) => ({ name, times, from: sinceOf(since.get(name), programme) }));
  }

  /**
   * The scenario with a set of changes beside those that are made in it: each from the day on that `dated`
   * says, their running price among the standing costs; see `withChanges`.
   * @throws RangeError, in words, where what they do does not go together
   */
  made(set: ChangeSet, ordered?: string): Scenario {
    const { base, data, prepare } = this,
      before = madeIn(base),
      added = this.dated(set, ordered).map((each) => ({ ...each, change: this.of(each.name) }));
    if (before.length > 0 && added.length === 0) return base;
    const prepared = (scenario: Scenario): Scenario =>
      prepare(data?.warmUpMin === undefined ? scenario : withWarmUp(scenario, data.warmUpMin));
    return withChanges(
      {
        scenario: before.length === 0 ? base : prepared(this.written().scenario),
        data: () => this.written(),
        prepare: prepared,
      },
      [...before, ...added],
    );
  }

  private written(): Changeable {
    if (this.data === undefined)
      throw new RangeError('bundles of edits: expected the scenario as data, got none');
    return changeableFrom(this.data);
  }

  /** Also what is made in the scenario. */
  private required(name: string): readonly string[] {
    return namedChanges(this.base).find((each) => each.name === name)?.requires ?? [];
  }

  private of(name: string): PossibleChange {
    return defined(this.known.get(name));
  }
}

const changeableFrom = once(changeableOf);

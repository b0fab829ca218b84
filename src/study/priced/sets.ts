import { withBundles } from '../../scenario/changes/bundle.js';
import { longerOf, readyOn } from '../../scenario/changes/lead-time.js';
import { possibleOf } from '../../scenario/changes/possible.js';
import { requiredBy } from '../../scenario/changes/requires.js';
import { changeableOf, type ScenarioData, withWarmUp } from '../../scenario/data.js';
import { saySeen } from '../../scenario/file/problem.js';
import { findRelief } from '../../scenario/reliefs/named.js';
import type { LeadTime, PossibleChange } from '../../scenario/types/possible.js';
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
 * The possible changes of a scenario, and sets of them: whether a set can be made, what it costs, when it is
 * there, and the scenario with it. `data` is the scenario as data, without which bundles cannot be made;
 * `prepare` is done to a scenario between its bundles and its reliefs, such as another rate.
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
   * The scenario with a set of changes from its first day on, their running price among the standing costs.
   * Bundles come first, all at once; then reliefs, each looked up in what the ones before have left.
   * @throws RangeError, in words, where what they do does not go together
   */
  made(set: ChangeSet): Scenario {
    const all = [...set].map(([name, times]) => ({ ...this.of(name), times })),
      bundles = all.filter(({ changes }) => changes !== undefined);
    let scenario = bundles.length === 0 ? this.base : this.bundled(bundles);
    for (const { name, relief, times } of all)
      for (let i = 0; relief !== undefined && i < times; i++) {
        const found = findRelief(scenario, relief);
        if (found.fault !== undefined)
          throw new RangeError(`${name}: expected ${found.fault.wanted}, got ${found.fault.seen ?? 'none'}`);
        scenario = found.relief.change(scenario);
      }
    return withStanding(scenario, this.terms(set).day);
  }

  private bundled(bundles: readonly PossibleChange[]): Scenario {
    const { data, prepare } = this,
      [first] = bundles;
    if (data === undefined) throw new RangeError('bundles of edits: expected the scenario as data, got none');
    const made = withBundles(changeableFrom(data), bundles, defined(first).name);
    if (made.findings !== undefined) {
      const { wanted, seen } = defined(made.findings[0]);
      throw new RangeError(
        `${bundles.map(({ name }) => saySeen(name)).join(' with ')}: expected ${wanted}` +
          (seen === undefined ? '' : `, got ${seen}`),
      );
    }
    return prepare(data.warmUpMin === undefined ? made.scenario : withWarmUp(made.scenario, data.warmUpMin));
  }

  private of(name: string): PossibleChange {
    return defined(this.known.get(name));
  }
}

const changeableFrom = once(changeableOf);

/** With so much more a day that it costs whatever is built. */
export const withStanding = (scenario: Scenario, day: number): Scenario =>
  day === 0 || scenario.costs === undefined
    ? scenario
    : { ...scenario, costs: { ...scenario.costs, standingDay: (scenario.costs.standingDay ?? 0) + day } };

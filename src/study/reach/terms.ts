import { leadTimeText, orderBy } from '../../scenario/changes/lead-time.js';
import type { ScenarioData } from '../../scenario/data.js';
import { edited } from '../../scenario/file/edit-path.js';
import { findRelief } from '../../scenario/reliefs/named.js';
import type { Thing } from '../../scenario/reliefs/thing.js';
import type { PossibleChange } from '../../scenario/types/possible.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { defined } from '../lists.js';
import type { PossibleChanges } from '../priced/sets.js';
import { orWhy } from '../reliefs/changes.js';
import { changedThings } from '../route/changed.js';
import type { MadeResult, PossibleResult } from './results.js';
import type { Choices, Counts } from './search/choices.js';

/** What sets are told to be, to cost, and when each of their changes is there. */
export class Terms {
  constructor(
    private readonly scenario: Scenario,
    private readonly possible: PossibleChanges,
    private readonly choices: Choices,
    /** ISO; null: every change is there from the first day on. */
    private readonly ordered: string | null,
  ) {}

  /** The changes of a set, those of another left out. */
  made(counts: Counts, but: Counts = this.choices.none): MadeResult[] {
    const { start } = this.scenario.programme,
      dated = this.possible.dated(this.choices.set(counts), this.ordered ?? undefined);
    return this.choices.all.flatMap(({ name, readyAfter }, i) => {
      const times = defined(counts[i]) - defined(but[i]);
      if (times === 0) return [];
      const from = dated.find((each) => each.name === name)?.from ?? null;
      return [{ name, times, from, orderBy: readyAfter === undefined ? null : orderBy(start, readyAfter) }];
    });
  }

  /** Money once, null where the price of one is not given; and a day. */
  money(counts: Counts): { readonly money: number | null; readonly day: number } {
    const { price, unpriced, day } = this.possible.terms(this.choices.set(counts));
    return { money: unpriced.length > 0 ? null : price, day };
  }

  get all(): PossibleResult[] {
    return this.choices.all.map((change) => ({
      name: change.name,
      what: whatOf(this.scenario, change),
      things: this.thingsOf(change),
      price: change.price ?? null,
      day: change.day,
      readyAfter: change.readyAfter === undefined ? null : leadTimeText(change.readyAfter),
      atMost: change.atMost ?? null,
      excludes: change.excludes,
      requires: change.requires,
    }));
  }

  /** Of a bundle those in which it differs from what it requires. */
  private thingsOf({ name, relief }: PossibleChange): readonly Thing[] {
    if (relief !== undefined) return [findRelief(this.scenario, relief).relief?.of ?? []].flat();
    const all = this.possible.withRequired(name),
      before = new Map([...all].filter(([each]) => each !== name));
    // One that cannot be made with what it requires is in no set.
    const changed = orWhy(() => changedThings(this.possible.made(before), this.possible.made(all)));
    return typeof changed === 'string' ? [] : changed.things;
  }
}

/** `one place more at colour booth`, or the edits of a bundle. */
function whatOf(scenario: Scenario, { relief, changes }: PossibleChange): string {
  if (relief !== undefined)
    return findRelief(scenario, relief).relief?.text ?? `${relief.kind} of ${relief.of}`;
  const edits = Array.isArray(changes) ? changes : [changes ?? {}];
  return edits
    .flatMap((edit: object) => Object.entries(edit))
    .map(([path, value]) => `${path}: ${typeof value === 'string' ? value : JSON.stringify(value)}`)
    .join('; ');
}

/** The data of a scenario in which changes are made. */
export const withMaking = (data: ScenarioData, made: readonly MadeResult[]): ScenarioData => ({
  ...data,
  value: made.reduce<unknown>(
    (value, { name, times, from }) =>
      edited(value, ['costs', 'changes', name, 'made'], { times, ...(from !== null && { from }) }),
    data.value,
  ),
});

import { leadTimeText } from '../../scenario/changes/lead-time.js';
import { namedChanges } from '../../scenario/changes/possible.js';
import type { Making, PossibleChange } from '../../scenario/types/possible.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { listOf, mapOf } from '../../scenario/values/raw.js';
import { count } from '../format.js';

/** A change that a scenario names, made or not, in words. */
export interface ListedChange {
  readonly name: string;
  /** `place: colour booth`, `2 edits` */
  readonly what: string;
  /** Money, once; null: not given. */
  readonly price: number | null;
  /** Money a day. */
  readonly day: number;
  /** `5 months`; null: at once. */
  readonly readyAfter: string | null;
  /** null: no limit. */
  readonly atMost: number | null;
  /** `yes`, `from 2027-12-01`, `3 times from 2027-09-06`; null: it is not made. */
  readonly made: string | null;
}
export interface ListedChanges {
  readonly currency: string;
  readonly changes: readonly ListedChange[];
}

/** The changes that a scenario names, in the planner's order. */
export const listedChanges = (scenario: Scenario): ListedChanges => ({
  currency: scenario.costs?.currency ?? '',
  changes: namedChanges(scenario).map((each) => {
    const { name, price = null, day, readyAfter, atMost, changes, made } = each;
    return {
      ...{ name, what: whatOf(each), price, day },
      readyAfter: readyAfter === undefined ? null : leadTimeText(readyAfter),
      atMost: changes === undefined ? (atMost ?? null) : 1,
      made: made === undefined ? null : madeText(made),
    };
  }),
});

function whatOf({ relief, changes }: PossibleChange): string {
  if (relief === undefined)
    return count(
      listOf(changes).reduce<number>((sum, edits) => sum + Object.keys(mapOf(edits)).length, 0),
      'edit',
    );
  const { kind, of, site, which } = relief;
  return `${kind}: ${[of, site, which].filter((each) => each !== undefined).join(', ')}`;
}

function madeText({ times, from }: Making): string {
  const often = times === 1 ? [] : [count(times, 'time')];
  return from === undefined ? (often[0] ?? 'yes') : [...often, `from ${from}`].join(' ');
}

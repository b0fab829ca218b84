import { leadTimeText } from '../../scenario/changes/lead-time.js';
import { madeIn } from '../../scenario/made/with-made.js';
import { findRelief } from '../../scenario/reliefs/named.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import type { Offer } from './offer.js';
import { type ChangeSet, PossibleChanges } from './sets.js';

/** Of the small changes that a scenario names, by their texts. */
export function offersOf(
  scenario: Scenario,
  possible = new PossibleChanges(scenario, undefined),
): Map<string, Offer> {
  const offers = new Map<string, Offer>();
  for (const { name, relief } of possible.all) {
    const text = relief && findRelief(scenario, relief).relief?.text;
    if (text !== undefined) offers.set(text, offerOf(possible, scenario, new Map([[name, 1]])));
  }
  return offers;
}

/**
 * What is known of what is made in a scenario and not in the base; undefined where nothing is, or where
 * something that is made in the base is not, or on another day.
 */
export function offerOfMade(base: Scenario, other: Scenario): Offer | undefined {
  const possible = new PossibleChanges(base, undefined),
    before = new Map(madeIn(base).map(({ change: { name }, ...making }) => [name, making])),
    added = new Map<string, number>();
  for (const {
    change: { name },
    times,
    from,
  } of madeIn(other)) {
    const its = before.get(name);
    before.delete(name);
    if (its !== undefined && (its.times > times || its.from !== from)) return undefined;
    if (times > (its?.times ?? 0)) added.set(name, times - (its?.times ?? 0));
  }
  return before.size > 0 || added.size === 0 ? undefined : offerOf(possible, base, added);
}

/** What is known of a set of changes. */
export function offerOf(
  possible: PossibleChanges,
  { programme: { quantity }, costs }: Scenario,
  set: ChangeSet,
): Offer {
  const { price, unpriced, day, readyAfter } = possible.terms(set),
    names = [...set.keys()],
    [name, ...others] = names,
    whole = unpriced.length > 0 ? null : price;
  return {
    names,
    currency: costs?.currency ?? '',
    price: whole,
    pricePerUnit: whole === null || quantity === undefined ? null : whole / quantity,
    day,
    readyAfter: readyAfter === undefined ? null : leadTimeText(readyAfter),
    atMost: others.length > 0 ? null : (possible.all.find((each) => each.name === name)?.atMost ?? null),
    needs: names.flatMap((each) =>
      [...possible.withRequired(each).keys()].filter((other) => !set.has(other)),
    ),
  };
}

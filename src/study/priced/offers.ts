import { leadTimeText } from '../../scenario/changes/lead-time.js';
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

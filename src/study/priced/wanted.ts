import { possibleOf } from '../../scenario/changes/possible.js';
import type { ScenarioData } from '../../scenario/data.js';
import { digest } from '../../scenario/digest.js';
import { withStanding } from '../../scenario/made/everywhere.js';
import type { PossibleChange } from '../../scenario/types/possible.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { defined } from '../lists.js';
import type { Relief } from '../reliefs/relief.js';
import { reliefsOf } from '../reliefs/small.js';
import { fingerprint } from '../run/identity.js';
import type { Offer } from './offer.js';
import { offerOf, offersOf } from './offers.js';
import { PossibleChanges } from './sets.js';

/**
 * All that `reliefs` tries of a scenario: the small changes that it makes itself, those that the scenario
 * names among them with their offers, then its bundles, and each change that needs others, with these.
 * @param data the scenario as data, without which bundles are left out
 * @param prepare done to a scenario after edits of its data, see `PossibleChanges`
 */
export function wantedOf(
  scenario: Scenario,
  data: ScenarioData | undefined,
  prepare: (scenario: Scenario) => Scenario,
): Relief[] {
  const small = reliefsOf(scenario),
    named = possibleOf(scenario);
  if (named.length === 0) return small;
  const possible = new PossibleChanges(scenario, data, prepare),
    offers = offersOf(scenario, possible);
  const own = named
    .filter(({ changes, requires }) => changes !== undefined || requires.length > 0)
    .filter(({ changes }) => changes === undefined || data !== undefined)
    .map((each): Relief => madeOf(possible, scenario, each));
  // A bundle may be one of the small changes, which is not tried twice.
  const known = own.length === 0 ? new Map<string, Relief>() : byDigest(scenario, small),
    apart = own.filter(({ change, offer }) => {
      const twin = known.get(digestOr(() => change(scenario)) ?? '');
      if (twin === undefined || offer == null || offers.has(twin.text)) return true;
      offers.set(twin.text, offer);
      return false;
    });
  return [...small.map((each) => withOffer(each, offers.get(each.text) ?? null)), ...apart];
}

/** What journals have to know of possible changes, since what is tried follows from it: not their prices. */
export const possibleFingerprint = (scenario: Scenario): string =>
  fingerprint(possibleOf(scenario).map((each) => ({ ...each, price: undefined, readyAfter: undefined })));

/**
 * What is known of each named change that can be made by itself, by the digest of the scenario with it alone,
 * but for its running price: that of a what-if which is the same change.
 */
export function offersByDigest(scenario: Scenario, data: ScenarioData | undefined): Map<string, Offer> {
  const possible = new PossibleChanges(scenario, data),
    offers = new Map<string, Offer>();
  for (const { name } of possible.all) {
    const set = new Map([[name, 1]]),
      key = digestOr(() => standingAs(possible.made(set), scenario));
    if (key !== undefined) offers.set(key, offerOf(possible, scenario, set));
  }
  return offers;
}

/** With the standing costs of another scenario that is there on the same days. */
const standingAs = (made: Scenario, other: Scenario): Scenario => ({
  ...made,
  costs: made.costs && { ...made.costs, standingDay: other.costs?.standingDay },
  ...(made.before && {
    before: made.before.map(({ until, scenario }, i) => ({
      until,
      scenario: standingAs(scenario, other.before?.[i]?.scenario ?? other),
    })),
  }),
});

/** With the running price of an offer in it. */
const withOffer = (relief: Relief, offer: Offer | null): Relief => ({
  ...relief,
  offer,
  change: (from) => withStanding(relief.change(from), offer?.day ?? 0),
});

function madeOf(possible: PossibleChanges, scenario: Scenario, { name }: PossibleChange): Relief {
  const set = possible.withRequired(name);
  return {
    kind: 'named change',
    text: [name, ...[...set.keys()].slice(0, -1)].map((each) => `“${each}”`).join(' and '),
    of: { kind: 'change', name, site: '' },
    offer: offerOf(possible, scenario, set),
    change: () => {
      const why = possible.forbidden(set);
      if (why !== null) throw new RangeError(why);
      return possible.made(set);
    },
  };
}

function byDigest(scenario: Scenario, reliefs: readonly Relief[]): ReadonlyMap<string, Relief> {
  return new Map(reliefs.map((each) => [defined(digestOr(() => each.change(scenario))), each]));
}

/** undefined where it cannot be made; why is said where it is tried. */
function digestOr(make: () => Scenario): string | undefined {
  try {
    return digest(make());
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

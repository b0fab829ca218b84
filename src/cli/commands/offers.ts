import type { Scenario } from '../../scenario/types/scenario.js';
import type { Change } from '../../scenario/what-ifs.js';
import type { Offer } from '../../study/priced/offer.js';

/** A scenario that edits made of another. */
interface Edited {
  readonly changes: readonly Change[];
  readonly scenario: Scenario;
}

/**
 * Prices of edits that are changes with a name in the scenario, or that make some and do nothing else, by the
 * digest of what they made; undefined where it names none.
 */
export async function offersOf(
  path: string,
  scenario: Scenario,
  all: readonly Edited[],
): Promise<Readonly<Record<string, Offer>> | undefined> {
  if ((scenario.costs?.changes ?? []).length === 0) return undefined;
  const { dataOf } = await import('../load.js');
  const { offersByDigest } = await import('../../study/priced/wanted.js');
  const { offerOfMade } = await import('../../study/priced/offers.js');
  const { digest } = await import('../../scenario/digest.js');
  const offers = offersByDigest(scenario, dataOf(path, scenario));
  for (const { changes, scenario: edited } of all) {
    const onlyMakes = changes.every(({ path: at }) => /^costs\.changes\..*\.made\b/.test(at)),
      offer = onlyMakes ? offerOfMade(scenario, edited) : undefined;
    if (offer !== undefined) offers.set(digest(edited), offer);
  }
  return Object.fromEntries(offers);
}

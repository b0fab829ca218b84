import { asEstimate, bounds, count, exact, intervalName } from '../format.js';
import { inUnit, type PlannersUnit, rateText } from '../planners-unit.js';
import type { CanShip, Shippable } from './evidence.js';
import type { KeptUp } from './keep-up.js';

/** What is known of a rate: whether builds keep up in the weeks judged, and what they can ship. */
export interface Holding extends KeptUp {
  /** Whether two cycles of each load go into the weeks. */
  readonly isWhole: boolean;
  /** null: it was not looked at. */
  readonly canShip: (Shippable & { readonly enough: CanShip }) | null;
}

/** Where what can be shipped is looked at apart, or was before. */
export const SHIPS_ENOUGH: Holding['canShip'] = { least: null, most: null, enough: 'yes' };

/**
 * A rate holds if surely enough builds keep up with it and they can surely ship as much in the long run. This
 * is the one meaning of the word, wherever it is said.
 */
export function holdingOf({ enough, canShip }: Holding): 'holds' | 'does not hold' | 'not settled' {
  if (enough === 'no' || canShip?.enough === 'no') return 'does not hold';
  return enough === 'yes' && canShip?.enough === 'yes' ? 'holds' : 'not settled';
}

/** `29 of 30 builds keep up`, and what stands against it that the rate holds. */
export function holdingText(holding: Holding, unit: PlannersUnit): string {
  const { keptUp, enough, isWhole, canShip } = holding,
    { count: kept, n } = keptUp,
    some = `${kept} of ${count(n, 'build')} keep${kept === 1 ? 's' : ''} up`;
  if (enough === 'no') return kept === 0 ? `none of ${count(n, 'build')} keeps up` : `only ${some}`;
  const digits = (perDay: number): number => Number(perDay.toPrecision(4)),
    rate = (perDay: number): string => rateText(digits(perDay), unit),
    { least = null, most = null } = canShip ?? {};
  if (canShip?.enough === 'no' && most !== null)
    return `${some}, but in the long run ${rate(most)} can be shipped at most`;
  if (!isWhole) return `${some}, but loads come too seldom for these weeks`;
  const isShipped = canShip === null || canShip.enough === 'yes';
  if (enough === 'open' && isShipped)
    return (
      `${some} (${intervalName(keptUp.level)} ${bounds(asEstimate(keptUp), 100)} %), too few builds ` +
      'to tell'
    );
  if (isShipped) return some;
  return most === null
    ? `${some}, but what can be shipped in the long run is not known`
    : `${some}, but what can be shipped in the long run is known only to lie from ` +
        `${exact(inUnit(digits(least ?? 0), unit))} to ${rate(most)}`;
}

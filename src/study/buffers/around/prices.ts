import type { Model } from '../../../flow/model/model.js';
import type { Observation } from '../../../measure/observe.js';
import { stationsOf } from '../../../scenario/lookup/placed.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { spacePrice } from '../../../scenario/whole/space-price.js';
import { defined } from '../../lists.js';
import { days, floorDay } from '../../sample/by-day.js';
import { FLOOR, pricedParts } from '../../sections/costs.js';
import { sum } from '../../statistics/sums.js';
import type { Layout, Spot } from '../spots.js';

/**
 * What one replication spent, without its floor: that differs between layouts in which all goes alike.
 */
export interface Spent {
  /** Money by part, 0 for the floor. */
  readonly parts: Float64Array;
  /** Days of the calendar, for the floor. */
  readonly days: number;
  /** Units; NaN where the replication stood still: it has no cost of a unit. */
  readonly shipped: number;
}

/** What layouts cost. */
export interface Prices {
  readonly currency: string;
  readonly parts: readonly string[];
  /** Money for a place of each spot for a day. */
  readonly places: readonly number[];
  /** Reads a replication of a layout, by its model. */
  readonly read: (model: Model) => (observation: Observation) => Spent;
  /** Money a unit by part, of a replication of a layout. */
  readonly partsOf: (layout: Layout, spent: Spent) => number[];
  /** Money a unit, as `simulate` tells it; NaN where there is none. */
  readonly of: (layout: Layout, spent: Spent) => number;
  /** Money a day for the places of the spots; null where they have no price. */
  readonly floorOf: (layout: Layout) => number | null;
}

/** Null where nothing has a price. */
export function pricesOf(scenario: Scenario, model: Model, spots: readonly Spot[]): Prices | null {
  const { costs } = scenario;
  if (costs === undefined) return null;
  const names = pricedParts(model, costs).map(({ name }) => name),
    floorAt = names.indexOf(FLOOR);
  if (names.length === 0) return null;
  const places = spots.map((spot) => spacePrice(costs, { ...spot, ...whereOf(scenario, spot) }));
  const floorFor = (layout: Layout): number =>
    sum(layout.map((count, s) => (count === 0 ? 0 : count * defined(places[s]))));
  const rest = floorDay(model, costs) - floorFor(spots.map(({ present }) => present));
  const partsOf: Prices['partsOf'] = (layout, spent) =>
    Array.from(
      spent.parts,
      (money, part) => (part === floorAt ? (rest + floorFor(layout)) * spent.days : money) / spent.shipped,
    );
  return {
    currency: costs.currency,
    parts: names,
    places,
    read: (its) => {
      const parts = pricedParts(its, costs);
      return (seen) => ({
        parts: Float64Array.from(parts, ({ name, of }) => (name === FLOOR ? 0 : of(seen))),
        days: days(seen),
        shipped: seen.outcome === 'gridlock' ? NaN : seen.shipped,
      });
    },
    partsOf,
    of: (layout, spent) => sum(partsOf(layout, spent)),
    floorOf: (layout) => (floorAt < 0 ? null : floorFor(layout)),
  };
}

function whereOf(
  scenario: Scenario,
  { kind, of }: Spot,
): { readonly kind: 'station' | 'bank' | 'arrival bank'; readonly site: string } {
  if (kind === 'buffer')
    return {
      kind: 'station',
      site: defined(stationsOf(scenario).get(of)).siteName,
    };
  const { from, to } = defined(scenario.lanes[of]);
  return { kind, site: kind === 'bank' ? from : to };
}

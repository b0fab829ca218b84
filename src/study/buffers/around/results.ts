import type { Estimate } from '../../statistics/estimate.js';
import type { Spot } from '../spots.js';

/**
 * By the whole interval of what is shipped more or less: `gains` and `loses` more than does not matter or
 * less, but surely something; `cliff`: loses at least three times what does not matter, or ships nothing in a
 * replication in which the chosen layout ships something, as in a standstill; `equal`: no more than does not
 * matter; `not told apart`: it holds 0.
 */
export type PlaceStanding = 'gains' | 'equal' | 'not told apart' | 'loses' | 'cliff';

/** The chosen layout with another number of places at one spot. */
export interface PlacePoint {
  readonly places: number;
  /** Places more than chosen; fewer, if negative. Never 0. */
  readonly by: number;
  /** What it ships, mean, in the unit of the study. */
  readonly rate: number;
  /** What it ships more than the chosen layout, paired. */
  readonly more: Estimate;
  readonly standing: PlaceStanding;
  /** Replications in which it ships nothing and the chosen layout something. */
  readonly nothingIn: number;
  /** What a unit costs more than in the chosen layout, paired; null without prices, or where one has none. */
  readonly cost: Estimate | null;
}

export interface PlacesAt extends Pick<Spot, 'name' | 'kind' | 'least'> {
  readonly chosen: number;
  /** By number of places, from the fewest. */
  readonly points: readonly PlacePoint[];
}

/** What each place of the chosen layout buys, spot by spot, all others as chosen. */
export interface PlaceByPlace {
  /** Fresh ones, those of the chosen layout among them. */
  readonly replications: number;
  /** Of each interval, so that all of them hold together with the level of the study (Bonferroni). */
  readonly eachLevel: number;
  /** What the chosen layout ships over these replications, mean. */
  readonly rate: number;
  readonly spots: readonly PlacesAt[];
  readonly leftOut: LeftOut | null;
}

/** Spots at which one place more or fewer changed less, in a first look with few replications. */
export interface LeftOut {
  readonly names: readonly string[];
  readonly replications: number;
  /** The most that a place changed there, in the unit of the study. */
  readonly most: number;
}

/** A layout with what a unit costs in it. */
export interface PricedLayout {
  readonly role: 'cheapest' | 'chosen' | 'best' | 'as it is' | 'other';
  readonly places: readonly number[];
  readonly total: number;
  /** Floor of these waiting places, a day; null where they have no price. */
  readonly floorPerDay: number | null;
  /** null where a replication stood still: it has no cost of a unit. */
  readonly cost: Estimate | null;
  /** Mean cost of a unit by part, in the order of `parts`. */
  readonly parts: readonly number[];
  /**
   * What a unit costs more than in the chosen layout, and what is shipped more, paired; null of itself, and
   * `dearer` where one of both has no cost.
   */
  readonly dearer: Estimate | null;
  readonly more: Estimate | null;
}

/** The layout of least cost a unit among those that do what is asked. */
export interface Cheapest {
  readonly currency: string;
  /** Fresh ones of each. */
  readonly replications: number;
  /** Of each interval, so that all hold together with the level of the study (Bonferroni). */
  readonly eachLevel: number;
  /** What has a price. */
  readonly parts: readonly string[];
  /**
   * Whether the cheapest found is the chosen one; costs as much, to within the zone, by the whole interval;
   * is cheaper by the whole interval; or neither is settled.
   */
  readonly verdict: 'chosen' | 'as cheap' | 'cheaper' | 'not told apart';
  readonly cheapest: PricedLayout;
  /** All that were compared, the cheapest among them, by mean cost. */
  readonly layouts: readonly PricedLayout[];
  /** How many layouts there are within the budget, where all were tried for it; null: they were not. */
  readonly within: number | null;
}

/** What lies around the chosen layout. */
export interface Around {
  /** null where no layout was chosen that does what is asked: it is out of reach. */
  readonly placeByPlace: PlaceByPlace | null;
  /** null without prices too. */
  readonly cheapest: Cheapest | null;
}

import { defined } from '../../lists.js';
import { leaps, less } from '../search/leaps.js';
import {
  areMany,
  byLoads,
  fewerPlaces,
  likelyToGain,
  likelyToSpare,
  morePlaces,
  together,
} from '../search/moves.js';
import { distinct, type Layout, placesOf, type Spot } from '../spots.js';
import type { Paired } from './paired.js';

/** Layouts looked at, at most: for each spot, and in all at least. */
const A_SPOT = 40,
  IN_ALL = 240;
/** Of those that a first look puts first, so many get all replications. */
const LEADING = 3;

interface Asked {
  /** The search. */
  readonly search: Paired;
  readonly spots: readonly Spot[];
  /** Units that come or go at once, by spot. */
  readonly loads: readonly number[];
  /** The most places in all; Infinity for a target. */
  readonly most: number;
  /** Whether a layout does what is asked, by what the search knows of it. */
  readonly allows: (layout: Layout) => boolean;
}

/**
 * Way down from a layout to one of less cost a unit. Places that no replication missed or used go at once;
 * then the change is made that saves most, by a place or a load at one spot; where none of these saves, at
 * two spots together; and where these do not either, by several places at once. With many spots all changes
 * that save, or half of them, are made together if that saves more.
 */
export class Descent {
  /** Layouts looked at. */
  looked = 0;

  constructor(private readonly asked: Asked) {}

  async from(layout: Layout): Promise<Layout> {
    const { search, spots } = this.asked,
      most = Math.max(IN_ALL, A_SPOT * spots.length);
    await search.trials.run([layout]);
    let lowest = await this.trimmed(layout);
    while (this.looked < most) {
      const next = await this.next(lowest);
      if (next === null) break;
      lowest = await this.trimmed(next);
    }
    return lowest;
  }

  /** The next layout down; null: there is none. */
  private async next(layout: Layout): Promise<Layout | null> {
    const { spots, loads, most, search } = this.asked,
      gaining = likelyToGain(search.trials, spots, layout),
      sparing = likelyToSpare(search.trials, spots, layout),
      singles = [
        ...fewerPlaces(spots, layout, sparing),
        ...morePlaces(layout, gaining),
        ...byLoads(spots, loads, layout, 1, Infinity, gaining),
        ...byLoads(spots, loads, layout, -1, 0, sparing),
      ];
    const near = await this.cheaper(layout, singles);
    if (near !== null || areMany(spots)) return near;
    return (
      (await this.cheaper(layout, pairsOf(layout, singles))) ??
      this.cheaper(layout, [
        ...less(spots, loads, layout),
        ...leaps(spots, loads, layout, most, {
          takes: this.cheapestFirst(layout, fewerPlaces(spots, layout)),
          gives: this.cheapestFirst(layout, morePlaces(layout)),
        }),
      ])
    );
  }

  /** The spots of these changes, by what few replications of them cost. */
  private cheapestFirst(layout: Layout, changed: readonly Layout[]): number[] {
    const { search } = this.asked,
      { few } = search.trials;
    return [...changed]
      .sort((a, b) => search.cost(a, few) - search.cost(b, few) || 0)
      .map((each) => spotOf(layout, each));
  }

  /** Without the places that nobody missed or used in any replication: all goes as before. */
  private async trimmed(layout: Layout): Promise<Layout> {
    const { search, spots } = this.asked,
      used = search.trials.used(layout).map((most, s) => Math.max(most, defined(spots[s]).least));
    await search.trials.run([used]);
    return search.cost(used) < search.cost(layout) ? used : layout;
  }

  /** The cheapest of the layouts, if it is cheaper than this one and does what is asked; null: none is. */
  private async cheaper(layout: Layout, others: readonly Layout[]): Promise<Layout | null> {
    const { search, allows, spots, most } = this.asked,
      { trials } = search,
      { few } = trials,
      within = others.filter((each) => placesOf(each) <= most);
    this.looked += within.length;
    await trials.run(within, few);
    const first = within
      .filter(allows)
      .map((each) => ({ each, saves: search.cost(layout, few) - search.cost(each, few) }))
      .filter(({ saves }) => saves > 0)
      .sort((a, b) => b.saves - a.saves)
      .map(({ each }) => each);
    const leading = distinct([
      ...(areMany(spots) ? [1, 0.5].map((part) => allTogether(layout, first, part)) : []),
      ...first.slice(0, LEADING),
    ]);
    await trials.run(leading);
    return leading
      .filter(allows)
      .reduce<Layout | null>(
        (best, each) => (search.cost(each) < search.cost(best ?? layout) ? each : best),
        null,
      );
  }
}

/** Each two changes at different spots together. */
function pairsOf(layout: Layout, singles: readonly Layout[]): Layout[] {
  return singles.flatMap((one, i) =>
    singles
      .slice(i + 1)
      .filter((other) => spotOf(layout, one) !== spotOf(layout, other))
      .map((other) => together(layout, one, other)),
  );
}

/** The better part of the changes together, the best of each spot; they come best first. */
function allTogether(layout: Layout, changed: readonly Layout[], part: number): Layout {
  const best = changed.filter(
    (each, i) => changed.findIndex((one) => spotOf(layout, one) === spotOf(layout, each)) === i,
  );
  return best
    .slice(0, Math.ceil(part * best.length))
    .reduce((sum, each) => together(layout, sum, each), layout);
}

/** The one spot at which a layout was changed. */
const spotOf = (layout: Layout, changed: Layout): number =>
  changed.findIndex((places, s) => places !== layout[s]);

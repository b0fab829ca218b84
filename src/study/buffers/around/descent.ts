import type { Scenario } from '../../../scenario/types/scenario.js';
import { defined } from '../../lists.js';
import { distinct, type Layout, type Spot } from '../spots.js';
import type { Paired } from './paired.js';

/** Up to so many spots, changes at two of them at once are tried too. */
const PAIRS = 6;
/** Layouts looked at, at most: for each spot, and in all at least. */
const A_SPOT = 40,
  IN_ALL = 240;
/** Of those that a first look puts first, so many get all replications. */
const LEADING = 3;

interface Asked {
  readonly scenario: Scenario;
  /** The search. */
  readonly search: Paired;
  readonly spots: readonly Spot[];
  /** Whether a layout does what is asked, by what the search knows of it. */
  readonly allows: (layout: Layout) => boolean;
}

/**
 * Way down from a layout to one of less cost a unit. Places that no replication missed or used go at once;
 * then the change is made that saves most, by a place or a truck's load at one spot, or, where none of these
 * saves, at two spots together. With many spots all changes that save, or half of them, are made together if
 * that saves more.
 */
export class Descent {
  /** Layouts looked at. */
  looked = 0;
  private readonly steps: readonly (readonly number[])[];

  constructor(private readonly asked: Asked) {
    this.steps = asked.spots.map((spot) => stepsAt(asked.scenario, spot));
  }

  async from(layout: Layout): Promise<Layout> {
    const { search, spots } = this.asked,
      most = Math.max(IN_ALL, A_SPOT * spots.length);
    await search.trials.run([layout]);
    let lowest = await this.trimmed(layout);
    while (this.looked < most) {
      const singles = this.singles(lowest),
        next =
          (await this.cheaper(lowest, singles)) ??
          (spots.length > PAIRS ? null : await this.cheaper(lowest, pairsOf(lowest, singles)));
      if (next === null) break;
      lowest = await this.trimmed(next);
    }
    return lowest;
  }

  /** Without the places that nobody missed or used in any replication: all goes as before. */
  private async trimmed(layout: Layout): Promise<Layout> {
    const { search, spots } = this.asked,
      known = search.trials.of(layout);
    const used = layout.map((places, s) => {
      const most = Math.max(...known.map(({ alike }) => defined(alike[s])));
      return Math.min(places, Math.max(most, defined(spots[s]).least));
    });
    await search.trials.run([used]);
    return search.cost(used) < search.cost(layout) ? used : layout;
  }

  /** The cheapest of the layouts, if it is cheaper than this one and does what is asked; null: none is. */
  private async cheaper(layout: Layout, others: readonly Layout[]): Promise<Layout | null> {
    const { search, allows } = this.asked,
      { trials } = search,
      { few } = trials;
    this.looked += others.length;
    await trials.run(others, few);
    const first = others
      .filter(allows)
      .map((each) => ({ each, saves: search.cost(layout, few) - search.cost(each, few) }))
      .filter(({ saves }) => saves > 0)
      .sort((a, b) => b.saves - a.saves)
      .map(({ each }) => each);
    const leading = distinct([
      ...(this.asked.spots.length > PAIRS ? [1, 0.5].map((part) => together(layout, first, part)) : []),
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

  private singles(layout: Layout): Layout[] {
    return layout.flatMap((places, s) =>
      defined(this.steps[s])
        .filter((by) => places + by >= defined(this.asked.spots[s]).least)
        .map((by) => layout.with(s, places + by)),
    );
  }
}

/** A place more or fewer; at a bank also a load of its trucks. */
function stepsAt({ lanes }: Scenario, { kind, of }: Spot): number[] {
  const load = kind === 'buffer' ? 1 : (lanes[of]?.capacity ?? 1);
  return load > 1 ? [-1, 1, -load, load] : [-1, 1];
}

/** Each two changes at different spots together. */
function pairsOf(layout: Layout, singles: readonly Layout[]): Layout[] {
  return singles.flatMap((one, i) =>
    singles
      .slice(i + 1)
      .filter((other) => layout.every((places, s) => one[s] === places || other[s] === places))
      .map((other) => both(layout, one, other)),
  );
}

/** The better part of the changes together, the best of each spot; they come best first. */
function together(layout: Layout, changed: readonly Layout[], part: number): Layout {
  const spotOf = (each: Layout): number => each.findIndex((places, s) => places !== layout[s]),
    best = changed.filter((each, i) => changed.findIndex((one) => spotOf(one) === spotOf(each)) === i);
  return best.slice(0, Math.ceil(part * best.length)).reduce((sum, each) => both(layout, sum, each), layout);
}

const both = (layout: Layout, one: Layout, other: Layout): Layout =>
  layout.map((places, s) => defined(one[s]) + defined(other[s]) - places);

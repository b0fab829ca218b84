import type { Layout } from '../spots.js';

/** What a layout is ordered by: the highest first. `over`: so many replications of it are to be looked at. */
export type Worth = (layout: Layout, over: number) => number;

/** Layouts with what they are worth by replication: in one scenario, or in several at once. */
export abstract class Tried {
  /** Replications of each layout in all. */
  abstract readonly most: number;

  /** Runs what is missing of the first `to` replications of each layout. */
  abstract run(layouts: readonly Layout[], to?: number): Promise<void>;

  /** What is known of a layout, by replication. */
  abstract values(layout: Layout): readonly number[];

  /** @param over so many replications, the first ones; all where left out */
  abstract mean(layout: Layout, over?: number): number;

  /** Layouts with all replications, the best first; the first tried of equal ones. */
  abstract ranked(): Layout[];

  /** Layouts tried, with few or all replications. */
  abstract readonly tried: number;

  /** The most units that were ever in each spot of a layout; its places where somebody lacked room. */
  abstract used(layout: Layout): number[];

  /** By spot: units that wait, on average, in the end for a space there, by what is known of a layout. */
  abstract lacking(layout: Layout): number[];

  /** By spot: units in it, on average. */
  abstract inside(layout: Layout): number[];

  /**
   * The best `count` of the layouts by their means, or by what `worth` makes of them, the first of equal
   * ones: all get a quarter of the replications, and the better quarter of them, three at the least, the
   * rest.
   */
  async best(layouts: readonly Layout[], count: number, worth: Worth = this.worth): Promise<Layout[]> {
    const leading = await this.leading(layouts, Math.max(3, count, Math.ceil(layouts.length / 4)), worth);
    await this.run(leading);
    return ordered(leading, (each) => worth(each, this.most)).slice(0, count);
  }

  /** The `count` that a quarter of the replications, three at the least, puts first. */
  async leading(layouts: readonly Layout[], count: number, worth: Worth = this.worth): Promise<Layout[]> {
    await this.run(layouts, this.few);
    return ordered(layouts, (each) => worth(each, this.few)).slice(0, count);
  }

  /** Replications of a first look: a quarter, three at the least. */
  get few(): number {
    return Math.min(this.most, Math.max(3, Math.ceil(this.most / 4)));
  }

  private readonly worth: Worth = (layout, over) => this.mean(layout, over);
}

/**
 * Sorted by what cannot be ordered otherwise than by its value; the order in which they come decides between
 * equal ones.
 */
export function ordered(layouts: readonly Layout[], valueOf: (layout: Layout) => number): Layout[] {
  return layouts
    .map((layout) => ({ layout, value: valueOf(layout) }))
    .sort((a, b) => b.value - a.value)
    .map(({ layout }) => layout);
}

import { defined } from '../../lists.js';
import { type Layout, placesOf, type Spot } from '../spots.js';
import { areMany, byLoads, fewerPlaces, likelyToGain, likelyToSpare, morePlaces } from './moves.js';
import type { Tried, Worth } from './tried.js';

/**
 * So large a part of what is missing is handed out at once, after one reading of the gains; and of many spots
 * a place at least for so many.
 */
const PORTION = 8,
  PORTION_OF_MANY = 3,
  SPOTS_A_PLACE = 12;

/**
 * Walks from a layout to one with more or fewer places by finite differences (Gershwin & Schor 2000, Annals
 * of Operations Research 93, 117-144; from memory): the gain of a spot is the throughput with one place more
 * there, less that without, under common random numbers. A load of a truck or a lot is a step too, by its
 * gain for each place.
 */
export class Walk {
  private readonly hasMany: boolean;

  /** @param told after each step how many are left */
  constructor(
    private readonly trials: Tried,
    private readonly spots: readonly Spot[],
    private readonly loads: readonly number[],
    private readonly told?: (left: number) => void,
  ) {
    this.hasMany = areMany(spots);
  }

  /** From a layout to one of as many places in all, or until `enough` says so. */
  async walk(from: Layout, to: number, enough: (layout: Layout) => boolean): Promise<Layout> {
    let layout = from;
    for (;;) {
      await this.trials.run([layout]);
      if (placesOf(layout) === to || enough(layout)) return layout;
      layout = placesOf(layout) < to ? await this.more(layout, to) : await this.fewer(layout, to);
      this.told?.(this.stepsLeft(placesOf(layout), to));
    }
  }

  /**
   * How many places are handed out, or taken away, after one reading: an endless goal is closed in on by
   * parts of what there is already.
   */
  private portion(layout: Layout, to: number): number {
    return this.portionOf(Number.isFinite(to) ? Math.abs(to - placesOf(layout)) : placesOf(layout));
  }

  private portionOf(missing: number): number {
    return Math.max(
      1,
      Math.min(
        missing,
        Math.max(
          Math.floor(missing / (this.hasMany ? PORTION_OF_MANY : PORTION)),
          Math.floor(this.spots.length / SPOTS_A_PLACE),
        ),
      ),
    );
  }

  /** Steps of a walk from so many places to others, about; to an endless goal nobody knows. */
  private stepsLeft(places: number, to: number): number {
    if (!Number.isFinite(to)) return 0;
    let steps = 0;
    for (let missing = Math.abs(to - places); missing > 0; steps++)
      missing -= places < to || this.hasMany ? this.portionOf(missing) : 1;
    return steps;
  }

  private async more(layout: Layout, to: number): Promise<Layout> {
    const { trials, spots, loads } = this,
      among = likelyToGain(trials, spots, layout),
      portion = this.portion(layout, to),
      ends = Math.min(portion, this.hasMany ? among.length : Math.ceil(spots.length / 2)),
      each = Math.floor(portion / ends);
    const steps = [...morePlaces(layout, among), ...byLoads(spots, loads, layout, 1, to, among)];
    return this.sum(layout, to, each, await this.first(layout, steps, ends));
  }

  private async fewer(layout: Layout, to: number): Promise<Layout> {
    const { trials, spots, loads } = this,
      spare = this.hasMany ? this.withoutSpare(layout, to) : layout;
    if (placesOf(spare) < placesOf(layout)) return spare;
    const among = likelyToSpare(trials, spots, layout),
      portion = this.hasMany ? this.portion(layout, to) : 1,
      steps = [...fewerPlaces(spots, layout, among), ...byLoads(spots, loads, layout, -1, to, among)];
    return this.sum(layout, to, 1, await this.first(layout, steps, portion));
  }

  /** Without places that no replication missed or used, for as long as there are too many. */
  private withoutSpare(layout: Layout, to: number): Layout {
    const used = this.trials.used(layout);
    let left = placesOf(layout) - to;
    return layout.map((places, s) => {
      const spare = Math.min(left, places - Math.max(defined(used[s]), defined(this.spots[s]).least));
      left -= spare;
      return places - spare;
    });
  }

  /**
   * All steps together, the best first, one at a spot, for as long as they do not lead beyond `to`; one place
   * stands for so many.
   */
  private sum(layout: Layout, to: number, one: number, steps: readonly Layout[]): Layout {
    const by = placesOf(layout) < to ? 1 : -1,
      left = (from: Layout): number => by * (to - placesOf(from));
    return steps.reduce((sum, step) => {
      const at = step.findIndex((places, s) => places !== layout[s]),
        size = by * (defined(step[at]) - defined(layout[at])),
        next = sum.map((places, s) => (s === at ? places + by * (size === 1 ? one : size) : places));
      return sum[at] === layout[at] && left(next) >= 0 ? next : sum;
    }, layout);
  }

  /**
   * For several of many spots at once a first look is enough: what is wrong with them is mended by the moves
   * that follow.
   */
  private async first(layout: Layout, steps: readonly Layout[], count: number): Promise<Layout[]> {
    const { trials } = this;
    const perPlace: Worth = (step, over) => {
      const gain = trials.mean(step, over) - trials.mean(layout, over),
        by = placesOf(step) - placesOf(layout);
      return gain > 0 || by < 0 ? gain / Math.abs(by) : gain;
    };
    return this.hasMany && count > 1
      ? trials.leading(steps, count, perPlace)
      : trials.best(steps, count, perPlace);
  }
}

import { defined } from '../../lists.js';
import { type Layout, placesOf, type Spot } from '../spots.js';
import { fewerPlaces, isEvener, morePlaces, together } from './moves.js';
import type { Trials } from './trials.js';

/**
 * All moves of one place are tried up to so many spots; with more, those between the spots that lose least
 * and gain most.
 */
const ALL_MOVES = 6,
  MOST_ENDS = 4;
/**
 * So large a part of what is missing is handed out at once, after one reading of the gains; and of many spots
 * a place at least for so many.
 */
const PORTION = 8,
  PORTION_OF_MANY = 4,
  SPOTS_A_PLACE = 12;
/**
 * With many spots, this part of them is looked at again for the next move, until none of them gains any more.
 */
const NEAR = 4;
const MOST_MOVES = 50;

/** By end of a move: layouts with a place fewer and with a place more, or their spots. */
interface Ends<Of> {
  readonly takes: readonly Of[];
  readonly gives: readonly Of[];
}

/**
 * Search for good layouts by finite differences (Gershwin & Schor 2000, Annals of Operations Research 93,
 * 117-144; from memory): the gain of a spot is the throughput with one place more there, less that without,
 * under common random numbers.
 */
export class Search {
  /**
   * @param worth relative gain below which a place is not moved: it would be chance
   * @param told after each step of a walk how many are left
   */
  constructor(
    private readonly trials: Trials,
    private readonly spots: readonly Spot[],
    private readonly worth: number,
    private readonly told?: (left: number) => void,
  ) {}

  /**
   * From a layout to one of as many places in all, or until `enough` says so: places go where they gain most,
   * or come from where they lose least.
   */
  async walk(from: Layout, to: number, enough: (layout: Layout) => boolean = () => false): Promise<Layout> {
    let layout = from;
    for (;;) {
      await this.trials.run([layout]);
      if (placesOf(layout) === to || enough(layout)) return layout;
      layout = placesOf(layout) < to ? await this.more(layout, to) : await this.fewer(layout, to);
      this.told?.(this.stepsLeft(placesOf(layout), to));
    }
  }

  /**
   * Moves one place from one spot to another for as long as that gains: best neighbour first; or until
   * `enough` says so.
   */
  async exchange(from: Layout, enough: (layout: Layout) => boolean = () => false): Promise<Layout> {
    const { trials } = this;
    let layout = from,
      near: Ends<number> | null = null;
    await trials.run([layout]);
    for (let moves = 0; moves < MOST_MOVES && !enough(layout); ) {
      const { takes, gives } = await this.ends(layout, near);
      const neighbours = takes
        .flatMap((less) => gives.map((more) => together(layout, less, more)))
        .filter((each) => each.join() !== layout.join());
      const [best] = await trials.best(neighbours, 1);
      if (best !== undefined && trials.mean(best) > (1 + this.worth) * trials.mean(layout)) {
        near = this.hasMany ? (near ?? (await this.nearest(layout))) : null;
        layout = best;
        moves++;
      } else if (near === null) return layout;
      else near = null;
    }
    return layout;
  }

  /**
   * Moves one place at a time to an emptier spot for as long as that loses nothing, or so little that a place
   * would not be moved back for it. Many spots are left as they are: it would cost more than the search.
   */
  async evened(from: Layout, reaches: (layout: Layout) => boolean = () => true): Promise<Layout> {
    const { trials } = this,
      floor = trials.mean(from) / (1 + this.worth);
    let layout = from;
    for (let moves = 0; moves < MOST_MOVES && !this.hasMany; moves++) {
      const { takes, gives } = await this.ends(layout, null);
      const evener = takes
        .flatMap((less) => gives.map((more) => together(layout, less, more)))
        .filter((each) => isEvener(each, layout));
      const [best] = await trials.best(evener, 1);
      if (best === undefined || trials.mean(best) < floor || !reaches(best)) return layout;
      layout = best;
    }
    return layout;
  }

  /** Whether there are too many spots to try every move of a place. */
  get hasMany(): boolean {
    return this.spots.length > ALL_MOVES;
  }

  /** All ends of a move; with many spots the best of them, or of those near. */
  private async ends(layout: Layout, near: Ends<number> | null): Promise<Ends<Layout>> {
    const takes = fewerPlaces(this.spots, layout, near?.takes),
      gives = morePlaces(layout, near?.gives);
    if (!this.hasMany) return { takes, gives };
    return {
      takes: await this.trials.best(takes, MOST_ENDS),
      gives: await this.trials.best(gives, MOST_ENDS),
    };
  }

  /** The spots that lose least and those that gain most, by what is known of all. */
  private async nearest(layout: Layout): Promise<Ends<number>> {
    const spots = async (ends: readonly Layout[]): Promise<number[]> =>
      (await this.trials.leading(ends, Math.ceil(this.spots.length / NEAR)))
        .map((each) => each.findIndex((places, s) => places !== layout[s]))
        .sort((a, b) => a - b);
    return { takes: await spots(fewerPlaces(this.spots, layout)), gives: await spots(morePlaces(layout)) };
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
    const portion = this.portion(layout, to),
      ends = Math.min(portion, Math.ceil(this.spots.length / 2)),
      each = Math.floor(portion / ends);
    const best = await this.first(morePlaces(layout), ends);
    return layout.map((old, s) => old + (best.some((one) => defined(one[s]) > old) ? each : 0));
  }

  private async fewer(layout: Layout, to: number): Promise<Layout> {
    const portion = this.hasMany ? this.portion(layout, to) : 1,
      best = await this.first(fewerPlaces(this.spots, layout), portion);
    return best.reduce((sum, one) => together(layout, sum, one), layout);
  }

  /**
   * For several of many spots at once a first look is enough: what is wrong with them is mended by the moves
   * that follow.
   */
  private async first(ends: readonly Layout[], count: number): Promise<Layout[]> {
    return this.hasMany && count > 1 ? this.trials.leading(ends, count) : this.trials.best(ends, count);
  }
}

import { defined } from '../lists.js';
import { type Layout, placesOf, type Spot } from './spots.js';
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

/** Layouts with a place fewer and with a place more. */
interface Ends {
  readonly takes: readonly Layout[];
  readonly gives: readonly Layout[];
}
/** By end of a move, which spots are looked at. */
interface Spots {
  readonly takes: readonly number[];
  readonly gives: readonly number[];
}

const changed = (layout: Layout, spot: number, by: number): number[] =>
  layout.map((places, s) => (s === spot ? places + by : places));
/** Both changes, one after the other. */
const together = (layout: Layout, one: Layout, other: Layout): number[] =>
  layout.map((places, s) => defined(one[s]) + defined(other[s]) - places);

/**
 * Search for good layouts by finite differences (Gershwin & Schor 2000, Annals of Operations Research 93,
 * 117-144; from memory): the gain of a spot is the throughput with one place more there, less that without,
 * under common random numbers.
 */
export class Search {
  /** @param worth relative gain below which a place is not moved: it would be chance */
  constructor(
    private readonly trials: Trials,
    private readonly spots: readonly Spot[],
    private readonly worth: number,
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
    }
  }

  /**
   * Moves one place from one spot to another for as long as that gains: best neighbour first; or until
   * `enough` says so.
   */
  async exchange(from: Layout, enough: (layout: Layout) => boolean = () => false): Promise<Layout> {
    const { trials } = this;
    let layout = from,
      near: Spots | null = null;
    await trials.run([layout]);
    for (let moves = 0; moves < MOST_MOVES && !enough(layout); ) {
      const ends: Ends = this.hasMany
        ? await this.bestEnds(layout, near)
        : { takes: this.takes(layout), gives: this.gives(layout) };
      const neighbours = ends.takes
        .flatMap((less) => ends.gives.map((more) => together(layout, less, more)))
        .filter((each) => each.join() !== layout.join());
      const [best] = neighbours.length === 0 ? [] : await trials.best(neighbours, 1);
      if (best !== undefined && trials.mean(best) > (1 + this.worth) * trials.mean(layout)) {
        near = this.hasMany ? (near ?? (await this.nearest(layout))) : null;
        layout = best;
        moves++;
      } else if (near === null) return layout;
      else near = null;
    }
    return layout;
  }

  private get hasMany(): boolean {
    return this.spots.length > ALL_MOVES;
  }

  private takes(layout: Layout): Layout[] {
    return this.spots.flatMap(({ least }, s) => (defined(layout[s]) > least ? [changed(layout, s, -1)] : []));
  }

  private gives(layout: Layout): Layout[] {
    return this.spots.map((_, s) => changed(layout, s, 1));
  }

  /** The best ends of a move, of all or of the spots given. */
  private async bestEnds(layout: Layout, spots: Spots | null): Promise<Ends> {
    const best = async (ends: readonly Layout[], some: readonly number[] | undefined): Promise<Layout[]> =>
      this.trials.best(
        ends.filter((each) => some === undefined || some.some((s) => each[s] !== layout[s])),
        MOST_ENDS,
      );
    return {
      takes: await best(this.takes(layout), spots?.takes),
      gives: await best(this.gives(layout), spots?.gives),
    };
  }

  /** The spots that lose least and those that gain most, by what is known of all. */
  private async nearest(layout: Layout): Promise<Spots> {
    const spots = async (ends: readonly Layout[]): Promise<number[]> =>
      (await this.trials.leading(ends, Math.ceil(this.spots.length / NEAR))).map((each) =>
        each.findIndex((places, s) => places !== layout[s]),
      );
    return { takes: await spots(this.takes(layout)), gives: await spots(this.gives(layout)) };
  }

  /**
   * How many places are handed out, or taken away, after one reading: an endless goal is closed in on by
   * parts of what there is already.
   */
  private portion(layout: Layout, to: number): number {
    const missing = Number.isFinite(to) ? Math.abs(to - placesOf(layout)) : placesOf(layout);
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

  private async more(layout: Layout, to: number): Promise<Layout> {
    const portion = this.portion(layout, to),
      ends = Math.min(portion, Math.ceil(this.spots.length / 2)),
      each = Math.floor(portion / ends);
    const best = await this.first(this.gives(layout), ends);
    return layout.map((old, s) => old + (best.some((one) => defined(one[s]) > old) ? each : 0));
  }

  private async fewer(layout: Layout, to: number): Promise<Layout> {
    const portion = this.hasMany ? this.portion(layout, to) : 1,
      best = await this.first(this.takes(layout), portion);
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

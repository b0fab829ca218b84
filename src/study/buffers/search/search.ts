import { defined } from '../../lists.js';
import { type Layout, type Spot } from '../spots.js';
import { fewLeaps, leaps, less, type Order } from './leaps.js';
import {
  areMany,
  fewerPlaces,
  isEvener,
  likelyToGain,
  likelyToSpare,
  morePlaces,
  together,
} from './moves.js';
import type { Tried } from './tried.js';
import { Walk } from './walk.js';

/** Of many spots a place is moved between so many that lose least and that gain most. */
const MOST_ENDS = 4;
const MOST_MOVES = 50,
  MOST_LEAPS = 12;

/** By end of a move: layouts with a place fewer and with a place more. */
interface Ends {
  readonly takes: readonly Layout[];
  readonly gives: readonly Layout[];
}
const never = (): boolean => false;

/** Search for good layouts: walks, moves of one place, leaps of several. */
export class Search {
  private readonly walker: Walk;

  /**
   * @param worth relative gain below which a place is not moved: it would be chance
   * @param loads units that come or go at once, by spot
   * @param told after each step of a walk how many are left
   */
  constructor(
    private readonly trials: Tried,
    private readonly spots: readonly Spot[],
    readonly worth: number,
    private readonly loads: readonly number[] = spots.map(() => 1),
    told?: (left: number) => void,
  ) {
    this.walker = new Walk(trials, spots, loads, told);
  }

  /**
   * From a layout to one of as many places in all, or until `enough` says so: places go where they gain most,
   * or come from where they lose least.
   */
  walk(from: Layout, to: number, enough: (layout: Layout) => boolean = never): Promise<Layout> {
    return this.walker.walk(from, to, enough);
  }

  /**
   * Moves and leaps for as long as that gains, or until `enough` says so: when no move of one place gains any
   * more, one of several places may lead across a valley.
   * @param most places in all
   */
  async climb(from: Layout, most: number, enough: (layout: Layout) => boolean = never): Promise<Layout> {
    let layout = await this.exchange(from, enough);
    for (let made = 0; made < MOST_LEAPS && !enough(layout); made++) {
      const next = await this.leap(layout, most);
      if (next === null) break;
      layout = await this.exchange(next, enough);
    }
    return layout;
  }

  /**
   * Moves one place from one spot to another for as long as that gains: best neighbour first; or until
   * `enough` says so.
   */
  async exchange(from: Layout, enough: (layout: Layout) => boolean = never): Promise<Layout> {
    const { trials } = this;
    let layout = from;
    await trials.run([layout]);
    for (let moves = 0; moves < MOST_MOVES && !enough(layout); moves++) {
      const neighbours = (await this.moved(layout)).filter((each) => each.join() !== layout.join());
      const [best] = await trials.best(neighbours, 1);
      if (best === undefined || !this.gains(best, layout)) return layout;
      layout = best;
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
      const evener = (await this.moved(layout)).filter((each) => isEvener(each, layout));
      const [best] = await trials.best(evener, 1);
      if (best === undefined || trials.mean(best) < floor || !reaches(best)) return layout;
      layout = best;
    }
    return layout;
  }

  /** The best layout several places away that gains; null: none does. */
  async leap(layout: Layout, most: number): Promise<Layout | null> {
    const order = await this.order(layout),
      far = this.hasMany
        ? fewLeaps(this.spots, this.loads, layout, order, order.gives.slice(0, MOST_ENDS))
        : leaps(this.spots, this.loads, layout, most, order),
      [best] = await this.trials.best(far, 1);
    return best !== undefined && this.gains(best, layout) ? best : null;
  }

  /** A layout with fewer places, several places away, that reaches it all the same; null: none was found. */
  async fewerByLeap(layout: Layout, places: number, reaches: (l: Layout) => boolean): Promise<Layout | null> {
    if (this.hasMany) return null;
    const far = [
      ...less(this.spots, this.loads, layout),
      ...leaps(this.spots, this.loads, layout, places, await this.order(layout)),
    ];
    return (await this.trials.best(far, Math.ceil(far.length / 4))).find(reaches) ?? null;
  }

  /** Whether there are too many spots to try every move of a place. */
  get hasMany(): boolean {
    return areMany(this.spots);
  }

  private gains(one: Layout, other: Layout): boolean {
    return this.trials.mean(one) > (1 + this.worth) * this.trials.mean(other);
  }

  /** Spots by what few replications tell of a place fewer, and of one more. */
  private async order(layout: Layout): Promise<Order> {
    const { takes, gives } = this.possible(layout);
    const spots = async (ends: readonly Layout[]): Promise<number[]> =>
      (await this.trials.leading(ends, ends.length)).map((each) =>
        each.findIndex((places, s) => places !== layout[s]),
      );
    return { takes: await spots(takes), gives: await spots(gives) };
  }

  /** With a place moved from one spot to another; of many spots also with several moved at once. */
  private async moved(layout: Layout): Promise<Layout[]> {
    const { takes, gives } = await this.ends(layout),
      single = takes.flatMap((one) => gives.map((more) => together(layout, one, more)));
    return this.hasMany ? [...several(layout, takes, gives), ...single] : single;
  }

  /** All ends of a move; with many spots the best of those that may be. */
  private async ends(layout: Layout): Promise<Ends> {
    const { takes, gives } = this.possible(layout);
    if (!this.hasMany) return { takes, gives };
    return {
      takes: await this.trials.leading(takes, MOST_ENDS),
      gives: await this.trials.leading(gives, MOST_ENDS),
    };
  }

  private possible(layout: Layout): Ends {
    const { trials, spots } = this;
    return {
      takes: fewerPlaces(spots, layout, likelyToSpare(trials, spots, layout)),
      gives: morePlaces(layout, likelyToGain(trials, spots, layout)),
    };
  }
}

/** The best two, three .. ends of either sort together, each spot once. */
function several(layout: Layout, takes: readonly Layout[], gives: readonly Layout[]): Layout[] {
  const all: Layout[] = [];
  let sum = layout;
  for (let i = 0; i < Math.min(takes.length, gives.length); i++) {
    const [one, more] = [defined(takes[i]), defined(gives[i])];
    sum = together(layout, sum, together(layout, one, more));
    if (i > 0) all.push(sum);
  }
  return all;
}

import { placesOf, type Layout, type Spot } from './buffers-spots.js';
import type { Trials } from './buffers-trials.js';

/** All moves of one place are tried up to so many spots; with more, those between the spots that lose least and gain most. */
const ALL_MOVES = 6, MOST_ENDS = 4;
/** So large a part of what is missing is handed out at once, after one reading of the gains. */
const PORTION = 8;
const MOST_MOVES = 50;

const changed = (layout: Layout, spot: number, by: number): number[] => layout.map((places, s) => (s === spot ? places + by : places));

/**
 * Search for good layouts by finite differences (Gershwin & Schor 2000, Annals of Operations Research 93, 117-144; from memory):
 * the gain of a spot is the throughput with one place more there, less that without, under common random numbers.
 */
export class Search {
  /** @param worth relative gain below which a place is not moved: it would be chance */
  constructor(private readonly trials: Trials, private readonly spots: readonly Spot[], private readonly worth: number) {}

  /** From a layout to one of as many places in all, or until `enough` says so: places go where they gain most, or come from where they lose least. */
  async walk(from: Layout, to: number, enough: (layout: Layout) => boolean = () => false): Promise<Layout> {
    let layout = from;
    for (await this.trials.run([layout]); placesOf(layout) !== to && !enough(layout); await this.trials.run([layout])) {
      layout = placesOf(layout) < to ? await this.more(layout, to) : (await this.trials.best(this.fewer(layout), 1))[0]!;
    }
    return layout;
  }

  /** Moves one place from one spot to another for as long as that gains: best neighbour first; or until `enough` says so. */
  async exchange(from: Layout, enough: (layout: Layout) => boolean = () => false): Promise<Layout> {
    let layout = from;
    await this.trials.run([layout]);
    for (let moves = 0; moves < MOST_MOVES && !enough(layout); moves++) {
      const neighbours = await this.neighbours(layout);
      const [best] = neighbours.length === 0 ? [] : await this.trials.best(neighbours, 1);
      if (best === undefined || this.trials.mean(best) <= (1 + this.worth) * this.trials.mean(layout)) return layout;
      layout = best;
    }
    return layout;
  }

  /** An endless goal is closed in on by parts of what there is already. */
  private async more(layout: Layout, to: number): Promise<Layout> {
    const places = placesOf(layout), portion = Math.max(1, Math.floor((Number.isFinite(to) ? to - places : places) / PORTION));
    const ends = Math.min(portion, Math.ceil(this.spots.length / 2)), each = Math.floor(portion / ends);
    const best = await this.trials.best(this.spots.map((_, s) => changed(layout, s, 1)), ends);
    return layout.map((old, s) => old + (best.some((one) => one[s]! > old) ? each : 0));
  }

  private fewer(layout: Layout): Layout[] {
    return this.spots.flatMap(({ least }, s) => (layout[s]! > least ? [changed(layout, s, -1)] : []));
  }

  private async neighbours(layout: Layout): Promise<Layout[]> {
    const { spots, trials } = this;
    const takes = this.fewer(layout), gives = spots.map((_, s) => changed(layout, s, 1));
    const all = spots.length <= ALL_MOVES;
    const from = all ? takes : takes.length === 0 ? [] : await trials.best(takes, MOST_ENDS), to = all ? gives : await trials.best(gives, MOST_ENDS);
    return from.flatMap((less) => to.map((more) => layout.map((places, s) => less[s]! + more[s]! - places))).filter((each) => each.some((places, s) => places !== layout[s]));
  }
}

import type { Model } from '../../../flow/model/model.js';
import type { Observation } from '../../../measure/observe.js';
import { compile } from '../../../scenario/compile.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { withRoom } from '../../../scenario/whole/room.js';
import { defined } from '../../lists.js';
import type { Replicator, Variant } from '../../run/replicator.js';
import { mean } from '../../statistics/sums.js';
import { type Layout, type Spot, withLayout } from '../spots.js';
import { isAlike, type Trial } from './trial.js';
import { ordered, Tried } from './tried.js';

/**
 * Layouts under way at a time, so that threads have something to do while the last replication of one goes
 * on.
 */
const AT_ONCE = 2;

/** What is the same for all layouts. */
export interface Setting {
  readonly scenario: Scenario;
  /** Of the scenario. */
  readonly model: Model;
  /** Tells its layouts from those of other scenarios of the study; left out for the first. */
  readonly name?: string | undefined;
  readonly spots: readonly Spot[];
  /** Reads the replications of a layout, by its model. */
  readonly read: (model: Model) => (observation: Observation) => Trial;
}

interface Known {
  readonly layout: Layout;
  readonly trials: Trial[];
}

/** Under which something of a scenario of the study is run. */
export const keyIn = (name: string | undefined, key: string): string =>
  name === undefined ? key : `${key} of ${name}`;

/**
 * Throughput of layouts by replication. All layouts have the same replications, so that they are compared
 * under common random numbers. Each replication of a layout is run once, and not at all where it would go
 * just as one that was run: a place that nobody misses or uses changes nothing.
 */
export class Trials extends Tried {
  private readonly known = new Map<string, Known>();
  private skipped = 0;

  /**
   * @param after so many replications are passed over; if any, none is left out that would go alike unless
   * `leavesOut`: two things at one instant might come in another order then
   */
  constructor(
    private readonly replicator: Replicator,
    private readonly setting: Setting,
    readonly most: number,
    private readonly after = 0,
    private readonly leavesOut = after === 0,
  ) {
    super();
  }

  /** Runs what is missing of the first `to` replications of each layout. */
  async run(layouts: readonly Layout[], to = this.most): Promise<void> {
    const missing = [...new Map(layouts.map((each) => [each.join(), each])).values()]
      .filter((layout) => this.values(layout).length < to)
      .map((layout) => ({ layout, trials: this.alike(layout, to) }));
    const jobs = missing.values();
    const work = async (): Promise<void> => {
      for (const { layout, trials } of jobs) await this.fill(layout, trials, to);
    };
    await Promise.all(Array.from({ length: AT_ONCE }, work));
    // In this order, whichever was over first.
    for (const { layout, trials } of missing) this.add(layout, trials.map(defined));
  }

  add(layout: Layout, trials: readonly Trial[]): void {
    const key = layout.join(),
      known = this.known.get(key) ?? { layout, trials: [] };
    this.known.set(key, known);
    known.trials.push(...trials);
  }

  /** The same with all that is known, to go on apart. */
  copy(): Trials {
    const { replicator, setting, most, after, leavesOut, known } = this,
      copy = new Trials(replicator, setting, most, after, leavesOut);
    for (const { layout, trials } of known.values()) copy.add(layout, trials);
    return copy;
  }

  /** What is known of a layout, by replication. */
  of(layout: Layout): readonly Trial[] {
    return this.known.get(layout.join())?.trials ?? [];
  }

  values(layout: Layout): readonly number[] {
    return this.of(layout).map(({ rate }) => rate);
  }

  mean(layout: Layout, over = this.most): number {
    return mean(this.values(layout).slice(0, over));
  }

  /** Layouts with all replications, the best first; the first tried of equal ones. */
  ranked(): Layout[] {
    const all = [...this.known.values()].filter(({ trials }) => trials.length >= this.most);
    return ordered(
      all.map(({ layout }) => layout),
      (each) => this.mean(each),
    );
  }

  get tried(): number {
    return this.known.size;
  }

  /** Layouts tried, in the order in which they were. */
  layouts(): Layout[] {
    return [...this.known.values()].map(({ layout }) => layout);
  }

  /** Replications that were known without being run. */
  get spared(): number {
    return this.skipped;
  }

  /** The most units that were ever in each spot of a layout; its places where somebody lacked room. */
  used(layout: Layout): number[] {
    const trials = this.of(layout);
    return layout.map((places, s) =>
      Math.min(places, Math.max(0, ...trials.map(({ alike }) => defined(alike[s])))),
    );
  }

  lacking(layout: Layout): number[] {
    return this.meanOf(layout, ({ lacking }) => lacking);
  }

  inside(layout: Layout): number[] {
    return this.meanOf(layout, ({ inside }) => inside);
  }

  private meanOf(layout: Layout, bySpot: (trial: Trial) => Float64Array): number[] {
    const trials = this.of(layout);
    return layout.map((_, s) => mean(trials.map((trial) => defined(bySpot(trial)[s]))) || 0);
  }

  /**
   * What is known of the next replications of a layout, up to `to`, from others; undefined where it has to be
   * run.
   */
  private alike(layout: Layout, to: number): (Trial | undefined)[] {
    const from = this.values(layout).length,
      found = new Array<Trial | undefined>(to - from).fill(undefined);
    let open = this.leavesOut ? found.length : 0;
    // The latest layouts are the nearest.
    for (const { layout: had, trials } of open === 0 ? [] : [...this.known.values()].reverse()) {
      for (const [r, trial] of trials.slice(from, to).entries()) {
        if (open === 0) return found;
        if (found[r] !== undefined || !isAlike(trial, had, layout)) continue;
        found[r] = trial;
        open--;
        this.skipped++;
      }
    }
    return found;
  }

  /** Runs those of the replications up to `to` that are undefined. */
  private async fill(layout: Layout, trials: (Trial | undefined)[], to: number): Promise<void> {
    if (!trials.includes(undefined)) return;
    const first = this.after + to - trials.length + 1,
      variant = this.variant(layout);
    for (let start = trials.indexOf(undefined); start >= 0; start = trials.indexOf(undefined)) {
      let end = start;
      while (end + 1 < trials.length && trials[end + 1] === undefined) end++;
      const row = await this.replicator.row(variant, first + start, first + end);
      trials.splice(start, row.length, ...row);
    }
  }

  private variant(layout: Layout): Variant<Trial> {
    const { scenario, model: present, name, spots, read } = this.setting,
      model = withRoom(present, spots, layout) ?? compile(withLayout(scenario, spots, layout));
    return { key: keyIn(name, layout.join()), model, read: read(model) };
  }
}

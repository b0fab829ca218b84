import { compile } from '../scenario/compile.js';
import { digest } from '../scenario/read-digest.js';
import type { Scenario } from '../scenario/scenario.js';
import { withLayout, type Layout, type Spot } from './buffers-spots.js';
import type { Replicator, Variant } from './replicator.js';

const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Throughput of layouts by replication. Each replication of a layout is run once, and all layouts have the same ones, so
 * that they are compared under common random numbers.
 */
export class Trials {
  private readonly known = new Map<string, { readonly layout: Layout; readonly values: number[] }>();

  /** @param before replications passed over: the first here is number `before` + 1 */
  constructor(private readonly replicator: Replicator<number>, private readonly scenario: Scenario, private readonly spots: readonly Spot[], readonly most: number, private readonly before = 0) {}

  /** Runs what is missing of the first `to` replications of each layout. */
  async run(layouts: readonly Layout[], to = this.most): Promise<void> {
    const byLength = new Map<number, Layout[]>();
    for (const layout of new Map(layouts.map((each) => [each.join(), each])).values()) {
      const length = this.values(layout).length;
      if (length < to) byLength.set(length, [...byLength.get(length) ?? [], layout]);
    }
    for (const [length, missing] of byLength) {
      const rows = await this.replicator.run(missing.map((layout) => this.variant(layout)), this.before + length + 1, this.before + to);
      missing.forEach((layout, i) => this.add(layout, rows[i]!));
    }
  }

  add(layout: Layout, values: readonly number[]): void {
    const key = layout.join(), known = this.known.get(key);
    if (known === undefined) this.known.set(key, { layout, values: [...values] }); else known.values.push(...values);
  }

  values(layout: Layout): readonly number[] {
    return this.known.get(layout.join())?.values ?? [];
  }

  mean(layout: Layout, over = this.most): number {
    return average(this.values(layout).slice(0, over));
  }

  /** Layouts with all replications, the best first; the first tried of equal ones. */
  ranked(): Layout[] {
    return [...this.known.values()].filter(({ values }) => values.length >= this.most).map(({ layout }) => layout).sort((a, b) => this.mean(b) - this.mean(a));
  }

  /** Layouts tried, with few or all replications. */
  get tried(): number {
    return this.known.size;
  }

  /**
   * The best `count` of the layouts by their means, the first of equal ones: all get a quarter of the replications, and the
   * better quarter of them, three at the least, the rest.
   */
  async best(layouts: readonly Layout[], count: number): Promise<Layout[]> {
    const few = Math.min(this.most, Math.max(3, Math.ceil(this.most / 4)));
    await this.run(layouts, few);
    const leading = byMean(layouts, (each) => this.mean(each, few)).slice(0, Math.max(3, count, Math.ceil(layouts.length / 4)));
    await this.run(leading);
    return byMean(leading, (each) => this.mean(each)).slice(0, count);
  }

  private variant(layout: Layout): Variant {
    const changed = withLayout(this.scenario, this.spots, layout);
    return { key: digest(changed), model: compile(changed) };
  }
}

/** Sorted by what cannot be ordered otherwise than by its value; the order in which they come decides between equal ones. */
function byMean(layouts: readonly Layout[], mean: (layout: Layout) => number): Layout[] {
  return layouts.map((layout) => ({ layout, value: mean(layout) })).sort((a, b) => b.value - a.value).map(({ layout }) => layout);
}

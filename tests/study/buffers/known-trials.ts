import type { Trials } from '../../../src/study/buffers/search/trials.js';
import type { Worth } from '../../../src/study/buffers/search/tried.js';
import type { Layout, Spot } from '../../../src/study/buffers/spots.js';

/** Trials of a line whose throughput is known, the same in all replications: nothing is run. */
export function known(rate: (layout: Layout) => number): Trials {
  const tried = new Map<string, Layout>();
  const run = async (layouts: readonly Layout[]): Promise<void> => {
    for (const layout of layouts) tried.set(layout.join(), layout);
    return Promise.resolve();
  };
  const ordered = (layouts: readonly Layout[], worth: Worth): Layout[] =>
    [...layouts].sort((a, b) => worth(b, 1) - worth(a, 1));
  const first = async (layouts: readonly Layout[], count: number, worth: Worth = rate): Promise<Layout[]> => {
    await run(layouts);
    return ordered(layouts, worth).slice(0, count);
  };
  return {
    run,
    most: 4,
    few: 3,
    mean: rate,
    values: (layout: Layout) => new Array<number>(4).fill(rate(layout)),
    // Everything is used, up to 40 a spot.
    used: (layout: Layout) => layout.map((places) => Math.min(places, 40)),
    // Nobody knows where room is lacking.
    lacking: (layout: Layout) => layout.map(() => 0),
    inside: (layout: Layout) => layout.map(() => 0),
    best: first,
    leading: first,
    ranked: () => ordered([...tried.values()], rate),
    get tried() {
      return tried.size;
    },
  } as unknown as Trials;
}

export const spots = (least: readonly number[]): Spot[] =>
  least.map((each, s) => ({
    name: `spot ${s}`,
    kind: 'buffer',
    of: `station ${s}`,
    present: 5,
    least: each,
  }));

import { describe, expect, it } from 'vitest';
import { bestWithin, climbs } from '../../../src/study/buffers/search/budget.js';
import { Search } from '../../../src/study/buffers/search/search.js';
import type { Layout } from '../../../src/study/buffers/spots.js';
import { known, spots } from './known-trials.js';

/** A small fixed sequence in [0, 1): Park & Miller (1988), multiplier 48271. */
function mixer(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/**
 * Throughput of made-up spots: each holds a rate that grows with its places and falls behind every whole load,
 * by chance so far that steps of one do not lead across; the least of them counts most.
 */
function valleys(count: number, seed: number): { rate: (layout: Layout) => number; loads: number[] } {
  const random = mixer(seed * 7919 + 1);
  for (let i = 0; i < 10; i++) random();
  const made = Array.from({ length: count }, () => ({
    load: 2 + Math.floor(3 * random()),
    dip: 0.3 * random(),
    full: 3 + 3 * random(),
  }));
  const of = (s: number, places: number): number => {
    const { load, dip, full } = made[s],
      over = places % load;
    return (
      10 * (1 - Math.exp(-(places + 1) / full)) - (over === 0 || places < load ? 0 : dip * (load - over))
    );
  };
  return {
    rate: (layout) => {
      const each = layout.map((places, s) => of(s, places));
      return Math.min(...each) + 0.1 * each.reduce((a, b) => a + b, 0);
    },
    loads: made.map(({ load }) => load),
  };
}

function* allWithin(places: number, count: number): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (let here = 0; here <= places; here++)
      for (const rest of allWithin(places - here, count - 1)) yield [here, ...rest];
}

async function regret(count: number, seed: number, places: number, tellLoads: boolean): Promise<number> {
  const { rate, loads } = valleys(count, seed),
    all = spots(new Array<number>(count).fill(0)),
    trials = known(rate),
    least = all.map(() => 0);
  await climbs(
    {
      search: new Search(trials, all, 0.001, tellLoads ? loads : undefined),
      ...{ trials, spots: all, present: all.map(() => 5), least, start: least, zone: 0.01, replications: 4 },
      unlimited: all.map(() => 1000),
      ceiling: Infinity,
    },
    places,
  );
  const found = bestWithin(trials, places, 0.001);
  let best = 0;
  for (const layout of allWithin(places, count)) best = Math.max(best, rate(layout));
  return 1 - rate(found) / best;
}

describe('the search among too many layouts to try them all', () => {
  it.each([
    [3, true],
    [3, false],
    [4, true],
    [4, false],
  ])('%i spots, loads known: %s', async (count, tellLoads) => {
    const worst: string[] = [];
    for (let seed = 1; seed <= 20; seed++)
      for (const places of [5, 8, 11, 14, 18, 24]) {
        const r = await regret(count, seed, places, tellLoads);
        if (r > 0.01) worst.push(`${seed}/${places}: ${(100 * r).toFixed(1)} %`);
      }
    expect(worst).toEqual([]);
  });
});

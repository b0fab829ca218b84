import { describe, expect, it } from 'vitest';
import { fewest, leanest } from '../../../src/study/buffers/choice.js';
import { Search } from '../../../src/study/buffers/search/search.js';
import { type Layout, placesOf } from '../../../src/study/buffers/spots.js';
import { known, spots } from './known-trials.js';

/** One place is worth moving for a gain of 0.1 %. */
const search = (rate: (layout: Layout) => number, least: readonly number[]) =>
  new Search(known(rate), spots(least), 0.001);

describe('the search for places', () => {
  it('hands places out one to each where they bring the same everywhere, and takes them from the fullest', async () => {
    const total = search((layout) => Math.min(placesOf(layout), 9), [0, 0, 0]);
    expect(await total.walk([0, 0, 0], 6)).toEqual([2, 2, 2]);
    expect(await total.walk([7, 1, 1], 6)).toEqual([4, 1, 1]);
  });

  it('evens a lumpy layout where that loses nothing, to the last place', async () => {
    const total = search((layout) => placesOf(layout), [0, 0, 0, 0]);
    expect(await total.evened([16, 0, 3, 1])).toEqual([5, 5, 5, 5]);
    expect([...(await total.evened([3, 0, 0, 0]))].sort()).toEqual([0, 1, 1, 1]);
  });

  it('leaves places where they are needed: by the rate, and by the scenario', async () => {
    // Only spot 0 counts, up to eight.
    const one = search((layout) => 10 + Math.min(layout[0], 8), [0, 0, 0]);
    expect(await one.evened([8, 4, 0])).toEqual([8, 2, 2]);
    const least = search((layout) => placesOf(layout), [3, 0]);
    expect(await least.evened([3, 0])).toEqual([3, 0]);
  });

  it('evens for a loss that a place would not be moved back for, once and not step by step', async () => {
    // Each place more in spot 0 brings 0.04 % of a place in spot 1: two moves are below 0.1 %, a third is not.
    const tilted = search((layout) => 1000 + 0.4 * layout[0], [0, 0]);
    expect(await tilted.evened([10, 0])).toEqual([8, 2]);
    // Not below what has to be reached.
    expect(await tilted.evened([10, 0], (layout) => layout[0] >= 9)).toEqual([9, 1]);
  });

  it('takes away what is not needed, down to the least', async () => {
    // 12 are enough from whatever side, 11 are not.
    const needed = search((layout) => Math.min(placesOf(layout), 12), [0, 0]);
    const enough = (layout: Layout): boolean => placesOf(layout) >= 12;
    expect(placesOf(await fewest(needed, [20, 4], 0, enough))).toBe(12);
    expect(
      await fewest(
        search(() => 1, [1, 0]),
        [4, 4],
        1,
        () => true,
      ),
    ).toEqual([1, 0]);
  });

  it('takes places away from many spots by quarters and halves, to the same number', async () => {
    // Ten spots with 50 places in all; 23 are enough wherever they are, but one in the first has to stay.
    const reaches = (layout: Layout): boolean => placesOf(layout) >= 23 && layout[0] >= 1;
    const many = search(
        (layout) => Math.min(placesOf(layout), 23) + Math.min(layout[0], 1),
        new Array<number>(10).fill(0),
      ),
      found = await fewest(many, new Array<number>(10).fill(5), 0, reaches);
    expect(placesOf(found)).toBe(23);
    expect(found[0]).toBeGreaterThanOrEqual(1);
    // Too many to be evened out.
    expect(await many.evened([14, ...new Array<number>(9).fill(1)])).toEqual([
      14,
      ...new Array<number>(9).fill(1),
    ]);
  });

  it('finds the leanest of what was tried: the fewest, then the most even', async () => {
    const trials = known(() => 1);
    await trials.run([
      [3, 3],
      [4, 0],
      [1, 3],
      [2, 2],
      [1, 1],
    ]);
    expect(leanest(trials, (layout) => placesOf(layout) >= 4)).toEqual([2, 2]);
    expect(leanest(trials, () => false)).toBeUndefined();
  });
});

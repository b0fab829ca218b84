import { describe, expect, it } from 'vitest';
import { Descent } from '../../../../src/study/buffers/around/descent.js';
import type { Paired } from '../../../../src/study/buffers/around/paired.js';
import { type Layout, placesOf } from '../../../../src/study/buffers/spots.js';
import { known, spots } from '../known-trials.js';

/** Layouts whose cost is known: nothing is run, and every place counts as used. */
const descent = (
  count: number,
  cost: (layout: Layout) => number,
  most = Infinity,
  loads = new Array<number>(count).fill(1),
  allows: (layout: Layout) => boolean = () => true,
): Descent =>
  new Descent({
    search: {
      cost,
      trials: Object.assign(known(cost), { used: (layout: Layout) => layout }),
    } as unknown as Paired,
    spots: spots(new Array<number>(count).fill(0)),
    ...{ loads, most, allows },
  });
/** Least at so many places in each spot. */
const bowl =
  (...least: readonly number[]) =>
  (layout: Layout): number =>
    100 + layout.reduce((sum, places, s) => sum + (places - least[s]) ** 2, 0);

describe('the way down to the cheapest layout', () => {
  it('leads to the lowest point of few and of many spots', async () => {
    expect(await descent(2, bowl(3, 7)).from([0, 0])).toEqual([3, 7]);
    const many = [1, 4, 0, 2, 6, 3, 5, 1, 2, 0];
    expect(await descent(10, bowl(...many)).from(new Array<number>(10).fill(9))).toEqual(many);
  });

  it('changes two spots at once where one alone never saves', async () => {
    // Places cost 2 each, and bring 10 only where both spots have one more.
    const both = (layout: Layout): number =>
      100 + 2 * placesOf(layout) - 10 * Math.min(layout[0], layout[1], 4);
    expect(await descent(2, both).from([0, 0])).toEqual([4, 4]);
  });

  it('crosses a valley by several places at once where two of them do not', async () => {
    // Of five places of a truck's load only all five save.
    const cliffs = (layout: Layout): number => 100 + layout[0] + layout[1] - 9 * Math.floor(layout[0] / 5);
    expect(await descent(2, cliffs, 6, [5, 1]).from([0, 0])).toEqual([5, 0]);
    // No load is known, but the floor of eight places that bring nothing can be saved at once.
    const hump = (layout: Layout): number => 100 - layout[1] - (layout[0] === 0 ? 9 : layout[0]);
    expect(await descent(2, hump, 10).from([8, 2])).toEqual([0, 10]);
  });

  it('goes only where what is asked is done', async () => {
    expect(placesOf(await descent(2, bowl(9, 9), 5).from([0, 0]))).toBe(5);
    const enough = descent(2, bowl(0, 0), 9, [1, 1], ([first]) => first >= 2);
    expect(await enough.from([5, 5])).toEqual([2, 0]);
  });

  it('ends, however far the lowest point is', async () => {
    const far = descent(2, (layout) => 1e6 - placesOf(layout));
    await far.from([0, 0]);
    expect(far.looked).toBeLessThan(400);
  });
});

import { describe, expect, it } from 'vitest';
import { Descent } from '../../../../src/study/buffers/around/descent.js';
import type { Paired } from '../../../../src/study/buffers/around/paired.js';
import { type Layout, placesOf, type Spot } from '../../../../src/study/buffers/spots.js';
import { threeStations } from '../buffers-line.js';

const scenario = threeStations('1 h');
/** Layouts whose cost is known: nothing is run, and every place counts as used. */
const descent = (spots: number, cost: (layout: Layout) => number, most = Infinity): Descent =>
  new Descent({
    scenario,
    search: {
      cost,
      trials: {
        run: () => Promise.resolve(),
        of: () => [{ alike: new Array<number>(spots).fill(Infinity) }],
        few: 3,
      },
    } as unknown as Paired,
    spots: Array.from(
      { length: spots },
      (_, s): Spot => ({ name: `${s}`, kind: 'buffer', of: `${s}`, present: 5, least: 0 }),
    ),
    allows: (layout) => placesOf(layout) <= most,
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

  it('goes only where what is asked is done', async () => {
    expect(placesOf(await descent(2, bowl(9, 9), 5).from([0, 0]))).toBe(5);
  });

  it('ends, however far the lowest point is', async () => {
    const far = descent(2, (layout) => 1e6 - placesOf(layout));
    await far.from([0, 0]);
    expect(far.looked).toBeLessThan(400);
  });
});

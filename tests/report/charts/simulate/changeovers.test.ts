import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import { distinctBeginnings, runsOf } from '../../../../src/report/charts/simulate/changeover-strip.js';
import type { StripStay } from '../../../../src/study/sections/changeovers.js';
import { results } from '../../samples/drawn.js';

describe('changeovers', () => {
  const stay = (value: number): StripStay => ({
    place: 1,
    value,
    from: 0,
    to: 1,
    changedFrom: null,
    changeFrom: null,
    changeTo: null,
  });
  it('count the units of one value in a row', () => {
    expect(runsOf([0, 0, 1, 0, 2, 2, 2].map(stay)).map((run) => [run[0].value, run.length])).toEqual([
      [0, 2],
      [1, 1],
      [0, 1],
      [2, 3],
    ]);
    expect(runsOf([])).toEqual([]);
  });

  it('name a value in little room by the beginning that no other has', () => {
    expect(distinctBeginnings(['red', 'white', 'wine', 'yellow'])).toEqual(['r', 'wh', 'wi', 'y']);
    // A name that begins another has no shorter one.
    expect(distinctBeginnings(['sea', 'sea blue'])).toEqual(['sea', 'sea ']);
  });

  it('are drawn only for stations with a week to show', () => {
    expect(
      CHARTS.simulate['10-changeovers']({
        ...results,
        changeovers: results.changeovers.map((each) => ({ ...each, strip: null })),
      }),
    ).toBeNull();
  });
});

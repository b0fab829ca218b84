import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import {
  distinctBeginnings,
  piecesOf,
  runsOf,
} from '../../../../src/report/charts/simulate/changeover-strip.js';
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

  it('are drawn in the pieces that were worked, within the week', () => {
    const late = { ...stay(0), changedFrom: 1, changeFrom: 13.9, changeTo: 22.2 };
    expect(piecesOf(stay(0), 168)).toEqual([]);
    expect(piecesOf(late, 168)).toEqual([[13.9, 22.2]]);
    expect(piecesOf({ ...late, changeTo: null }, 168)).toEqual([[13.9, 168]]);
    const pieces = [
      [-2, -1],
      [13.9, 14],
      [22, 22.2],
      [170, 171],
    ] as const;
    expect(piecesOf({ ...late, changePieces: pieces }, 168)).toEqual(pieces.slice(1, 3));
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

import { describe, expect, it } from 'vitest';
import { thinned } from '../../../../src/report/terminal/buffers/thinned.js';

interface Point {
  readonly x: number;
  readonly y: number;
}
const curve = (...values: readonly number[]): Point[] => values.map((y, x) => ({ x, y }));
const xs = (points: readonly Point[], tolerance: number, kept?: (point: Point) => boolean): number[] =>
  thinned(points, (each) => each, tolerance, kept).map(({ x }) => x);

describe('a curve in a terminal', () => {
  it('keeps every knee, wherever it is, however many points there are', () => {
    const flat = Array.from({ length: 100 }, (_, x) => (x < 5 ? x / 5 : 1));
    expect(xs(curve(...flat), 0.005)).toEqual([0, 5, 99]);
    // A second knee, and a valley of one point.
    const valley = flat.map((y, x) => (x === 60 ? 0.9 : y));
    expect(xs(curve(...valley), 0.005)).toEqual([0, 5, 59, 60, 61, 99]);
  });

  it('leaves out only what lies on the line between its neighbours, to within the tolerance', () => {
    const bent = curve(...Array.from({ length: 60 }, (_, x) => 1 - 0.9 ** x)),
      shown = thinned(bent, (each) => each, 0.01);
    expect(shown.length).toBeLessThan(20);
    for (const { x, y } of bent) {
      const after = shown.findIndex((each) => each.x >= x),
        [a, b] = [shown[Math.max(0, after - 1)], shown[after]],
        line = a.x === b.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
      expect(Math.abs(y - line)).toBeLessThanOrEqual(0.01);
    }
  });

  it('keeps its ends and what has to be there', () => {
    expect(xs(curve(1, 1, 1, 1, 1), 0.01, ({ x }) => x === 3)).toEqual([0, 3, 4]);
    expect(xs(curve(1), 0.01)).toEqual([0]);
    expect(xs([], 0.01)).toEqual([]);
  });
});

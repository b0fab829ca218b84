import { describe, expect, it } from 'vitest';
import { BestSelection } from '../../../src/study/statistics/select-best.js';
import { normals } from './normals.js';

/**
 * Five systems, the best ahead of all others by just the zone (the slippage configuration, the hardest case);
 * `shared` is the part of the noise that all have in common.
 */
function play(seed: string, shared: number): { right: boolean; runs: number } {
  const normal = normals(seed),
    zone = 0.5,
    selection = new BestSelection(5, 10, zone, 0.95);
  let runs = 0;
  while (!selection.isOver) {
    const common = normal();
    const all = [0, 0, zone, 0, 0].map(
      (mean) => mean + Math.sqrt(shared) * common + Math.sqrt(1 - shared) * normal(),
    );
    runs += selection.alive.length;
    selection.add(selection.alive.map((i) => all[i]));
  }
  return { right: selection.best === 2, runs };
}

describe('selection of the best with an indifference zone', () => {
  it.each([0, 0.5, 0.8])(
    'selects the best in at least 95 %% of 1,000 trials at the hardest spacing, %d of the noise in common',
    (shared) => {
      const plays = Array.from({ length: 1000 }, (_, i) => play(`selection ${shared} ${i}`, shared));
      // The promise is 0.95 (Kim & Nelson 2001, theorem 1); three standard errors of 1,000 trials are 0.021.
      expect(plays.filter(({ right }) => right).length / 1000).toBeGreaterThanOrEqual(0.95 - 0.021);
    },
  );

  it('needs fewer runs with common random numbers', () => {
    const runs = (shared: number): number =>
      Array.from({ length: 200 }, (_, i) => play(`runs ${shared} ${i}`, shared).runs).reduce(
        (a, b) => a + b,
        0,
      );
    // Variances of differences are 2 and 0.4.
    expect(runs(0.8)).toBeLessThan(0.5 * runs(0));
  });

  it('takes the better of two at once where their difference does not vary', () => {
    const selection = new BestSelection(2, 2, 1, 0.95);
    selection.add([1, 3]);
    expect(selection.isOver).toBe(false);
    selection.add([5, 7]);
    expect([selection.isOver, selection.best, selection.round]).toEqual([true, 1, 2]);
  });

  it('refuses values that do not fit', () => {
    expect(() => {
      new BestSelection(2, 2, 1, 0.95).add([1]);
    }).toThrow('selection: expected 2 values, one of each that is still in, got 1');
    expect(() => new BestSelection(2, 1, 1, 0.95)).toThrow(
      'selection: expected at least 2 first rounds, got 1',
    );
    expect(() => new BestSelection(2, 2, 0, 0.95)).toThrow(
      'selection: expected an indifference zone above 0, got 0',
    );
  });
});

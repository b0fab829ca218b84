import { describe, expect, it } from 'vitest';
import { defined, neighbours } from '../../src/study/lists.js';

describe('lists', () => {
  it('give each value with the one behind it, and of fewer than two none', () => {
    expect(neighbours([1, 3, 2])).toEqual([
      [1, 3],
      [3, 2],
    ]);
    expect(neighbours([1])).toEqual([]);
    expect(neighbours([])).toEqual([]);
  });

  it('hand on what is there, null and 0 too, and throw where nothing is', () => {
    expect([defined(0), defined(null)]).toEqual([0, null]);
    expect(() => defined([1][1])).toThrow('expected a value that is always there, got none');
  });
});

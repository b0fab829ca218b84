import { describe, expect, it } from 'vitest';
import { level95 } from '../../../../src/report/charts/simulate/buffers.js';
import { results } from '../../samples/drawn.js';

describe('buffers', () => {
  const buffer = (levels: number[]) => ({ ...results.buffers[0], levels });
  it('read the level not passed 95 % of the time from the shares', () => {
    expect(level95(buffer([0.5, 0.3, 0.15, 0.05]))).toBe(2);
    expect(level95(buffer([0.96, 0.04]))).toBe(0);
    expect(level95(buffer([0.1, 0.1, 0.8]))).toBe(2);
    expect(level95(buffer([])), 'levels not known').toBeNull();
  });
});

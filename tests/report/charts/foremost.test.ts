import { describe, expect, it } from 'vitest';
import { foremost } from '../../../src/report/charts/foremost.js';
import { LAYOUT } from '../../../src/report/style.js';

const MOST_ROWS = LAYOUT.mostRows;

const items = Array.from({ length: 1000 }, (_, i) => ({ number: i, weight: (i * 7919) % 1000 }));

describe('the rows of a picture', () => {
  it('are all there while they can be looked at', () => {
    const few = items.slice(0, MOST_ROWS);
    expect(foremost(few, ({ weight }) => weight, 'stations', 'busiest')).toEqual({ shown: few, note: '' });
  });

  it('are of very many those of the greatest weight, in their order, and the picture says so', () => {
    const { shown, note } = foremost(items, ({ weight }) => weight, 'stations', 'busiest');
    expect(shown.map(({ weight }) => weight).sort((a, b) => a - b)).toEqual(
      Array.from({ length: MOST_ROWS }, (_, i) => 1000 - MOST_ROWS + i),
    );
    expect(shown.map(({ number }) => number)).toEqual(
      shown.map(({ number }) => number).toSorted((a, b) => a - b),
    );
    expect(note).toBe(' Of 1,000 stations the 120 busiest; results.json has all.');
  });

  it('of which no weight is known come last', () => {
    const { shown } = foremost(items, ({ number }) => (number < 900 ? NaN : 1), 'stations', 'busiest');
    expect(shown.filter(({ number }) => number >= 900)).toHaveLength(100);
  });
});

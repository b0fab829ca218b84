import { describe, expect, it } from 'vitest';
import { shortBuckets } from '../../../../src/report/charts/simulate/throughput.js';
import { datasets, draw, results } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

describe('throughput by week', () => {
  it('leaves a gap in weeks without a working day and marks short weeks', () => {
    const shipped = datasets(draw('01-throughput-by-week')).find(({ label }) => label === 'shipped') as {
      data: unknown[];
      pointRadius?: number[];
    };
    results.series.workingDays.forEach((days, week) => {
      expect(shipped.data[week] === null, `week ${week}`).toBe(days === 0);
      expect((shipped.pointRadius?.[week] ?? 0) > 0, `week ${week}`).toBe(days === 1);
    });
  });

  it('marks a value that stands alone between gaps, as no line shows it', () => {
    const single = draw('01-throughput-by-week', sampleResults({ stations: 3, weeks: 1 }));
    const shipped = datasets(single).find(({ label }) => label === 'shipped') as { pointRadius?: number[] };
    expect(shipped.pointRadius?.[0]).toBeGreaterThan(0);
  });

  it('counts a week as short below half of the usual days, not at half', () => {
    expect(shortBuckets([5, 4, 2.5, 2, 0])).toEqual([false, false, false, true, false]);
  });

  it('draws the rate asked as steps', () => {
    expect(datasets(draw('01-throughput-by-week')).find(({ label }) => label === 'asked')).toMatchObject({
      stepped: 'middle',
      data: results.series.asked,
    });
  });
});

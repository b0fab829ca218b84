import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../../src/report/canvas.js';
import { shortBuckets } from '../../../../src/report/charts/simulate/throughput.js';
import type { Results } from '../../../../src/study/simulate/results.js';
import { datasets, draw, results } from '../../samples/drawn.js';
import { readPng } from '../../samples/png.js';
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

  it('hatches weeks judged that are not like the others, and says so', async () => {
    const { unusual } = results.answer;
    // Week 19 and 20 without a working day, 23 and 24 with an outage.
    expect(unusual!.weeks.map(({ bucket }) => bucket).slice(0, 4)).toEqual([19, 20, 23, 24]);
    const none: Results = { ...results, answer: { ...results.answer, unusual: { ...unusual!, weeks: [] } } };
    const [hatched, plain] = [draw('01-throughput-by-week'), draw('01-throughput-by-week', none)],
      said = ({ alt }: { alt: string }): boolean =>
        alt.includes('Hatched: weeks judged that are short or hit by an outage.');
    expect([said(hatched), said(plain)]).toEqual([true, false]);
    const ink = async ({ configuration, width, height }: typeof plain): Promise<number> =>
      readPng(await renderPng(configuration, width, height)).ink;
    expect(await ink(hatched)).toBeGreaterThan(1.1 * (await ink(plain)));
  });

  it('draws the rate asked as steps', () => {
    expect(datasets(draw('01-throughput-by-week')).find(({ label }) => label === 'asked')).toMatchObject({
      stepped: 'middle',
      data: results.series.asked,
    });
  });
});

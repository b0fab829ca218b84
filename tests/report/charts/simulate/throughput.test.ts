import { describe, expect, it } from 'vitest';
import { renderPng } from '../../../../src/report/canvas.js';
import { weekMarks } from '../../../../src/report/charts/over-time/week-marks.js';
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

  it('hatches and names weeks that are not like the others, also for those who do not see it', async () => {
    const plain: Results = {
      ...results,
      answer: { ...results.answer, unusual: null },
      series: { ...results.series, workingDays: results.series.workingDays.map(() => 5) },
      outages: [],
      shutdowns: [],
      recoveries: [],
    };
    const said = async (chart: ReturnType<typeof draw>): Promise<[number, string[]]> => {
      const texts: string[] = [],
        png = await renderPng(chart.configuration, chart.width, chart.height, (text) => texts.push(text));
      return [readPng(png).ink, texts];
    };
    const marked = draw('01-throughput-by-week'),
      [ink, texts] = await said(marked),
      [without, none] = await said(draw('01-throughput-by-week', plain));
    expect(ink).toBeGreaterThan(1.1 * without);
    const words = weekMarks(results).map((mark) => mark.words);
    expect(texts).toEqual(expect.arrayContaining(['shutdown', 'outage: new paint line']));
    for (const each of words) expect(marked.alt).toContain(each);
    expect(none.filter((text) => words.includes(text))).toEqual([]);
    expect(draw('01-throughput-by-week', plain).alt).not.toContain('Marked');
  });

  it('draws the rate asked as steps', () => {
    expect(datasets(draw('01-throughput-by-week')).find(({ label }) => label === 'asked')).toMatchObject({
      stepped: 'middle',
      data: results.series.asked,
    });
  });
});

import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import { axisTitle, datasets, draw, results, titleOf } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

describe('outage recovery', () => {
  it('says how far behind the same build without it the outage puts the build and when it has caught up, and draws both and what lies between', () => {
    const chart = draw('12-outage-recovery');
    expect(titleOf(chart)).toBe(
      '“new paint line” puts the build 40.0 units behind at worst; half catch up by 29 October 2027',
    );
    expect(axisTitle(chart, 'y')).toBe('units');
    expect(chart.alt).toContain('The last unit is 1.20 days later.');
    const { byDay } = results.recoveries[0];
    expect(chart.configuration.data.labels).toEqual(byDay!.dates);
    expect(datasets(chart).map(({ label, data }) => [label, data])).toEqual([
      ['units behind, 8 of 10 builds low', byDay!.behindP10],
      ['units behind, 8 of 10 builds high', byDay!.behindP90],
      ['units behind', byDay!.behind],
      ['shipped in a week with it', byDay!.shippedWith],
      ['shipped without it', byDay!.shippedWithout],
    ]);
  });

  it('says how many caught up where the date is not known', () => {
    expect(
      titleOf(draw('12-outage-recovery', sampleResults({ stations: 3, weeks: 12, replications: 3 }))),
    ).toContain('; 3 of 3 builds catch up before the run ends');
  });

  it('is left out where nothing is told by day', () => {
    expect(
      CHARTS.simulate['12-outage-recovery']({
        ...results,
        recoveries: results.recoveries.map((recovery) => ({ ...recovery, byDay: null })),
      }),
    ).toBeNull();
  });
});

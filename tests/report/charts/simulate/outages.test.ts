import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/charts/of-study.js';
import { axisTitle, datasets, draw, results, titleOf } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

describe('outage recovery', () => {
  it('says how far behind the same build without it the outage puts the build and when it has caught up, and draws both and what lies between', () => {
    const chart = draw('12-outage-recovery');
    expect(titleOf(chart)).toBe(
      'The outage (new paint line, 2027-08-09 to 2027-08-20) puts the build 40.0 units behind when it is worst (95 % CI 39.4 to 40.6), the last unit 1.20 days later; half of the builds have caught up by 2027-10-29',
    );
    expect(axisTitle(chart, 'y')).toBe('units');
    const { byDay } = results.recoveries[0];
    expect(chart.configuration.data.labels).toEqual(byDay!.dates);
    expect(datasets(chart).map(({ label, data }) => [label, data])).toEqual([
      ['behind, P10', byDay!.behindP10],
      ['behind, P90', byDay!.behindP90],
      ['units behind', byDay!.behind],
      ['shipped in a week', byDay!.shippedWith],
      ['shipped in a week', byDay!.shippedWithout],
    ]);
  });

  it('says how many caught up where the date is not known', () => {
    expect(
      titleOf(draw('12-outage-recovery', sampleResults({ stations: 3, weeks: 12, replications: 3 }))),
    ).toContain('; 3 of 3 builds caught up before the run ended');
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

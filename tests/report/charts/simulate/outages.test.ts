import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../../src/report/files/simulate.js';
import { axisTitle, datasets, draw, results, titleOf } from '../../samples/drawn.js';
import { sampleResults } from '../../samples/results.js';

describe('outage recovery', () => {
  it('says how long after its end the outage is made good, and draws mean and band by day', () => {
    const chart = draw('12-outage-recovery');
    expect(titleOf(chart)).toBe(
      'Outage (new paint line, 2027-08-09 to 2027-08-20): half of the builds are back to the 21.5 units open before it within 18.2 days (95 % CI 17.1 to 19.6) of its end, eight in ten within 21 (95 % CI 20 to 24)',
    );
    expect(axisTitle(chart, 'y')).toBe('units open');
    const { byDay } = results.outages[0];
    expect(chart.configuration.data.labels).toEqual(byDay!.dates);
    expect(datasets(chart).map(({ label, data }) => [label, data])).toEqual([
      ['P10', byDay!.p10],
      ['P90', byDay!.p90],
      ['units open', byDay!.mean],
      ['21.5 open', byDay!.mean.map(() => 21.5)],
    ]);
  });

  it('says why the time is not known', () => {
    expect(
      titleOf(draw('12-outage-recovery', sampleResults({ stations: 3, weeks: 12, replications: 1 }))),
    ).toBe('Outage (new paint line, 2027-08-09 to 2027-08-20): time to recover not known; there are 1');
  });

  it('is left out where no outage was watched', () => {
    expect(
      CHARTS['12-outage-recovery']({
        ...results,
        outages: results.outages.map((outage) => ({ ...outage, byDay: null })),
      }),
    ).toBeNull();
  });
});

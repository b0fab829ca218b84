import { describe, expect, it } from 'vitest';
import { crewLoad } from '../../../../src/report/charts/simulate/crews.js';
import { pageTables } from '../../../../src/report/page/tables.js';
import type { Results } from '../../../../src/study/simulate/results.js';
import { textRows } from '../../samples/read.js';
import { sampleResults } from '../../samples/results.js';

const results = sampleResults({ stations: 3, weeks: 30 });
const none = { mean: 0, low: 0, high: 0, level: 0.95, n: 40 };

describe('the picture of crew load', () => {
  it('shows the most loaded first, names its busiest week, and has a panel a crew', () => {
    const chart = crewLoad(results)!,
      fullest = results.crews.reduce((a, b) => (b.busy.mean > a.busy.mean ? b : a));
    expect(chart.finding.startsWith(`Most loaded crew: ${fullest.name}, in its busiest week`)).toBe(true);
    const week = fullest.series.engaged.reduce(
      (best, each, w, all) => (each.mean > all[best].mean ? w : best),
      0,
    );
    expect(chart.finding).toContain(`in its busiest week, ${results.series.labels[week]}, `);
    expect(
      Object.keys(chart.configuration.options!.scales!).filter((axis) => /^y\d/.test(axis)),
    ).toHaveLength(results.crews.length);
    expect(chart.alt).toContain('Orange blocks at the foot: weeks with overtime');
  });

  it('shows eight at most and says how many are left out', () => {
    const many: Results = {
      ...results,
      crews: Array.from({ length: 11 }, (_, i) => ({ ...results.crews[0], name: `crew ${i}` })),
    };
    const chart = crewLoad(many)!;
    expect(chart.configuration.data.datasets).toHaveLength(4 * 8);
    expect(chart.alt).toContain('3 crews less loaded: in results.json');
  });

  it('has gaps in weeks without hours, and nothing to draw without crews', () => {
    const first = results.crews[0],
      holed = {
        ...first,
        series: {
          ...first.series,
          present: first.series.present.map((each, w) => (w === 5 ? { ...each, n: 0 } : each)),
        },
      };
    const drawn = crewLoad({ ...results, crews: [holed] })!.configuration.data.datasets[3].data;
    expect([drawn[4] === null, drawn[5]]).toEqual([false, null]);
    expect(crewLoad({ ...results, crews: [] })).toBeNull();
  });
});

describe('tables of crews', () => {
  it('name the headcount of each shift, overtime rules and shutdowns', () => {
    const made: Results = {
      ...results,
      overtime: [
        {
          name: 'days, UTC: 3 behind',
          looked: { ...none, mean: 10 },
          worked: { ...none, mean: 0.4 },
          hours: [none, { ...none, mean: 10 }],
        },
      ],
      shutdowns: [{ calendar: 'days', from: '2027-07-12', to: '2027-07-23', note: null }],
    };
    const tables = new Map(pageTables(made).map((table) => [table.id, textRows(table)]));
    expect(tables.get('crews')![1].slice(0, 3)).toEqual(['painters', 'paint and finishing works', '7, 4']);
    // 10 h in one of two weeks.
    expect(tables.get('overtime')![0].at(-1)).toBe('5');
    expect(tables.get('shutdowns')).toEqual([['days', '2027-07-12', '2027-07-23', '']]);
    expect(pageTables(results).map(({ id }) => id)).not.toContain('overtime');
  });
});

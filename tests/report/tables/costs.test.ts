import { describe, expect, it } from 'vitest';
import { CHARTS } from '../../../src/report/charts/of-study.js';
import { pageTables } from '../../../src/report/page/tables.js';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { textRows } from '../samples/read.js';
import { sampleResults } from '../samples/results.js';

const results = sampleResults(),
  costs = results.costs!;

describe('the picture of costs', () => {
  const chart = CHARTS.simulate['13-cost-per-unit'](results)!;
  const { labels, datasets } = chart.configuration.data;

  it('has the cost of a unit and its greatest part for a title', () => {
    expect(chart.finding).toBe('A unit costs 12,300 EUR: 61 % is for people, 830 EUR for rework');
  });

  it('shows all parts, the greatest first, and rework apart from them', () => {
    const sorted = [...costs.parts].sort((a, b) => b.perUnit.mean - a.perUnit.mean);
    expect(labels).toEqual(['parts', ...sorted.map(({ name }) => name), 'within these parts', 'rework']);
    expect(datasets[0].data).toEqual([
      null,
      ...sorted.map(({ perUnit }) => perUnit.mean),
      null,
      costs.rework.costPerUnit.mean,
    ]);
    expect(datasets[1].data.at(-1)).toEqual([costs.rework.costPerUnit.low, costs.rework.costPerUnit.high]);
  });

  it('writes the amounts at its axis as the text does, whatever the language of the machine', () => {
    expect(chart.configuration.options?.locale).toBe('en');
  });

  it('is left out where nothing has a price', () => {
    expect(CHARTS.simulate['13-cost-per-unit']({ ...results, costs: null })).toBeNull();
  });
});

it('the page has a table of parts, their sum, and rework beside it', () => {
  const table = pageTables(results).find(({ id }) => id === 'costs')!,
    { head } = table,
    rows = textRows(table);
  expect(head).toEqual(['Part', 'A unit, EUR', 'Share, %']);
  expect(rows.at(-2)).toEqual(['all', '12,340 (12,180 to 12,500)', '100.0']);
  expect(rows.at(-1)![0]).toBe('of which rework (9.4 (8.9 to 9.9) person-hours)');
});

it('the terminal has one line for the cost of a unit and one for rework, none without prices', () => {
  expect(resultsTable(results)).toMatch(
    /cost of a unit shipped, EUR +12,340 +12,180 to 12,500\n +of which rework +830 +730 to 930/,
  );
  expect(resultsTable({ ...results, costs: null })).not.toContain('cost of a unit');
});

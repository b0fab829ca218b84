import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { csv, fileTable } from '../../../src/report/files/folder/csv.js';
import { runsData, seriesData, stationsData } from '../../../src/report/files/simulate.js';
import { readTable } from '../../../src/scenario/file/csv.js';
import { sampleResults } from '../samples/results.js';

/** Read back with csv-parse, an independent reader. */
const read = (text: string) => parse<Record<string, string>>(text, { columns: true });

describe('CSV', () => {
  it('quotes commas, quotes and line ends so that a reader gets them back', () => {
    const nasty = 'booth "A", left\nside';
    const text = csv(
      fileTable(
        [nasty],
        [
          ['name', (name) => name],
          ['n', () => null],
        ],
      ),
    );
    expect(read(text)).toEqual([{ name: nasty, n: '' }]);
  });

  it('guards what a spreadsheet would take for a formula, and our own reader takes the guard off', () => {
    const names = ["=cmd|' /C calc'!A0", '@SUM(1+1)', '+1+1', '-2', "'quoted'", 'plain'],
      text = csv(fileTable(names, [['name', (name) => name]]));
    for (const row of read(text)) expect(row['name']).not.toMatch(/^[=+\-@]/);
    const table = readTable(() => text, 'names.csv', 'name');
    expect(table.fault === undefined && table.rows.map(({ cells }) => cells[0])).toEqual(names);
    // Numbers are none.
    expect(csv(fileTable([-2], [['n', (n) => n]]))).toBe('n\n-2\n');
  });

  it('has a row a week, with the interval of what was shipped and of the WIP of every place', () => {
    const results = sampleResults({ stations: 3, weeks: 20 });
    const rows = read(csv(seriesData(results)));
    expect(rows.map((row) => row['label'])).toEqual(results.series.labels);
    expect(Number(rows[15]?.['shipped_per_day_low'])).toBeCloseTo(
      results.series.shippedPerDay[15]?.low ?? NaN,
      8,
    );
    expect(Number(rows[15]?.['wip site final plant_mean'])).toBeCloseTo(
      results.wip.places[2]?.series[15]?.mean ?? NaN,
      8,
    );
  });

  it('has a row a station whose state shares add to 1', () => {
    const rows = read(csv(stationsData(sampleResults({ stations: 45 }))));
    expect(rows).toHaveLength(45);
    for (const row of rows) {
      const shares = Object.entries(row)
        .filter(([key]) => key.endsWith('_mean') && key !== 'visits_per_unit_mean')
        .map(([, value]) => Number(value));
      expect(shares).toHaveLength(10);
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 8); // 10 numbers of 10 digits
    }
  });

  it('has a row a replication, empty where there is no value', () => {
    const results = sampleResults({ replications: 12 });
    const [first] = results.runs;
    const rows = read(
      csv(runsData({ ...results, runs: [{ ...first, lastShipped: null }, ...results.runs.slice(1)] })),
    );
    expect(rows).toHaveLength(12);
    expect(rows[0]?.['last_shipped']).toBe('');
    expect(rows[11]?.['replication']).toBe('12');
  });
});

import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { placesCurve } from '../../../src/report/charts/studies/buffers-curve.js';
import { buffersFiles } from '../../../src/report/files/buffers.js';
import { againstChosen, buffersTable } from '../../../src/report/terminal/buffers.js';
import { buffersStudy } from '../../../src/study/buffers/buffers.js';
import { threeStations } from '../../study/buffers/buffers-line.js';
import { asRead } from '../samples/read.js';

const results = await buffersStudy({
  scenario: threeStations('{ exponential: { mean: 1 h } }'),
  file: 'three.yaml',
  goal: { kind: 'budget', places: 3 },
  replications: 3,
  seed: 'a',
  workers: 1,
});

describe('the report of shared-out places', { timeout: 30_000 }, async () => {
  const files = await buffersFiles(results);

  it('has the results, two pictures, a page with the answer and the caution, and a CSV of the layouts', () => {
    expect([...files.keys()].sort()).toEqual([
      '01-throughput-by-places.png',
      '02-places.png',
      'layouts.csv',
      'report.html',
      'results.json',
    ]);
    const page = asRead(files.get('report.html'));
    expect(page).toContain(results.answer.sentence);
    expect(page).toContain('governed by local codes');
    expect(JSON.parse(String(files.get('results.json')))).toMatchObject({
      format: 'rateproof results',
      study: 'buffers',
      goal: { kind: 'budget', places: 3 },
    });
  });

  it('has every layout with its places by spot in the CSV', () => {
    const rows = parse<Record<string, string>>(String(files.get('layouts.csv')), { columns: true });
    expect(rows.map((row) => row['layout'])).toEqual([
      'chosen',
      'as it is',
      ...results.selection.others.map(({ standing }) => standing),
      ...results.curve.map(() => 'curve'),
    ]);
    for (const row of rows)
      expect(Number(row['places at second']) + Number(row['places at third'])).toBe(Number(row['places']));
    expect(Number(rows[0]['rate_low'])).toBeCloseTo(results.chosen.rate.low!, 9);
  });

  it('is a table of at most 100 columns that begins with the answer', () => {
    const lines = buffersTable(results).split('\n');
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
    expect(lines[0]).toMatch(/^3 places, well shared out, give 0\.\d+ units an hour/);
    expect(lines.find((line) => line.startsWith('chosen'))).toContain(' 36 ');
  });

  it('says of the layout as it is how far it is behind the chosen one, or ahead of it, never less than nothing', () => {
    expect(againstChosen({ mean: 0.05, low: 0.01, high: 0.09, level: 0.95, n: 9 })).toBe(
      '0.05 behind chosen (0.01 to 0.09)',
    );
    expect(againstChosen({ mean: -0.01, low: -0.04, high: 0.02, level: 0.95, n: 9 })).toBe(
      '0.01 ahead of chosen (-0.02 to 0.04)',
    );
  });

  it('draws a curve only where there are two points', () => {
    expect(placesCurve({ ...results, curve: results.curve.slice(0, 1) })).toBeNull();
    expect(placesCurve(results)!.alt).toContain('Best layout found for each number of waiting places');
  });
});

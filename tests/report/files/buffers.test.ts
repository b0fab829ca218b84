import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { placesCurve } from '../../../src/report/charts/studies/buffers-curve.js';
import { placesLayout } from '../../../src/report/charts/studies/buffers-layout.js';
import { buffersFiles } from '../../../src/report/files/buffers.js';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { againstChosen, buffersTable } from '../../../src/report/terminal/buffers.js';
import { buffersStudy } from '../../../src/study/buffers/buffers.js';
import type { ComparedLayout } from '../../../src/study/buffers/results.js';
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
      'report.xlsx',
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
      'best',
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
    expect(lines[0]).toBe(buffersFirst(results).answer);
    expect(lines.find((line) => line.startsWith('In full: '))).toMatch(/3 places give 0\.\d+ units an hour/);
    expect(lines.find((line) => line.startsWith('places at'))).toMatch(/as it is +chosen +best of 3$/);
    expect(lines.find((line) => line.startsWith('chosen'))).toContain(' 36 ');
  });

  it('says of a layout how it stands against the chosen one, and by the interval what it ships more', () => {
    const against = (standing: ComparedLayout['standing'], mean: number): string =>
      againstChosen({
        ...results.present,
        standing,
        behind: {
          difference: { mean, low: mean - 0.04, high: mean + 0.04, level: 0.95, n: 9 },
          pairingGain: null,
        },
      });
    // Chosen minus this one: 0.01 to 0.09 behind.
    expect(against('behind', 0.05)).toBe('behind (-0.09 to -0.01)');
    expect(against('ahead', -0.05)).toBe('ahead (0.01 to 0.09)');
    expect(against('not told apart', -0.01)).toBe('not told apart (-0.03 to 0.05)');
    expect(againstChosen({ ...results.present, standing: 'chosen' })).toBe('chosen');
  });

  it('leads with the fewest places that do, and tells what more would bring', async () => {
    const found = await buffersStudy({
      scenario: threeStations('{ exponential: { mean: 1 h } }', [3, 0]),
      file: 'three.yaml',
      goal: { kind: 'budget', places: 3 },
      replications: 3,
      seed: 'a',
      workers: 1,
      zone: 0.3,
    });
    expect(found.chosen.total).toBe(0);
    const lines = buffersTable(found).split('\n'),
      row = (start: string): string | undefined => lines.find((line) => line.startsWith(start));
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
    expect(row('In full: ')).toMatch(/^In full: 0 places do as well as 3, to within 30 %/);
    expect(row('best ')).toMatch(/ (equal|ahead|not told apart) \(/);
    expect(row('second')).toMatch(/^second +3 +0 +\d$/);
    expect(placesCurve(found)!.finding).toBe('0 places come within 30 % of what 3 give');
    expect(placesLayout(found).alt).toContain('hatched: the best found with 3');
    const page = String((await buffersFiles(found)).get('report.html'));
    expect(page).toMatch(/3\splaces would bring/);
    expect(page).toContain('Best of 3');
  });

  it('keeps the chosen number of places in a table that leaves points out', () => {
    const curve = Array.from({ length: 40 }, (_, total) => ({ ...results.chosen, total, behind: 0 }));
    const rows = buffersTable({ ...results, curve, chosen: { ...results.chosen, total: 17 } })
      .split('\n')
      .slice(-13)
      .map((line) => Number(line.trim().split(/ +/)[0]));
    expect(rows).toContain(17);
    expect([rows[0], rows.at(-1)]).toEqual([0, 39]);
  });

  it('draws a curve only where there are two points', () => {
    expect(placesCurve({ ...results, curve: results.curve.slice(0, 1) })).toBeNull();
    expect(placesCurve(results)!.alt).toContain('Best layout found for each number of places');
  });
});

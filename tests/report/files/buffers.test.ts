import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { placeByPlaceChart } from '../../../src/report/charts/studies/buffers-around.js';
import { placesCurve } from '../../../src/report/charts/studies/buffers-curve.js';
import { placesLayout } from '../../../src/report/charts/studies/buffers-layout.js';
import { buffersFiles } from '../../../src/report/files/buffers.js';
import { buffersFirst } from '../../../src/report/first/buffers.js';
import { LAYOUT } from '../../../src/report/style.js';
import { againstChosen, buffersTable } from '../../../src/report/terminal/buffers/buffers.js';
import { buffersStudy } from '../../../src/study/buffers/buffers.js';
import type { ComparedLayout } from '../../../src/study/buffers/results.js';
import { threeStations } from '../../study/buffers/buffers-line.js';
import { asRead } from '../samples/read.js';
import { readBack } from '../sheets/read-back.js';

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

  it('has the results, its pictures, a page with the answer and the caution, and its CSV files', () => {
    expect([...files.keys()].sort()).toEqual([
      '01-throughput-by-places.png',
      '02-places.png',
      '03-place-by-place.png',
      '04-losses.png',
      '05-trials.png',
      'around.csv',
      'layouts.csv',
      'losses.csv',
      'report.html',
      'report.xlsx',
      'results.json',
      'trials.csv',
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

  it('keeps the chosen number of places, and every knee, in a table that leaves points out', () => {
    const curve = Array.from({ length: 40 }, (_, total) => ({
      ...results.chosen,
      rate: { ...results.chosen.rate, mean: Math.min(total, 5) },
      total,
      behind: 0,
    }));
    const lines = buffersTable({ ...results, curve, chosen: { ...results.chosen, total: 17 } }).split('\n'),
      rows = lines
        .slice(lines.findIndex((line) => line.startsWith('places  best found')) + 2)
        .map((line) => line.trim().split(/ +/)[0]);
    expect(rows.slice(0, 5)).toEqual(['0', '5', '17', '39', 'numbers']);
  });

  it('has every number of places looked at in around.csv, those chosen among them, and in the workbook', () => {
    const rows = parse<Record<string, string>>(String(files.get('around.csv')), { columns: true }),
      { spots } = results.placeByPlace!;
    expect(rows.map(({ spot, places }) => [spot, Number(places)])).toEqual(
      spots.flatMap(({ name, chosen, points }) =>
        [chosen, ...points.map(({ places }) => places)].sort((a, b) => a - b).map((places) => [name, places]),
      ),
    );
    for (const { places_more: by, rate_more_mean: more, rate_mean: rate } of rows)
      if (by !== '0') expect(Number(more)).toBeCloseTo(Number(rate) - results.placeByPlace!.rate, 8);
      else expect(more).toBe('');
    expect(readBack(files.get('report.xlsx')).SheetNames).toEqual(
      expect.arrayContaining(['around.csv', 'Place by place', 'Cost', 'Cost by part']),
    );
  });

  it('tells what floor costs, no figure beside another', () => {
    expect(buffersFirst(results).toDo.brief).toMatch(/ Floor space: 36 EUR a day, not 24\.$/);
  });

  it('cuts what loses far more than a fifth from a panel, and nothing that loses less than twice that', () => {
    const { placeByPlace } = results,
      [{ points, ...spot }] = placeByPlace!.spots;
    const drawn = (loss: number) => {
      const more = { ...points[0].more, mean: -loss, low: -loss, high: -loss },
        spots = [{ ...spot, points: [{ ...points[0], by: -1, more }] }],
        { how, configuration } = placeByPlaceChart({
          ...results,
          placeByPlace: { ...placeByPlace!, rate: 1, spots },
        })!,
        [{ pointRadius }] = configuration.data.datasets as { pointRadius?: number[] }[];
      return { isTold: how.includes('In figures: what runs out'), hasPoint: pointRadius![2] > 0 };
    };
    expect(drawn(0.39)).toEqual({ isTold: false, hasPoint: true });
    expect(drawn(0.41)).toEqual({ isTold: true, hasPoint: false });
  });

  it('draws a panel a spot, and as many rows as a screen has room for at first', () => {
    const drawn = placeByPlaceChart(results)!,
      names = drawn.configuration.data.datasets.map(({ label }) => label);
    expect(names.filter((label) => !/(low|high)$/.test(label!))).toEqual(['second', 'third']);
    expect(placeByPlaceChart({ ...results, placeByPlace: null })).toBeNull();
    Object.assign(LAYOUT, { mostRows: 1, isCut: false });
    expect(placeByPlaceChart(results)!.configuration.data.datasets).toHaveLength(3);
    expect(LAYOUT.isCut).toBe(true);
    Object.assign(LAYOUT, { mostRows: 120, isCut: false });
  });

  it('draws a curve only where there are two points', () => {
    expect(placesCurve({ ...results, curve: results.curve.slice(0, 1) })).toBeNull();
    expect(placesCurve(results)!.alt).toContain('Best layout found for each number of places');
  });
});

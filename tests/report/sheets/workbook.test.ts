import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { stationsData, unitsData } from '../../../src/report/files/simulate.js';
import { whole } from '../../../src/report/first/first.js';
import { type PageContent, SAFETY_CAUTION } from '../../../src/report/page/page.js';
import { buffersPage } from '../../../src/report/page/studies/buffers.js';
import { comparePage } from '../../../src/report/page/studies/compare.js';
import { factorsPage } from '../../../src/report/page/studies/factors.js';
import { ratePage } from '../../../src/report/page/studies/rate.js';
import { reachPage } from '../../../src/report/page/studies/reach.js';
import { reliefsPage } from '../../../src/report/page/studies/reliefs.js';
import { simulatePage } from '../../../src/report/page/studies/simulate.js';
import { workbook } from '../../../src/report/sheets/workbook.js';
import type { BufferResults } from '../../../src/study/buffers/results.js';
import type { CompareResults } from '../../../src/study/compare/results.js';
import type { FactorsResults } from '../../../src/study/factors/results.js';
import type { RateResults } from '../../../src/study/rate/results.js';
import type { ReachResults } from '../../../src/study/reach/results.js';
import type { ReliefsResults } from '../../../src/study/reliefs/results.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { sampleResults } from '../samples/results.js';
import { cellsOf, headsOf, part, readBack, serial, under } from './read-back.js';

/** The results of a sample report. */
function stored(study: string): unknown {
  const file = new URL(`../../../reports/${study}/results.json`, import.meta.url);
  return JSON.parse(readFileSync(fileURLToPath(file), 'utf8'));
}

const results = stored('rescue-tender') as Results,
  content = simulatePage(results),
  files = [
    ['stations.csv', stationsData(results)],
    ['units.csv', unitsData(results)],
  ] as const;

describe('the workbook of the demo', async () => {
  const bytes = await workbook(content, files),
    book = readBack(bytes),
    sheet = (name: string) => book.Sheets[name];

  it('says on its first sheet the answer, how sure, findings, what it rests on, origin and the caution', () => {
    expect(book.SheetNames[0]).toBe('Answer');
    const rows = cellsOf(sheet('Answer')).map((row) => row.map((cell) => cell?.v)),
      said = (what: string) => rows.filter(([first]) => first === what).map(([, words]) => words);
    expect(said('Answer')).toEqual([content.first.answer]);
    expect(said('How sure')).toEqual([whole(content.first.sure)]);
    expect(said('In full')).toEqual([results.answer.sentence]);
    expect(said('Finding')).toEqual(content.findings);
    expect(said('Rests on')).toEqual(content.assumptions);
    expect(said('Safety')).toEqual([SAFETY_CAUTION]);
    expect(said('Seed')).toEqual([results.seed]);
    expect(said('Digest')).toEqual([results.scenario.digest]);
    expect(said('Program')[0]).toContain(results.program);
  });

  it('has a sheet for each table of the page and each file given, listed with its note', () => {
    expect(book.SheetNames).toHaveLength(2 + content.tables.length + files.length);
    expect(book.SheetNames.slice(-2)).toEqual(['stations.csv', 'units.csv']);
    const listed = cellsOf(sheet('Contents')).slice(2);
    expect(listed.map(([name]) => name?.v)).toEqual(book.SheetNames.slice(2));
    expect(listed.slice(0, content.tables.length).map((row) => row[2]?.v)).toEqual(
      content.tables.map(({ note }) => note),
    );
    content.tables.forEach(({ rows }, i) => {
      expect(cellsOf(sheet(book.SheetNames[2 + i]))).toHaveLength(1 + rows.length);
    });
  });

  it('has means and the ends of their intervals as numbers', () => {
    const { mean, low, high } = results.leadTime.mean;
    const row = cellsOf(sheet('Overall')).find(([first]) => first?.v === 'lead time mean, days')!;
    expect(row.slice(1, 4).map((cell) => [cell?.t, cell?.v])).toEqual(
      [mean, low, high].map((value) => ['n', value]),
    );
  });

  it('has shares from 0 to 1 shown in per cent, money with cents and counts without', () => {
    const [first] = results.constraint!.judged!.stations,
      working = under(sheet('Stations'), 'working, %', 1)!;
    expect(working).toMatchObject({ t: 'n', v: first.share.working.mean, z: '0.0%' });
    expect(under(sheet('Stations'), 'Places', 1)).toMatchObject({ t: 'n', z: '#,##0' });
    expect(under(sheet('Costs'), 'A unit, EUR: low', 1)).toMatchObject({ t: 'n', z: '#,##0.00' });
    expect(under(sheet('stations.csv'), 'working_mean', 1)).toMatchObject({ t: 'n', z: '0.0%' });
  });

  it('has days as dates, each end of an interval in a column of its own', () => {
    const [unit] = results.units;
    const day = (date: string) => ({ t: 'n', v: serial(date), z: 'yyyy-mm-dd' });
    expect(under(sheet('units.csv'), 'due', 1)).toMatchObject(day(unit.due!));
    expect(under(sheet('units.csv'), 'shipped_p50_high', 1)).toMatchObject(day(unit.shipped[0].high!));
    expect(under(sheet('units.csv'), 'build', 1)).toMatchObject({ t: 's', v: unit.build });
    expect(under(sheet('Outages'), 'When: from', 1)).toMatchObject(day('2028-02-07'));
    expect(under(sheet('Outages'), 'When: to', 1)).toMatchObject(day('2028-02-09'));
    const { date } = results.recoveries[0].behindMost;
    expect(under(sheet('Recoveries'), 'Units behind at the most: on', 1)).toMatchObject(day(date));
  });

  it('has the same bytes for the same results, and no time in them', async () => {
    expect((await workbook(content, files)).equals(bytes)).toBe(true);
    expect(part(book, 'docProps/core.xml').match(/\d{4}-\d\d-\d\dT[\d:]+Z/g)).toEqual([
      '1980-01-01T00:00:00Z',
      '1980-01-01T00:00:00Z',
    ]);
    // A local header of the zip has its time in bytes 10 to 13 (PKWARE, APPNOTE.TXT, sec. 4.3.7).
    const times = new Set<string>();
    for (let at = bytes.indexOf('PK\u0003\u0004'); at >= 0; at = bytes.indexOf('PK\u0003\u0004', at + 4))
      times.add(bytes.subarray(at + 10, at + 14).toString('hex'));
    expect([...times]).toEqual(['00002100']);
  });
});

/** A number, a share, an interval, a day, with nothing but numbers behind it. */
const NUMBERS = /^[+-]?[\d,.]+( %)?$|^[+-]?[\d,.]+ \(|^\d{4}-\d\d-\d\d/,
  WRITTEN = new Set([
    'Guesses, Now',
    'Guesses, Tried',
    ...['Value', 'Now', 'Low', 'High'].map((head) => `Assumptions, ${head}`),
    ...['in the base', 'in the what-if'].map((head) => `Changes, ${head}`),
  ]);

describe('the workbook of every study', () => {
  const pages: readonly (readonly [study: string, page: PageContent])[] = [
    ['simulate', content],
    ['rate', ratePage(stored('rate') as RateResults)],
    ['compare', comparePage(stored('compare') as CompareResults)],
    ['factors', factorsPage(stored('factors') as FactorsResults)],
    ['reliefs', reliefsPage(stored('reliefs') as ReliefsResults)],
    ['buffers', buffersPage(stored('buffers') as BufferResults)],
    ['reach', reachPage(stored('reach') as ReachResults)],
  ];

  it.each(pages)('%s has a bold head that stands still on every sheet, and no formula', async (_, page) => {
    const book = readBack(await workbook(page, [])),
      styles = part(book, 'xl/styles.xml'),
      fonts = [...styles.matchAll(/<font>.*?<\/font>/g)].map(([font]) => font),
      [, formats = ''] = /<cellXfs[^>]*>(.*?)<\/cellXfs>/.exec(styles) ?? [],
      fontOf = [...formats.matchAll(/<xf [^>]*fontId="(\d+)"/g)].map(([, font]) => Number(font));
    book.SheetNames.forEach((name, i) => {
      const xml = part(book, `xl/worksheets/sheet${i + 1}.xml`),
        [, head = ''] = /<row r="1"[^>]*>(.*?)<\/row>/.exec(xml) ?? [],
        styleIds = [...head.matchAll(/<c [^>]*s="(\d+)"/g)].map(([, style]) => Number(style));
      expect(xml, name).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
      expect(styleIds.length, name).toBe(headsOf(book.Sheets[name]).length);
      for (const id of styleIds) expect(fonts[fontOf[id]], name).toContain('<b/>');
      expect(xml, name).not.toContain('<f');
    });
  });

  it.each(pages)('%s has no interval and no number in words, but among other words', async (_, page) => {
    const book = readBack(await workbook(page, []));
    // Sentences, lists in one cell, names; and values as planners write them, `4 %` or `20 min`.
    const inWords = [
      'Found at',
      'Charged to, h',
      'Headcount',
      'Part',
      'Note',
      'Build',
      'In words',
      'How sure',
    ];
    for (const name of book.SheetNames.filter((each) => each !== 'Contents')) {
      const heads = headsOf(book.Sheets[name]);
      for (const row of cellsOf(book.Sheets[name]).slice(1))
        row.forEach((cell, column) => {
          if (cell?.t !== 's' || inWords.includes(heads[column])) return;
          const place = `${name}, ${heads[column]}`;
          expect(String(cell.v), place).not.toMatch(WRITTEN.has(place) ? /^[+-]?[\d,.]+$/ : NUMBERS);
        });
    }
  });
});

// eslint-disable-next-line no-control-regex -- controls are what is looked for
const NO_XML = /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]/;

describe('names that do harm elsewhere', () => {
  const NAMES = [
    ...['=1+1', '+2', '-3', '@SUM(1)', "=cmd|' /C calc'!A0", '{=1}', "'quoted'", '#N/A', '#REF!', '#1'],
    ...['constructor', '__proto__', 'toString', 'TRUE', '007', '1e5', '2027-01-01', '10 %'],
    ...['_x0041_', '_x005F_x0041_', 'a_xzz_', '<b>&"\'', ']]>', '  spaced  ', 'two\nlines', 'a\tb'],
    ...['\ufffd', '😀', 'בניין 3', 'مصنع', '塗装ブース', 'http://example.org', '[a]:*?/\\b'],
  ];

  it('come back as they were, as words', async () => {
    const named = sampleResults({ stations: NAMES.length, names: (i) => NAMES[i] });
    const book = readBack(await workbook(simulatePage(named), [['stations.csv', stationsData(named)]]));
    for (const [sheet, head] of [
      ['Stations', 'Station'],
      ['stations.csv', 'station'],
    ] as const) {
      const cells = NAMES.map((_, i) => under(book.Sheets[sheet], head, i + 1));
      expect(cells.map((cell) => cell?.v)).toEqual(named.stations.map(({ name }) => name));
      expect(cells.every((cell) => cell?.t === 's' && cell.f === undefined)).toBe(true);
    }
  });

  it('show marks that XML forbids or that turn text around as their code points, and are cut for Excel', async () => {
    const bad = ['a\u0000b', 'a\u001bb', 'a\u202eb', 'a\ufffeb', 'a\uffffb', 'x'.repeat(40_000)],
      table = { id: 'names', title: 'Names', note: '', head: ['Name'], rows: bad.map((name) => [name]) };
    const book = readBack(await workbook({ ...content, scenario: 'a\u0000b', tables: [table] }, []));
    expect(
      cellsOf(book.Sheets['Names'])
        .slice(1)
        .map(([cell]) => cell?.v),
    ).toEqual(['a<U+0000>b', 'a<U+001B>b', 'a<U+202E>b', 'a<U+FFFE>b', 'a<U+FFFF>b', 'x'.repeat(32_767)]);

    for (const name of Object.keys(book.files).filter((each) => each.endsWith('.xml')))
      expect(part(book, name), name).not.toMatch(NO_XML);
  });
});

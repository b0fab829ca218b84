import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ForecastResults } from '../../../../src/study/forecast/forecast.js';
import { scenarioFolder } from '../../run-cli.js';
import { runHere } from '../../run-here.js';

const folder = scenarioFolder();
// Invented. A bench of 2 h work in 8 h days builds four a day, nothing is left to chance, six come in a day: by
// Tuesday the first four are out; 5 to 8 are out on Tuesday and 9 to 12 on Wednesday.
const DUE = ['02', '02', '02', '02', '02', '02', '02', '02', '02', '02', '03', '03'];
writeFileSync(
  join(folder, 'builds.csv'),
  ['build,due', ...DUE.map((day, i) => `B${i + 1},2027-03-${day}`), ''].join('\n'),
);
writeFileSync(
  join(folder, 'bench.yaml'),
  `scenario: one bench
programme: { start: 2027-03-01, quantity: 12, rate: { per day: 6 }, build list: builds.csv }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  hall:
    zone: Europe/Berlin
    calendar: days
    stations: { bench: { places: 1, buffer: unlimited } }
route:
  - { step: build, at: bench, work: 2 h }
`,
);

const forecast = (...args: string[]) =>
  runHere(folder, 'forecast', ...args, '--replications', '5', '--quiet');
const TUESDAY = ['bench.yaml', 'bench.csv', '--at', '2027-03-02'];

beforeAll(async () => {
  const made = ['bench.yaml', '--trace', 'bench.csv', '--replications', '2', '--finding-ok', '--quiet'];
  const { code, stderr } = await runHere(folder, 'simulate', ...made);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
}, 60_000);

describe('rateproof forecast', { timeout: 60_000 }, () => {
  it('tells which orders are late, by how much and how sure, as worked by hand', async () => {
    const { code, stdout } = await forecast(...TUESDAY, '--json');
    expect(code).toBe(3);
    const { orders, lateOrders, byDay, lastUnit, units } = JSON.parse(stdout) as ForecastResults;
    expect(units).toMatchObject({ shipped: 4 });
    const late = orders.filter((order) => order.late !== 0);
    expect(late.map(({ unit, late, daysLate, due, half }) => [unit, late, daysLate, due, half])).toEqual([
      ['B9', 5, 1, '2027-03-02', '2027-03-03'],
      ['B10', 5, 1, '2027-03-02', '2027-03-03'],
    ]);
    expect(lateOrders).toEqual({ half: 2, fourInFive: 2 });
    expect(byDay.map(({ date, p10, p50, p90, due }) => [date.slice(8), p10, p50, p90, due])).toEqual([
      ['02', 4, 4, 4, 6],
      ['03', 8, 8, 8, 8],
    ]);
    expect(lastUnit).toEqual({ half: '2027-03-03', fourInFive: '2027-03-03' });
  });

  it('writes page, workbook, pictures and data, and prints the answer in the words of the page', async () => {
    const { code, stdout, stderr } = await forecast(...TUESDAY, '--out', 'report', '--finding-ok');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^2 of 8 orders with a due day will likely be late\.\n/);
    expect(stdout).toContain('Which ones: Orders B9 (1 day), B10 (1 day).');
    expect(stdout).toContain('By when: Last unit by 3 March 2027, four times in five.');
    expect(readdirSync(join(folder, 'report')).sort()).toEqual([
      '01-orders.png',
      '02-shipped-by-day.png',
      'days.csv',
      'orders.csv',
      'report.html',
      'report.xlsx',
      'results.json',
    ]);
    const page = readFileSync(join(folder, 'report/report.html'), 'utf8');
    expect(page).toContain('<title>2 of 8 orders with a due day will likely be late. one bench</title>');
    expect(readFileSync(join(folder, 'report/orders.csv'), 'utf8').split('\n')[1]).toMatch(
      /^B9,.*,2027-03-02,5,1,2027-03-03,2027-03-03$/,
    );
    const again = await forecast(...TUESDAY, '--out', 'report');
    expect(again.code).toBe(2);
    expect(again.stderr).toContain('report');
  });

  it('counts an order as late that is overdue at the moment', async () => {
    const { code, stdout } = await forecast('bench.yaml', 'bench.csv', '--at', '2027-03-03', '--json');
    expect(code).toBe(3);
    const { orders, byDay } = JSON.parse(stdout) as ForecastResults;
    expect(orders.map(({ unit, late, daysLate, due }) => [unit, late, daysLate, due])).toEqual([
      ['B9', 5, 1, '2027-03-02'],
      ['B10', 5, 1, '2027-03-02'],
      ['B11', 0, null, '2027-03-03'],
      ['B12', 0, null, '2027-03-03'],
    ]);
    expect(byDay).toEqual([{ date: '2027-03-03', p10: 4, p50: 4, p90: 4, due: 4 }]);
  });

  it('ends with 0 where no order is likely late', async () => {
    writeFileSync(
      join(folder, 'later.csv'),
      ['build,due', ...DUE.map((_, i) => `B${i + 1},2027-03-05`), ''].join('\n'),
    );
    const text = readFileSync(join(folder, 'bench.yaml'), 'utf8').replace('builds.csv', 'later.csv');
    writeFileSync(join(folder, 'later.yaml'), text);
    const later = await forecast('later.yaml', 'bench.csv', '--at', '2027-03-02');
    expect(later.code).toBe(0);
    expect(later.stdout).toMatch(/^None of 8 orders with a due day is likely late\.\n/);
    expect(later.stdout).toContain('Which ones: No order is late in any build.');
  });

  it.each<[string, string[], RegExp]>([
    ['no moment', ['bench.yaml', 'bench.csv'], /--at/],
    [
      'a moment that is none',
      ['bench.yaml', 'bench.csv', '--at', 'Tuesday'],
      /--at: expected a date or a time, got "Tuesday"/,
    ],
    ['a log that is not there', ['bench.yaml', 'none.csv', '--at', '2027-03-02'], /none\.csv/],
    ['no log', ['bench.yaml', '--at', '2027-03-02'], /LOG/],
  ])('refuses %s in one message, without a trace', async (_, args, message) => {
    const { code, stdout, stderr } = await forecast(...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\n {4}at |undefined|NaN/);
  });
});

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ValidateResults } from '../../../../src/study/validate/results.js';
import { shop } from '../../../study/validate/shop.js';
import { scenarioFolder } from '../../run-cli.js';
import { runHere } from '../../run-here.js';

const folder = scenarioFolder(),
  UNITS = 100;
writeFileSync(join(folder, 'shop.yaml'), shop({ units: UNITS }));
// Invented: a step takes a third longer than the model says.
writeFileSync(join(folder, 'slow.yaml'), shop({ units: UNITS, weld: '200 min' }));

const validate = (...args: string[]) =>
  runHere(folder, 'validate', ...args, '--replications', '10', '--quiet');

beforeAll(async () => {
  for (const [name, seed] of [
    ['shop', 'real'],
    ['slow', 'real'],
  ] as const) {
    const made = [`${name}.yaml`, '--trace', `${name}.csv`, '--seed', seed, '--replications', '2'];
    const { code, stderr } = await runHere(folder, 'simulate', ...made, '--finding-ok', '--quiet');
    expect({ name, code, stderr }).toEqual({ name, code: 0, stderr: '' });
  }
}, 60_000);

describe('rateproof validate', { timeout: 60_000 }, () => {
  it('writes page, workbook, pictures and data, prints the answer, and ends with 3 where the model is off', async () => {
    const { code, stdout, stderr } = await validate('shop.yaml', 'slow.csv', '--out', 'report');
    expect({ code, stderr }).toEqual({ code: 3, stderr: '' });
    expect(stdout).toContain('Working minutes of weld: ');
    expect(stdout).toMatch(/^Measure next: Time \d+ visits of weld/m);
    expect(readdirSync(join(folder, 'report')).sort()).toEqual([
      '01-shipped-by-day.png',
      '02-measures-in-bands.png',
      '03-step-times.png',
      '04-units-inside.png',
      'days.csv',
      'measures.csv',
      'report.html',
      'report.xlsx',
      'results.json',
    ]);
    const page = readFileSync(join(folder, 'report/report.html'), 'utf8'),
      answer = stdout.split('\n')[0];
    expect(page).toContain(`<title>${answer} Mid-size shop</title>`);
    const days = readFileSync(join(folder, 'report/days.csv'), 'utf8').trim().split('\n'),
      { byDay } = JSON.parse(readFileSync(join(folder, 'report/results.json'), 'utf8')) as ValidateResults;
    expect(days[0]).toBe(
      'day,date,log,model_least,model_middle,model_most,body shop_log,body shop_model_least,' +
        'body shop_model_middle,body shop_model_most',
    );
    expect(days).toHaveLength(byDay.length + 1);
  });

  it('counts what the log has: units shipped by day are rows of the log', async () => {
    const { code, stdout } = await validate('shop.yaml', 'shop.csv', '--json');
    expect(code).toBe(0);
    const results = JSON.parse(stdout) as ValidateResults,
      rows = readFileSync(join(folder, 'shop.csv'), 'utf8').trim().split('\n'),
      shipped = rows.filter((row) => row.split(',')[1] === 'ship').map((row) => row.slice(0, 10));
    expect(results.verdict).toBe('agrees');
    expect(results.log).toMatchObject({ rows: rows.length - 1, used: rows.length - 1 });
    for (const { date, real } of results.byDay)
      expect(real, date).toBe(shipped.filter((day) => day <= date).length);
  });

  it('says the same in the folder as by --json, and keeps a folder that it did not write', async () => {
    const { stdout } = await validate('shop.yaml', 'shop.csv', '--json', '--out', 'twice');
    expect(readFileSync(join(folder, 'twice/results.json'), 'utf8')).toBe(stdout);
    const again = await validate('shop.yaml', 'slow.csv', '--out', 'twice');
    expect(again.code).toBe(2);
    expect(again.stderr).toMatch(/twice/);
    expect(readFileSync(join(folder, 'twice/results.json'), 'utf8')).toBe(stdout);
    expect(
      (await validate('shop.yaml', 'slow.csv', '--out', 'twice', '--replace', '--finding-ok')).code,
    ).toBe(0);
  });

  it('compares the days that are asked for', async () => {
    const { stdout } = await validate(
      'shop.yaml',
      'shop.csv',
      '--from',
      '2027-03-08',
      '--to',
      '2027-03-12',
      '--json',
    );
    const { period, byDay } = JSON.parse(stdout) as ValidateResults;
    expect(period).toEqual({ from: '2027-03-08', to: '2027-03-13', days: 5 });
    expect(byDay.map(({ date }) => date.slice(8))).toEqual(['08', '09', '10', '11', '12']);
  });

  it.each<[string, string[], RegExp]>([
    ['a log that is not there', ['shop.yaml', 'none.csv'], /none\.csv/],
    ['no log', ['shop.yaml'], /LOG/],
    ['a scenario in place of a log', ['shop.yaml', 'slow.yaml'], /slow\.yaml/],
    [
      'a day that is none',
      ['shop.yaml', 'shop.csv', '--from', 'Monday'],
      /--from: expected a date, got "Monday"/,
    ],
    ['days outside of the log', ['shop.yaml', 'shop.csv', '--from', '2029-01-01'], /2029-01-01|period|log/],
  ])('refuses %s in one message, without a trace', async (_, args, message) => {
    const { code, stdout, stderr } = await validate(...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\n {4}at |undefined|NaN/);
  });

  it('refuses fewer builds than tell 19 of 20', async () => {
    const { code, stderr } = await runHere(
      folder,
      'validate',
      'shop.yaml',
      'shop.csv',
      '--replications',
      '9',
    );
    expect(code).toBe(2);
    expect(stderr).toContain('--replications: expected a whole number from 10');
  });
});

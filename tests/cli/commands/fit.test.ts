import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { readXlsx, writeXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import type { FitResults } from '../../../src/study/fit/results.js';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder(),
  data = fileURLToPath(new URL('../../../scenarios/data/times-invented.csv', import.meta.url));
const put = (name: string, text: string): void => {
  writeFileSync(join(folder, name), text);
};
const readResults = (of: string): FitResults =>
  JSON.parse(readFileSync(join(folder, of, 'results.json'), 'utf8')) as FitResults;

// Invented: quantiles of a lognormal of cv 0.25, twelve for each cab and colour, no two alike.
const CABS = { short: 1, long: 1.5 },
  COLOURS = { red: 1, white: 1.2 };
const rows = Object.entries(CABS).flatMap(([cab, c], a) =>
  Object.entries(COLOURS).flatMap(([colour, w], b) =>
    Array.from({ length: 12 }, (_, i) => {
      const z = normalQuantile((i + (2 * a + b + 0.5) / 4) / 12, 0, 1);
      return { cab, colour, minutes: (40 * c * w * Math.exp(0.25 * z)).toFixed(2) };
    }),
  ),
);
put(
  'times.csv',
  `step,minutes,cab,colour\n${rows.map((row) => `build,${row.minutes},${row.cab},${row.colour}`).join('\n')}\n`,
);
const scenario = (more = '', step = 'work: 30 min') => `scenario: bench
${more}programme:
  start: 2027-03-01
  quantity: 600
  rate: { per day: 24 }
  options: { cab: { short: 50 %, long: 50 % }, colour: { red: 50 %, white: 50 % } }
sites: { works: { stations: { bench: { places: 8, buffer: unlimited } } } }
route: [{ step: build, at: bench, ${step} }]
`;
put('plain.yaml', scenario());
mkdirSync(join(folder, 'with'));
put('with/bench.yaml', scenario('include: [fitted.yaml]\n'));

describe('rateproof fit', { timeout: 60_000 }, () => {
  it('writes a report of the invented times, whose workbook has the rows left out', async () => {
    cpSync(data, join(folder, 'data.csv'));
    const { code, stdout, stderr } = await runHere(folder, 'fit', 'data.csv', '--by', 'cab', '--out', 'out');
    expect({ code, stderr }).toEqual({
      code: 0,
      stderr: 'wrote out; include fitted.yaml in the scenario to use it\n',
    });
    expect(stdout).toMatch(/^94 times of 4 steps in data\.csv; 2 rows of 96 left out\n/);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([
      '01-times.png',
      '02-distributions.png',
      '03-quantiles.png',
      'fitted.yaml',
      'left-out.csv',
      'report.html',
      'report.xlsx',
      'results.json',
    ]);
    const { sheets } = await readXlsx(readFileSync(join(folder, 'out/report.xlsx'))),
      sheet = (name: string) => sheets.find((each) => each.name === name)?.rows ?? [];
    expect(sheet('Answer')[1]?.slice(0, 2)).toEqual([
      'Question',
      'What do the clocked times say of the steps?',
    ]);
    expect(sheet('Steps')).toHaveLength(5);
    expect(sheet('left-out.csv').map((row) => row[1])).toEqual(['why', 'duplicate', 'unreadable number']);
    // A second time only with --replace, and then with the same bytes.
    const again = await runHere(folder, 'fit', 'data.csv', '--by', 'cab', '--out', 'out');
    expect(again).toMatchObject({ code: 2, stderr: expect.stringContaining('--replace') as string });
    const before = readdirSync(join(folder, 'out')).map((name) => readFileSync(join(folder, 'out', name)));
    expect(
      (await runHere(folder, 'fit', 'data.csv', '--by', 'cab', '--out', 'out', '--replace', '--quiet')).code,
    ).toBe(0);
    const after = readdirSync(join(folder, 'out')).map((name) => readFileSync(join(folder, 'out', name)));
    expect(after.map((bytes, i) => bytes.equals(before[i]))).toEqual(after.map(() => true));
  });

  it('writes options that matter as factors, with which a run has the means by option of the table', async () => {
    const { code, stdout } = await runHere(
      folder,
      ...['fit', 'times.csv', 'plain.yaml', '--by', 'cab', '--by', 'colour', '--out', 'fitted', '--quiet'],
    );
    expect(code).toBe(0);
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain('and a unit with several has their product');
    const [step] = readResults('fitted').steps;
    expect(step.factors).toEqual([
      { option: 'cab', usual: 'long', factors: { short: expect.closeTo(1 / 1.5, 1) as number } },
      { option: 'colour', usual: 'red', factors: { white: expect.closeTo(1.2, 1) as number } },
    ]);
    cpSync(join(folder, 'fitted/fitted.yaml'), join(folder, 'with/fitted.yaml'));
    const run = await runHere(
      folder,
      ...[
        'simulate',
        'with/bench.yaml',
        '--replications',
        '1',
        '--trace',
        'log.csv',
        '--finding-ok',
        '--quiet',
      ],
    );
    expect(run.code).toBe(0);
    const seen = workByOption(readFileSync(join(folder, 'log.csv'), 'utf8'));
    // Some 300 units of each, of cv 0.3: a standard error of 2 %; 5 % is allowed.
    for (const option of ['cab', 'colour'] as const)
      for (const value of Object.keys({ cab: CABS, colour: COLOURS }[option])) {
        const own = rows.filter((row) => row[option] === value).map(({ minutes }) => Number(minutes)),
          wanted = own.reduce((a, b) => a + b) / own.length,
          got = seen
            .filter((unit) => unit.options.includes(`${option}=${value}`))
            .map(({ minutes }) => minutes);
        expect(got.length).toBeGreaterThan(200);
        expect(got.reduce((a, b) => a + b) / got.length / wanted, `${option} ${value}`).toBeCloseTo(1, 1);
      }
  });

  it('reads a workbook as it reads CSV', async () => {
    const cells = [
      ['step', 'minutes', 'cab', 'colour'],
      ...rows.map(({ minutes, cab, colour }) => ['build', Number(minutes), cab, colour]),
    ];
    writeFileSync(join(folder, 'times.xlsx'), await writeXlsx({ sheets: [{ name: 'a', rows: cells }] }));
    const [csv, xlsx] = await Promise.all(
      ['times.csv', 'times.xlsx'].map((name) => runHere(folder, 'fit', name, '--by', 'cab', '--json')),
    );
    const of = (text = '{}'): FitResults => JSON.parse(text) as FitResults;
    expect(of(xlsx.stdout).steps).toEqual(of(csv.stdout).steps);
    expect(of(xlsx.stdout)).toMatchObject({ study: 'fit', table: 'times.xlsx', rows: 48, used: 48 });
  });

  it('writes the work of a pass, and says so; an option that the scenario does not have is told', async () => {
    put('passes.yaml', scenario('', 'passes: { count: 2, work: 22 min }').replaceAll('colour', 'paint'));
    const { stdout } = await runHere(
      folder,
      ...['fit', 'times.csv', 'passes.yaml', '--by', 'colour', '--by', 'cab', '--json'],
    );
    const [step] = (JSON.parse(stdout) as FitResults).steps;
    expect(step).toMatchObject({ path: 'route[build].passes.work', factors: [{ option: 'cab' }] });
    expect(step.notes.join(' ')).toMatch(/of one of its 2 passes.* nearer to that of all 2 passes/);
    expect((await runHere(folder, 'fit', 'times.csv', 'passes.yaml', '--by', 'colour')).stdout).not.toContain(
      'Written as a work factor',
    );
  });

  it.each([
    [['times.csv', '--step', 'operation'], 'operation'],
    [['times.csv', 'plain.yaml', 'more.yaml'], 'expected one scenario FILE, got more.yaml besides'],
    [['nobody.csv'], 'expected a table that can be read'],
    [['times.csv', '--by', 'paint'], 'paint'],
    [['other.csv', 'plain.yaml'], 'expected at least one row that can be used, got none of 1'],
    [['broken.xlsx'], 'expected a workbook that can be read, got a damaged one'],
    [['empty.csv'], 'expected a head and at least one row below it, got none'],
  ])('refuses %j in words, with exit code 2', async (args, words) => {
    put('other.csv', 'step,minutes\nbiuld,5\n');
    put('broken.xlsx', 'PK and no more');
    put('empty.csv', '');
    const { code, stdout, stderr } = await runHere(folder, 'fit', ...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(words);
    expect(stderr).not.toContain('at Object');
  });
});

/** Minutes from start to end of the one step, and options, of each unit of a log. */
function workByOption(log: string): { readonly options: string; readonly minutes: number }[] {
  const units = new Map<string, { options: string; start: number; minutes: number }>();
  for (const line of log.trim().split('\n').slice(1)) {
    const [at = '', event, unit = '', , , , , values = ''] = line.split(','),
      time = Date.parse(at) / 60_000,
      known = units.get(unit) ?? { options: '', start: NaN, minutes: NaN };
    if (event === 'enter') known.options = values;
    if (event === 'start') known.start = time;
    if (event === 'end') known.minutes = time - known.start;
    units.set(unit, known);
  }
  return [...units.values()].filter(({ minutes }) => !Number.isNaN(minutes));
}

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { scenarioFolder, start } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder(),
  path = (name: string): string => join(folder, name);
/** Invented. The clock of Oslo skips 2027-03-28 02:00-03:00. */
const line = (more = '', programme = 'start: 2027-03-22, rate: { per day: 4 }'): string => `
scenario: A paint line
${more}
programme: { ${programme}, until: 2027-04-30, quantity: 60, due after: 1 days, options: { colour: { red: 50 %, white: 50 % } } }
calendars: { day: { hours: ['06:00-14:00'], on: Mon-Fri } }
defects: { runs: {} }
sites: { shop: { zone: Europe/Oslo, calendar: day, stations: { booth: { buffer: 4 }, tunnel: { buffer: 4 } } } }
route:
  - { step: prime, at: booth, work: { mean: 100 min, cv: 0.2 }, creates: { runs: 20 % } }
  - { step: look, at: tunnel, work: { mean: 60 min, cv: 0.2 }, finds: { runs: { chance: 80 %, back to: prime } } }
`;

beforeAll(async () => {
  writeFileSync(path('line.yaml'), line());
  const { code } = await runHere(
    folder,
    'simulate',
    'line.yaml',
    '--trace',
    'log.csv',
    '--replications',
    '1',
    '--finding-ok',
  );
  expect(code).toBe(0);
  const log = readFileSync(path('log.csv'), 'utf8');
  writeFileSync(path('other.csv'), log.replaceAll(',look,', ',lookk,'));
  writeFileSync(path('nothing.csv'), log.split('\n').slice(0, 1).join('\n'));
}, 60_000);

const ask = (command: string, at: string, log = 'log.csv', ...more: string[]) =>
  runHere(folder, command, 'line.yaml', log, '--at', at, ...more);

describe('rateproof opening', () => {
  it('prints a part that the scenario takes in, at the time of day of the moment', async () => {
    const { code, stdout } = await ask('opening', '2027-03-29T09:15');
    expect(code).toBe(0);
    expect(stdout).toContain('# Where the floor stood on 2027-03-29 09:15, from log.csv.');
    expect(stdout).toContain('  start time: "09:15"\n');
    // The same moment, told by its distance from UTC: summer time since the day before.
    expect((await ask('opening', '2027-03-29T07:15Z')).stdout).toBe(stdout);
    expect((await ask('opening', '2027-03-29T09:15+02:00')).stdout).toBe(stdout);
    writeFileSync(path('opening.yaml'), stdout);
    writeFileSync(
      path('from.yaml'),
      line('include: opening.yaml', 'start: 2027-03-29, rate: { per day: 4 }'),
    );
    const checked = await runHere(folder, 'check', 'from.yaml');
    expect([checked.code, checked.stderr]).toEqual([0, '']);
  });

  it('writes a file, and over an existing one only if told to', async () => {
    const first = await ask('opening', '2027-03-29', 'log.csv', '--out', 'floor.yaml');
    expect([first.code, first.stdout]).toEqual([0, '']);
    expect(readFileSync(path('floor.yaml'), 'utf8')).toContain('programme:\n');
    const again = await ask('opening', '2027-03-29', 'log.csv', '--out', 'floor.yaml');
    expect([again.code, again.stderr]).toEqual([
      2,
      'error: expected floor.yaml to be free, got a file\nhint: choose another name, or add --replace\n',
    ]);
    expect((await ask('opening', '2027-03-30', 'log.csv', '--out', 'floor.yaml', '--replace')).code).toBe(0);
  });

  it.each([
    ['2027-02-30', '--at: expected a date or a time, got "2027-02-30"'],
    [
      '2027-03-01',
      '--at: expected a moment of the programme, which begins on 2027-03-22 and ends before 2027-04-30 00:00, got 2027-03-01 00:00',
    ],
    [
      '2027-05-01T06:00',
      '--at: expected a moment of the programme, which begins on 2027-03-22 and ends before 2027-04-30 00:00, got 2027-05-01 06:00',
    ],
    [
      '2027-03-22',
      '--at: expected a moment after 2027-03-22 06:00, when the log begins, got 2027-03-22 00:00',
    ],
    [
      '2027-03-28T02:30',
      '--at: expected a time that clocks in Europe/Oslo show, got one that they skip, 2027-03-28 02:30',
    ],
  ])('refuses the moment %s', async (at, expected) => {
    for (const command of ['opening', 'forecast']) {
      const { code, stderr } = await ask(command, at);
      expect([code, stderr.split('\n').find((said) => said.startsWith('error'))]).toEqual([
        2,
        `error: ${expected}`,
      ]);
    }
  });

  it('tells of steps that the scenario does not have, and what may be meant', async () => {
    const { stdout } = await ask('opening', '2027-03-29', 'other.csv');
    expect(stdout).toMatch(
      /# The scenario has no step "lookk", and \d+ rows of the log with it are left out: did you mean "look"\?/,
    );
    const empty = await ask('opening', '2027-03-29', 'nothing.csv');
    expect([empty.code, empty.stderr]).toEqual([
      2,
      expect.stringContaining('error: nothing.csv: expected events of steps that the scenario has, got none'),
    ]);
  });

  it('says of an old log that it is old', async () => {
    expect((await ask('opening', '2027-04-29')).stdout).toContain(
      '# The log ends days before this moment: the floor is taken as it stood then.',
    );
  });
});

describe('rateproof forecast', () => {
  it('tells the orders ahead, and by its exit code whether one will probably be late', async () => {
    const words = ['--replications', '20', '--quiet'],
      { code, stdout } = await ask('forecast', '2027-03-29', 'log.csv', ...words),
      json = await ask('forecast', '2027-03-29', 'log.csv', ...words, '--json'),
      { orders, units } = JSON.parse(json.stdout) as {
        orders: { unit: string; late: number; half: string; fourInFive: string }[];
        units: { standing: number; shipped: number; toCome: number };
      };
    expect(stdout).toMatch(/^\d+ of \d+ orders/);
    // Every order is told once.
    expect(units.standing + units.shipped + units.toCome).toBe(60);
    expect(new Set(orders.map(({ unit }) => unit)).size).toBe(60 - units.shipped);
    for (const { half, fourInFive } of orders) expect(half <= fourInFive).toBe(true);
    expect(code).toBe(orders.some(({ late }) => late > 10) ? 3 : 0);
    expect((await ask('forecast', '2027-03-29', 'log.csv', ...words, '--finding-ok')).code).toBe(0);
    // The same bits again.
    expect((await ask('forecast', '2027-03-29', 'log.csv', ...words, '--json')).stdout).toBe(json.stdout);
  });

  it('has no option for workers, as its builds run one after another', async () => {
    for (const command of ['forecast', 'validate']) {
      const { code, stderr } = await runHere(folder, command, 'line.yaml', 'log.csv', '--workers', '2');
      expect([code, stderr]).toEqual([2, expect.stringContaining('unknown option "--workers"')]);
    }
  });

  it('ends within moments of Ctrl-C, and leaves no report', async () => {
    const running = start(
      folder,
      'forecast',
      'line.yaml',
      'log.csv',
      '--at',
      '2027-03-29',
      '--replications',
      '10000',
      '--out',
      'report',
    );
    await running.told('the rest of line.yaml');
    const from = Date.now();
    running.interrupt();
    const { code } = await running.outcome;
    expect(code).toBe(130);
    // 0.7 seconds are given to end in order; the machine may be busy.
    expect(Date.now() - from).toBeLessThan(10_000);
    expect(existsSync(path('report'))).toBe(false);
  }, 30_000);
});

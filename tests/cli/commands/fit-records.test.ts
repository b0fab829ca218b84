import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const DATA = fileURLToPath(new URL('../../../scenarios/data', import.meta.url)),
  DEMO = fileURLToPath(new URL('../../../scenarios/rescue-tender.yaml', import.meta.url));

/** Invented: work of whole hours, that must come out of the log as it went in. */
const LINE = `scenario: Two inspections
programme: { start: 2027-03-01, zone: Europe/Oslo, rate: { per day: 2 }, quantity: 60, options: { colour: { red: 50 %, white: 50 % } } }
calendars: { days: { hours: ["06:00-14:00"], breaks: ["09:00-09:30"], on: Mon-Fri } }
defects: { dirt: {} }
sites:
  works:
    zone: Europe/Oslo
    calendar: days
    stations: { bay: { places: 4, buffer: unlimited, failures: { every: 90 h, repair: 1 h } }, tunnel: { places: 2, buffer: unlimited }, gate: { buffer: unlimited } }
route:
  - { step: weld, at: tunnel, work: { mean: 90 min, cv: 0.1 }, learning: { rate: 85 % } }
  - { step: coat, at: gate, work: 40 min, creates: { dirt: 50 % } }
  - { step: look, at: gate, work: 20 min, finds: { dirt: { chance: 70 %, repair: 15 min } } }
  - { step: fit, at: bay, work: 300 min }
  - { step: last look, at: gate, work: 20 min, finds: { dirt: { chance: 90 %, repair: 15 min } } }
`;

describe('fit of records', () => {
  const folder = scenarioFolder(),
    text = (name: string): string => readFileSync(join(folder, name), 'utf8'),
    fit = (...args: string[]) => runHere(folder, 'fit', ...args),
    wrong = async (...args: string[]): Promise<string> => {
      const { code, stderr } = await fit(...args);
      expect(code).toBe(2);
      return stderr;
    };
  beforeAll(async () => {
    writeFileSync(join(folder, 'line.yaml'), LINE);
    cpSync(join(DEMO, '..', 'rescue-tender'), join(folder, 'rescue-tender'), { recursive: true });
    for (const log of ['log.csv', 'log.json'])
      await runHere(folder, 'simulate', 'line.yaml', '--trace', log, '--replications', '1', '--finding-ok');
  });

  it.each([
    ['chances', 'found-invented.csv', ['--by', 'colour'], /creates\.dirt in primer".*measured: 120/],
    ['learning', 'learning-invented.csv', [], /fit dashboard\]\.learning": \{ rate: .*standard error/],
    [
      'stops',
      'stops-invented.csv',
      ['--from', '2027-08-16', '--to', '2027-10-15'],
      /colour booth\.failures\.every": \{ exponential/,
    ],
  ])(
    'of %s: the invented table fits the demo, which takes what is written',
    async (of, table, more, wanted) => {
      const { code, stdout, stderr } = await fit(
        join(DATA, table),
        DEMO,
        '--of',
        of,
        ...more,
        '--out',
        `out-${of}`,
      );
      expect([code, stderr]).toEqual([0, `wrote out-${of}; include fitted.yaml in the scenario to use it\n`]);
      expect(stdout).toMatch(/left out/);
      expect(text(`out-${of}/fitted.yaml`)).toMatch(wanted);
      expect(text(`out-${of}/left-out.csv`).split('\n').length).toBeGreaterThan(2);
      const results = JSON.parse(text(`out-${of}/results.json`)) as Record<string, unknown>;
      expect(results).toMatchObject({ study: 'fit', of, table });
      expect(results['rows']).toBe((results['used'] as number) + (results['leftOut'] as unknown[]).length);
      const taken = readFileSync(DEMO, 'utf8').replace('include: [', `include: [out-${of}/fitted.yaml, `);
      writeFileSync(join(folder, 'with.yaml'), taken);
      const checked = await runHere(folder, 'check', 'with.yaml');
      expect([checked.code, checked.stderr]).toEqual([0, '']);
      expect(checked.stdout).toMatch(/[1-9]\d* measured/);
    },
  );

  it('of a floor log: working minutes over the night', async () => {
    const { code, stdout } = await fit('log.csv', 'line.yaml', '--out', 'log-times');
    expect(code).toBe(0);
    expect(text('log-times/fitted.yaml')).toMatch(/"route\[coat\]\.work": \{ value: 40 min/);
    expect(text('log-times/fitted.yaml')).toMatch(/weld: The step learns in the scenario/);
    expect(stdout).toMatch(/may hold a repair: fit\./);
    const { steps } = JSON.parse(text('log-times/results.json')) as { steps: { step: string }[] };
    expect(steps.find(({ step }) => step === 'coat')).toMatchObject({ n: 60 });
    expect(text('log-times/left-out.csv')).toMatch(/^why,rule,rows,first_lines/);
  });

  it('of OCEL 2.0 the same as of CSV', async () => {
    const [csv, json] = await Promise.all(
      ['log.csv', 'log.json'].map((log) => fit(log, 'line.yaml', '--of', 'chances', '--json')),
    );
    const read = (out: string) =>
      JSON.parse(out.replaceAll('log.json', 'log.csv')) as { chances: readonly unknown[] };
    expect(read(csv.stdout).chances.length).toBeGreaterThan(0);
    expect(read(json.stdout).chances).toEqual(read(csv.stdout).chances);
  });

  it('of a floor log: chances and learning, and both files can be included at once with the times', async () => {
    for (const of of ['chances', 'learning'])
      expect((await fit('log.csv', 'line.yaml', '--of', of, '--out', `log-${of}`, '--quiet')).code).toBe(0);
    writeFileSync(
      join(folder, 'all.yaml'),
      `include: [log-chances/fitted.yaml, log-learning/fitted.yaml, log-times/fitted.yaml]\n${LINE}`,
    );
    const { code, stdout } = await runHere(folder, 'check', 'all.yaml');
    expect(code).toBe(0);
    expect(stdout).toMatch(/[89] measured|1\d measured/);
    expect(text('log-chances/fitted.yaml')).toMatch(/route\[look\]\.finds\.dirt\.chance/);
    expect(text('log-learning/fitted.yaml')).toMatch(/route\[weld\]\.learning/);
  });

  it('of a log in other words, by a file of names, on some of its days', async () => {
    writeFileSync(join(folder, 'other.csv'), text('log.csv').replaceAll(',coat,', ',COAT-01,'));
    writeFileSync(join(folder, 'names.yaml'), 'steps: { COAT-01: coat }\n');
    const days = ['--from', '2027-03-08', '--to', '2027-03-12'],
      { stdout } = await fit('other.csv', 'line.yaml', '--names', 'names.yaml', ...days, '--json'),
      { steps, notes } = JSON.parse(stdout) as { steps: { step: string; n: number }[]; notes: string[] };
    expect(steps.find(({ step }) => step === 'coat')?.n).toBe(10);
    expect(notes.join(' ')).toMatch(/From 2027-03-08 to 2027-03-12/);
    const without = await fit('other.csv', 'line.yaml', ...days);
    expect(without.stdout).toMatch(/unknown step, 180 rows: .*Rows of steps.*: "COAT-01"/s);
  });

  it('of a log in rows of stays', async () => {
    writeFileSync(
      join(folder, 'stays.csv'),
      `unit,step,started,ended\n${Array.from({ length: 12 }, (_, i) => `U${i},fit,2027-03-0${1 + (i % 4)} 12:00,2027-03-0${2 + (i % 4)} 09:30\n`).join('')}`,
    );
    const { code, stdout } = await fit('stays.csv', 'line.yaml');
    expect(code).toBe(0);
    // 12:00 to 14:00 and 06:00 to 09:00, the break from 09:00 to 09:30 not counted.
    expect(stdout).toMatch(/fit\s+12\s+300\s/);
    expect(await wrong('stays.csv', 'line.yaml', '--of', 'chances')).toMatch(
      /expected finds of inspections, got none/,
    );
  });

  it('takes a table of times by a file of names', async () => {
    writeFileSync(join(folder, 'times.csv'), 'step,minutes\nPRIME,40\nPRIME,40\n');
    writeFileSync(join(folder, 'prime.yaml'), 'steps: { PRIME: coat }\n');
    const { stdout } = await fit('times.csv', 'line.yaml', '--names', 'prime.yaml');
    expect(stdout).toMatch(/coat\s+2\s+40\s/);
    expect(await wrong('times.csv', 'line.yaml', '--from', '2027-03-01')).toMatch(/expected a floor log/);
  });

  it('says what is wrong with what it is asked', async () => {
    writeFileSync(join(folder, 'bad.csv'), 'step,fuond\nlook,1\n');
    writeFileSync(join(folder, 'none.csv'), 'step,found\nlok,yes\n');
    expect(await wrong('log.csv')).toMatch(/expected a scenario FILE beside a floor log/);
    expect(await wrong('log.csv', 'line.yaml', '--of', 'stops')).toMatch(
      /got a floor log, which tells of none/,
    );
    expect(await wrong('log.csv', 'line.yaml', '--of', 'chanses')).toMatch(
      /--of: expected times or chances or/,
    );
    expect(await wrong('log.csv', 'line.yaml', '--by', 'colr')).toMatch(/it has colour/);
    expect(await wrong('bad.csv', '--of', 'chances')).toMatch(/did you mean "fuond"/);
    expect(await wrong('none.csv', 'line.yaml', '--of', 'chances')).toMatch(
      /got none of 1[^]*did you mean "look"/,
    );
    expect(await wrong('none.csv', '--of', 'chances', '--from', '2027-03-01')).toMatch(
      /--from and --to: expected a floor log/,
    );
    expect(await wrong('none.csv', '--of', 'times', '--found', 'found')).toMatch(/only with --of chances/);
    expect(await wrong('none.csv', '--of', 'stops')).toMatch(/expected a column station/);
    expect(await wrong('none.csv', '--of', 'learning')).toMatch(/expected a column/);
    expect(await wrong('log.csv', 'line.yaml', '--from', '2027-03-09', '--to', '2027-03-08')).toMatch(
      /not before/,
    );
    expect(await wrong('nowhere.csv', '--of', 'stops')).toMatch(/expected a table that can be read/);
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
  });
});

import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LogTold } from '../../../../src/records/log-told.js';
import { runHere } from '../../run-here.js';

/** Invented: two sites an hour apart, a ferry between them. */
const yaml = `
scenario: Two clocks
programme: { start: 2027-10-25, zone: Europe/Helsinki, rate: { per day: 1 }, quantity: 9, due after: 3 days }
calendars: { day: { hours: ["06:00-18:00"] } }
sites:
  hull works: { zone: Europe/Helsinki, calendar: day, stations: { weld bay: { buffer: 4 } } }
  fit-out works: { zone: Europe/Oslo, calendar: day, stations: { fit bay: { places: 2, buffer: 4 } } }
lanes:
  ferry: { from: hull works, to: fit-out works, trucks: 1, capacity: 1, load: 0 min, drive: 3 h, unload: 0 min, return: 1 h, bank: 4, arrival bank: 4 }
route:
  - { step: weld, at: weld bay, work: { mean: 2 h, cv: 0.1 } }
  - { lane: ferry }
  - { step: fit, at: fit bay, work: { mean: 2 h, cv: 0.1 } }
`;

/** A unit that goes through in a day, by the clocks of the sites; what has no step goes by that of Helsinki. */
const goodUnit = (day: string, unit: string): string[] => [
  `${day} 07:00;enter;${unit};;;`,
  `${day} 07:00:00,25;start;${unit};weld;weld bay;`,
  `${day} 09:00:30,5;end;${unit};weld;weld bay;`,
  `${day} 09:10;load;${unit};ferry;ferry;truck:ferry 1`,
  `${day} 12:10;unload;${unit};ferry;ferry;truck:ferry 1`,
  `${day} 11:20;start;${unit};fit;;`,
  `${day} 13:20;end;${unit};fit;fit bay;`,
  `${day} 14:30;ship;${unit};;;`,
];
const lines = [
  'at;event;object;step;station;others;remark', // 1: `remark` is not read
  ...goodUnit('25.10.2027', 'A'), // 2 to 9
  '26.10.2027 07:00;enter;B;;;', // 10
  '26.10.2027 07:00;start;B;weld;weld bay;', // 11
  '26.10.2027 07:00;start;B;weld;weld bay;', // 12 the same again
  '26.10.2027 08:00;start;B;fit;fit bay;', // 13 at two steps at once: told at the end of the first, 14
  '26.10.2027 10:00;end;B;weld;weld bay;', // 14
  '26.10.2027 10:30;end;B;wled;;', // 15 no such step
  '26.10.2027 10:30;end;B;fti;;', // 16 nor such
  '26.10.2027 09:40;end;B;fit;fit bey;', // 17 no such station; Oslo is an hour behind
  '26.10.2027 12:00;begin;B;fit;;', // 18 no such event
  'yesterday;end;B;fit;;', // 19
  ';end;B;fit;;', // 20
  '26.10.2027 12:00;end;;fit;;', // 21
  '26.10.2027 12:00;end;B;;;', // 22
  '28.03.2027 02:30;end;B;fit;;', // 23 skipped in spring
  'short;row', // 24
  '26.10.2027 14:30;ship;B;;;', // 25
  '27.10.2027 07:00;enter;C;;;', // 26
  '27.10.2027 07:00;start;C;weld;;', // 27 never ended
  '27.10.2027 12:30;start;C;fit;;', // 28
  '27.10.2027 11:30;arrive;C;fit;;', // 29 out of order
  '27.10.2027 14:30;end;C;fit;;', // 30
  '27.10.2027 16:00;ship;C;;;', // 31
  '28.10.2027 07:00;enter;D;;;', // 32
  '28.10.2027 09:00;end;D;weld;;', // 33 never begun
  '31.10.2027 02:30;start;D;fit;;', // 34 that hour comes twice
  '31.10.2027 04:30;end;D;fit;;', // 35
  '31.10.2027 08:00;ship;D;;;', // 36
  ...goodUnit('01.11.2027', 'E'), // 37 to 44
  ...goodUnit('02.11.2027', 'F'), // 45 to 52
];
const expected = {
  duplicate: ['left out', 12],
  'unknown step': ['left out', 15, 16],
  'unknown event': ['left out', 18],
  'unreadable time': ['left out', 19],
  'no time': ['left out', 20],
  'no object': ['left out', 21],
  'no step': ['left out', 22],
  'time that the clock skips': ['left out', 23],
  'too few columns': ['left out', 24],
  'unknown station': ['mended', 17],
  'out of order': ['mended', 29],
  overlap: ['taken as it is', 14],
  'missing end': ['taken as it is', 27],
  'missing start': ['taken as it is', 33],
  'time that the clock shows twice': ['taken as it is', 34],
};

const folder = mkdtempSync(join(tmpdir(), 'rateproof-bad-log-')),
  told = ({ oddities }: LogTold): Record<string, unknown> =>
    Object.fromEntries(oddities.map(({ kind, rule, lines: at }) => [kind, [rule, ...at]]));
beforeAll(() => {
  writeFileSync(join(folder, 'line.yaml'), yaml);
  // A byte-order mark, and line ends of Windows.
  writeFileSync(join(folder, 'bad.csv'), `\uFEFF${lines.join('\r\n')}\r\n`);
});

describe('a log with every fault planted', () => {
  it('is told by line in results.json of validate, and what is left out in a CSV', async () => {
    const { code, stdout } = await runHere(
      folder,
      ...['validate', 'line.yaml', 'bad.csv', '--replications', '10', '--out', 'out', '--finding-ok'],
    );
    expect(code).toBe(0);
    const { log } = JSON.parse(readFileSync(join(folder, 'out/results.json'), 'utf8')) as { log: LogTold };
    expect(told(log)).toEqual(expected);
    expect(log).toMatchObject({ rows: lines.length - 1, used: lines.length - 1 - 10 });
    const rows = readFileSync(join(folder, 'out/left-out.csv'), 'utf8').trimEnd().split('\n');
    expect(rows[0].trim()).toBe('line,why,says');
    expect(rows.slice(1).map((row) => row.split(',').slice(0, 2).join(' '))).toEqual([
      '12 duplicate',
      '15 unknown step',
      '16 unknown step',
      '18 unknown event',
      '19 unreadable time',
      '20 no time',
      '21 no object',
      '22 no step',
      '23 time that the clock skips',
      '24 too few columns',
    ]);
    const flat = stdout.replaceAll(/\s+/g, ' ');
    expect(flat).toContain('51 rows, 41 used');
    expect(flat).toContain('columns that are not read: remark');
    expect(flat).toContain(
      '2 rows (lines 15, 16): rows of steps that the scenario does not have are left out',
    );
    expect(flat).toContain('"wled", did you mean "weld"?');
    expect(flat).toContain('nor has it a step "fti" (1 row), did you mean "fit"?');
    expect(flat).toContain('1 row (line 12): rows that say the same again are left out');
  });

  it('is told the same by opening and forecast', async () => {
    const at = ['--at', '2027-10-27'],
      opening = await runHere(folder, 'opening', 'line.yaml', 'bad.csv', ...at),
      forecast = await runHere(
        folder,
        ...['forecast', 'line.yaml', 'bad.csv', ...at, '--replications', '3', '--json', '--finding-ok'],
      );
    expect(opening.stdout).toContain('# 51 rows, 41 used\n');
    expect(opening.stdout).toContain('# 1 row (line 34): the clock of Europe/Oslo shows these times twice');
    expect(told((JSON.parse(forecast.stdout) as { log: LogTold }).log)).toEqual(expected);
  });

  it('has a clock for each site', async () => {
    // By hand: A is fitted from 11:20 in Oslo, when it is 12:20 in Helsinki, and leaves it at 13:20, or 14:20.
    const { stdout } = await runHere(
      folder,
      ...['opening', 'line.yaml', 'bad.csv', '--at', '2027-10-25T14:00+03:00'],
    );
    expect(stdout).toContain('at: "fit", build: "A"');
  });

  it('is refused as a whole where a column is there twice', async () => {
    writeFileSync(join(folder, 'twice.csv'), `at;${lines.join('\n')}\n`);
    for (const command of ['validate', 'opening', 'forecast']) {
      const at = command === 'validate' ? [] : ['--at', '2027-10-27'],
        { code, stderr } = await runHere(folder, command, 'line.yaml', 'twice.csv', ...at);
      expect([command, code]).toEqual([command, 2]);
      expect(stderr).toContain('twice.csv: line 1: expected one column at, got two');
    }
  });
});

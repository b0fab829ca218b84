import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MAIN, scenarioFolder, start } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
const FEW = ['--replications', '2', '--workers', '1'],
  /** Enough to tell whether a rate is held: of none of four Wilson's interval reaches to 49 %. */
  FOUR = ['--replications', '4', '--workers', '1'];

// Each test starts the program, some of them several times, on a machine that may be busy.
describe('rateproof simulate', { timeout: 30_000 }, () => {
  it('prints the table on stdout and talks on stderr; without --out it hints how to get the folder', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'simulate', 'slack.yaml', ...FEW);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^2 builds tried, seed 1$/m);
    expect(stderr).toMatch(
      /^running 2 replications of slack\.yaml, seed 1\nlooking at the weeks judged and at what stops it\nhint: --out DIR .*\n$/,
    );
  });

  it('exits with 3 where the rate is not held, and with 0 for --finding-ok', async () => {
    const strict = await runHere(folder, 'simulate', 'tight.yaml', ...FOUR, '--quiet');
    const lenient = await runHere(folder, 'simulate', 'tight.yaml', ...FOUR, '--quiet', '--finding-ok');
    expect([strict.code, lenient.code]).toEqual([3, 0]);
    expect(strict.stderr + lenient.stderr).toBe('');
    expect(lenient.stdout).toBe(strict.stdout);
  });

  it('prints what results.json holds with --json, and writes a whole folder, which it replaces only if asked to', async () => {
    const first = await runHere(folder, 'simulate', 'slack.yaml', ...FEW, '--json', '--out', 'new/report');
    expect(first.code).toBe(0);
    expect(first.stderr).toBe(
      'running 2 replications of slack.yaml, seed 1\nlooking at the weeks judged and at what stops it\ndrawing the report\nreport: new/report\n',
    );
    expect(JSON.parse(first.stdout)).toMatchObject({
      format: 'rateproof results',
      replications: 2,
      seed: '1',
      scenario: { file: 'slack.yaml' },
    });
    expect(readFileSync(join(folder, 'new/report/results.json'), 'utf8')).toBe(first.stdout);
    expect(readdirSync(join(folder, 'new'))).toEqual(['report']);
    expect(readdirSync(join(folder, 'new/report'))).toContain('report.html');

    const again = await runHere(folder, 'simulate', 'slack.yaml', ...FEW, '--out', 'new/report');
    expect(again).toMatchObject({ code: 2, stdout: '' });
    const replaced = await runHere(
      folder,
      'simulate',
      'slack.yaml',
      ...FEW,
      '--seed',
      'spring',
      '--json',
      '--quiet',
      '--out',
      'new/report',
      '--replace',
    );
    expect(replaced).toMatchObject({ code: 0, stderr: '' });
    expect(readFileSync(join(folder, 'new/report/results.json'), 'utf8')).toBe(replaced.stdout);
  });

  it('tells the way of a unit by its build number, and refuses one that there is not before the run', async () => {
    const told = await runHere(folder, 'simulate', 'slack.yaml', ...FEW, '--quiet', '--journey', '7');
    // Two a day: unit 7 goes on Thursday at 06:00, 2 h at the bench and 1 h at the trim bench.
    expect(told.stdout).toMatch(/^unit 7, days from entry to shipping +0\.125 +replication 1$/m);
    expect(told.stdout).toMatch(/^ {2}work +0\.125 +replication 1$/m);
    const none = await runHere(folder, 'simulate', 'slack.yaml', '--journey', '61');
    expect(none).toMatchObject({ code: 2, stdout: '' });
    expect(none.stderr).toBe(
      'error: --journey: expected a build number of the 60 units, got "61"\nhint: units without a build number of their own are called 1, 2, .. in the order of release\n',
    );
  });

  it('refuses a report folder with something else in it before the run, not after it', async () => {
    mkdirSync(join(folder, 'mixed'));
    writeFileSync(join(folder, 'mixed/results.json'), '{ "format": "rateproof results" }');
    writeFileSync(join(folder, 'mixed/letter.doc'), 'mine');
    const { code, stdout, stderr } = await runHere(
      folder,
      'simulate',
      'endless.yaml',
      '--out',
      'mixed',
      '--replace',
    );
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('expected nothing but a report, got letter.doc beside it');
    expect(stderr).not.toContain('running');
  });

  it('stops at Ctrl-C with 130 and leaves nothing behind', async () => {
    const before = readdirSync(folder);
    const running = start(folder, 'simulate', 'endless.yaml', '--replications', '10000', '--out', 'stopped');
    await running.told('running');
    const since = performance.now();
    running.interrupt();
    expect(await running.outcome).toMatchObject({
      code: 130,
      stdout: '',
      stderr: expect.stringMatching(/interrupted; no report was written\n$/) as string,
    });
    // Far less than the run, even on a busy machine.
    expect(performance.now() - since).toBeLessThan(5000);
    expect(readdirSync(folder)).toEqual(before);
  });

  it('stops at Ctrl-C while it draws, which leaves nothing behind but the journal to go on from', async () => {
    const before = readdirSync(folder);
    const running = start(folder, 'simulate', 'slack.yaml', ...FEW, '--out', 'stopped');
    await running.told('drawing the report');
    running.interrupt();
    const { code, stderr } = await running.outcome;
    expect(code).toBe(130);
    expect(stderr).not.toContain('report: stopped');
    expect(readdirSync(folder)).toEqual([...before, 'stopped.journal'].sort());
    const again = await runHere(folder, 'simulate', 'slack.yaml', ...FEW, '--out', 'stopped');
    // Two of the run, the same two watched in the weeks that are judged, and two with a place more: two builds
    // do not tell whether most keep up.
    expect(again.stderr).toContain('found 6 finished replications of an earlier run in stopped.journal');
    expect(readdirSync(folder)).toEqual([...before, 'stopped'].sort());
  });

  it('is quiet, and keeps its exit code, when the reader of its output has seen enough', async () => {
    const child = spawn(
      'sh',
      [
        '-c',
        '{ "$0" "$1" simulate tight.yaml --replications 4 --quiet --json; echo "code $?" >&2; } | head -c 1',
        process.execPath,
        MAIN,
      ],
      { cwd: folder },
    );
    let stderr = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    await new Promise((resolve) => child.on('close', resolve));
    expect(stderr).toBe('code 3\n');
  });
});

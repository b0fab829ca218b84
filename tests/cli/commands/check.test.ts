import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MAIN, scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();

describe('rateproof check', { timeout: 30_000 }, () => {
  it('says the bottleneck and the highest rate first, on stdout: 480 min a day over 120 min a unit is 4 a day', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'check', 'tight.yaml');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.split('\n')[0]).toBe(
      'bottleneck by arithmetic: bench (station), at most 4 units a working day, 6 asked',
    );
    expect(stdout).toMatch(/^bench +station +works +1 +120 +480 +4 +150 %$/m);
  });

  it('takes what stands behind -- for a name, also one that begins with a dash', async () => {
    writeFileSync(join(folder, '-tight.yaml'), readFileSync(join(folder, 'tight.yaml')));
    for (const words of [
      ['--', 'tight.yaml'],
      ['--', '-tight.yaml'],
    ]) {
      const { code, stdout } = await runHere(folder, 'check', ...words);
      expect(code).toBe(0);
      expect(stdout).toContain('6 asked');
    }
  });

  it('gives the line of the key whose plan cannot be made', async () => {
    writeFileSync(
      join(folder, 'never.yaml'),
      readFileSync(join(folder, 'slack.yaml'), 'utf8').replace('per day: 2', 'per day: 0.0001'),
    );
    const { code, stderr } = await runHere(folder, 'check', 'never.yaml');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^error: never\.yaml:2:1 programme: expected a plan that releases all \d+ units/);
  });

  it('warns of a shape that may lead to a standstill, with its line, which is no error', async () => {
    writeFileSync(
      join(folder, 'embrace.yaml'),
      `scenario: embrace
programme: { arrivals: 10 min, quantity: 30 }
sites: { hall: { stations: { yard: { buffer: unlimited }, lathe: {}, mill: {} } } }
route:
  - { step: put down, at: yard }
  - { step: turn, at: lathe, work: 10 min }
  - { step: mill, at: mill, work: 10 min }
  - { step: turn again, at: lathe, work: 10 min }
`,
    );
    const { code, stdout } = await runHere(folder, 'check', 'embrace.yaml'),
      json = await runHere(folder, 'check', 'embrace.yaml', '--json');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^warning: embrace\.yaml:8:5 route\[3\]: units may meet on the way to turn again/m,
    );
    expect(JSON.parse(json.stdout)).toMatchObject({
      warnings: [{ at: 'embrace.yaml:8:5', path: 'route[3]' }],
    });
  });

  it('prints JSON alone with --json', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'check', 'slack.yaml', '--json');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(JSON.parse(stdout)).toMatchObject({
      format: 'rateproof capacity',
      version: 1,
      askedPerDay: 2,
      highestRatePerDay: 4,
      bottleneck: { name: 'bench', load: 0.5 },
    });
  });

  it('prints JSON as it is, also of a name written from the right, which a table isolates', async () => {
    const name = '\u05ea\u05d7\u05e0\u05d4';
    writeFileSync(
      join(folder, 'right.yaml'),
      readFileSync(join(folder, 'slack.yaml'), 'utf8').replace(/(?<!trim )bench(?=:|,)/g, name),
    );
    const json = await runHere(folder, 'check', 'right.yaml', '--json'),
      table = await runHere(folder, 'check', 'right.yaml');
    expect((JSON.parse(json.stdout) as { bottleneck: { name: string } }).bottleneck.name).toBe(name);
    expect(table.stdout).toContain(`\u2068${name}\u2069`);
  });

  it('finds observed times beside the scenario, wherever it is called from', async () => {
    const { code, stdout } = await runHere(
      dirname(MAIN),
      'check',
      resolve(folder, 'observed.yaml'),
      '--json',
    );
    expect(code).toBe(0);
    // The mean of 110 and 130.
    expect(JSON.parse(stdout)).toMatchObject({ bottleneck: { name: 'bench', minutesPerUnit: 120 } });
  });

  it('tells a missing file of observed times as a problem of the scenario', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'check', 'no-times.yaml');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^no-times\.yaml:\d+:\d+ route\[0\]\.work.*no such file or folder.*nowhere\.csv/);
  });

  it('lists every problem of a scenario with its line on stderr, and exits with 2', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'check', 'wrong.yaml');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^wrong\.yaml:7:\d+ route\[0\]\.work: /m);
    expect(stderr).toMatch(/^wrong\.yaml:8:\d+ route\[1\]\.at: .*did you mean "trim bench"\?$/m);
    expect(stderr).toMatch(/^error: 2 problems in wrong\.yaml; nothing was run$/m);
  });

  it('takes a programme that never ends for wrong input, not for a fault', async () => {
    const { code, stderr } = await runHere(folder, 'check', 'never.yaml');
    expect(code).toBe(2);
    expect(stderr).toContain('error:');
    expect(stderr).not.toContain('fault of rateproof');
  });

  it('loads neither pictures, pages, workers nor the progress bar, so that it starts at once', () => {
    const scripts = scriptsOf('check', 'slack.yaml');
    for (const heavy of ['chart.js', '@napi-rs', 'tinypool', 'eta', 'cli-progress'])
      expect(scripts.filter((url) => url.includes(`/node_modules/${heavy}/`))).toEqual([]);
    expect(scripts.some((url) => url.endsWith('/dist/cli/main.js'))).toBe(true);
    expect(
      scriptsOf('simulate', 'slack.yaml', '--replications', '2', '--workers', '2').some((url) =>
        url.includes('/node_modules/tinypool/'),
      ),
    ).toBe(true);
  });
});

/** Every script that a run of the program loaded: Node writes them down with its coverage. */
function scriptsOf(...args: string[]): string[] {
  const coverage = mkdtempSync(join(folder, 'coverage-'));
  execFileSync(process.execPath, [MAIN, ...args], {
    cwd: folder,
    stdio: 'ignore',
    env: { ...process.env, NODE_V8_COVERAGE: coverage },
  });
  return readdirSync(coverage).flatMap((file) =>
    (JSON.parse(readFileSync(join(coverage, file), 'utf8')) as { result: { url: string }[] }).result.map(
      ({ url }) => url,
    ),
  );
}

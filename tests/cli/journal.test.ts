import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contents, killedAt, scenarioFolder } from './run-cli.js';
import { runHere } from './run-here.js';

const folder = scenarioFolder();
// Long enough that a run of many is surely not at its end when it is killed.
const LONG = ['simulate', 'long.yaml', '--workers', '1', '--json', '--finding-ok'];
writeFileSync(
  join(folder, 'long.yaml'),
  `scenario: Long bench
programme: { arrivals: { exponential: { mean: 2 h } }, length: 20000 h, warm up: 500 h }
sites: { works: { stations: { bench: { buffer: unlimited } } } }
route: [{ step: build, at: bench, work: { exponential: { mean: 90 min } } }]
`,
);

const journal = (name: string): string => join(folder, `${name}.journal`);

describe('a study with --out that was cut off', { timeout: 120_000 }, () => {
  it('goes on after kill -9 from what it had finished, to the same files and answer, and leaves no journal', async () => {
    const run = [...LONG, '--replications', '60'];
    const whole = await runHere(folder, ...run, '--out', 'whole');
    expect(whole.stderr).not.toContain('earlier run');
    await killedAt(folder, 'cut.journal', 4, ...run, '--out', 'cut');
    expect(existsSync(join(folder, 'cut'))).toBe(false);
    const again = await runHere(folder, ...run, '--out', 'cut');
    const found = Number(
      /^found (\d+) finished replications? of an earlier run in cut\.journal, going on from there$/m.exec(
        again.stderr,
      )?.[1],
    );
    expect(found).toBeGreaterThan(0);
    expect(found).toBeLessThan(60);
    expect(again.stdout).toBe(whole.stdout);
    expect(contents(join(folder, 'cut'))).toEqual(contents(join(folder, 'whole')));
    expect(existsSync(journal('cut'))).toBe(false);
    expect(existsSync(journal('whole'))).toBe(false);
  });

  it('takes replications of the journal for a run with more of them and another number of workers, but never for another seed or scenario', async () => {
    await killedAt(folder, 'mixed.journal', 4, ...LONG, '--replications', '60', '--out', 'mixed');
    const kept = readFileSync(journal('mixed'));
    const seed = await runHere(folder, ...LONG, '--replications', '60', '--out', 'mixed', '--seed', '2');
    expect(seed).toMatchObject({ code: 2, stdout: '' });
    expect(seed.stderr).toBe(
      'running 60 replications of long.yaml, seed 2\nerror: mixed.journal: expected the journal of this study, got another: seed was 1, now it is 2\nhint: to begin anew delete mixed.journal, or choose another name with --out\n',
    );
    writeFileSync(
      join(folder, 'longer.yaml'),
      readFileSync(join(folder, 'long.yaml'), 'utf8').replace('90 min', '91 min'),
    );
    const scenario = await runHere(
      folder,
      'simulate',
      'longer.yaml',
      ...LONG.slice(2),
      '--replications',
      '60',
      '--out',
      'mixed',
    );
    expect(scenario).toMatchObject({
      code: 2,
      stdout: '',
      stderr: expect.stringMatching(
        /got another: scenario was sha256:[0-9a-f]{64}, now it is sha256:[0-9a-f]{64}\n/,
      ) as string,
    });
    expect(readFileSync(journal('mixed'))).toEqual(kept);

    const more = await runHere(folder, ...LONG, '--workers', '2', '--replications', '62', '--out', 'mixed');
    expect(more.stderr).toContain('of an earlier run');
    expect(more.stdout).toBe((await runHere(folder, ...LONG, '--replications', '62')).stdout);
  });

  it('refuses a file of somebody else where its journal would be, and leaves it as it is', async () => {
    writeFileSync(journal('notes'), 'my notes');
    const { code, stderr } = await runHere(folder, 'simulate', 'slack.yaml', '--out', 'notes/');
    expect(code).toBe(2);
    expect(stderr).toContain(
      'notes.journal: expected the journal of this study, got another: it is no journal of this version',
    );
    expect(readFileSync(journal('notes'), 'utf8')).toBe('my notes');
  });

  it('keeps no journal without --out', async () => {
    const before = readdirSync(folder);
    await runHere(folder, 'simulate', 'slack.yaml', '--replications', '2', '--quiet');
    expect(readdirSync(folder)).toEqual(before);
  });
});

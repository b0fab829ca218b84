import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
mkdirSync(join(folder, 'a-folder'));

describe('rateproof: help and version', { timeout: 30_000 }, () => {
  it('shows examples first, and every exit code last, on stdout', async () => {
    const { code, stdout, stderr } = await runHere(folder, '--help');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.indexOf('Examples:')).toBeLessThan(stdout.indexOf('Commands:'));
    expect(stdout).toMatch(/Exit codes:\n +0 .*\n +1 .*\n +2 .*\n +3 .*\n +130 /);
  });

  it.each(['check', 'simulate', 'merge', 'schema'])(
    'shows examples before the options of %s',
    async (command) => {
      const { code, stdout } = await runHere(folder, command, '--help');
      expect(code).toBe(0);
      expect(stdout.indexOf(`  rateproof ${command} `)).toBeGreaterThan(stdout.indexOf('Examples:'));
      expect(stdout.indexOf('Options:')).toBeGreaterThan(stdout.indexOf('Examples:'));
    },
  );

  it('prints the version of package.json', async () => {
    const { version } = JSON.parse(
      readFileSync(new URL('../../../package.json', import.meta.url), 'utf8'),
    ) as {
      version: string;
    };
    expect(await runHere(folder, '--version')).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
  });
});

describe('rateproof: wrong use is told in one error line and a hint, with exit code 2', {
  timeout: 30_000,
}, () => {
  const count = 'expected a whole number from 1 to 10,000, got';
  it.each<[string, string[], string, string]>([
    ['no command', [], 'expected a command, got none', '--help'],
    ['an unknown command', ['chekc', 'slack.yaml'], 'unknown command "chekc"', 'did you mean check?'],
    [
      'a file with a line break in its name',
      ['check', 'a\nerror: b.yaml'],
      'expected words without tabs and line breaks, got "a\\nerror: b.yaml"',
      'rename a file',
    ],
    [
      'a seed with a tab',
      ['simulate', 'slack.yaml', '--seed=a\tb'],
      'expected words without tabs and line breaks, got "--seed=a\\tb"',
      'rename a file',
    ],
    ['no file', ['check'], 'expected a scenario FILE, got none', '--help'],
    [
      'a second file',
      ['check', 'slack.yaml', 'tight.yaml'],
      'expected nothing after the scenario FILE but options, got "tight.yaml"',
      '--help',
    ],
    [
      'an unknown option',
      ['simulate', 'slack.yaml', '--replicatons=3'],
      'unknown option "--replicatons"',
      'did you mean --replications?',
    ],
    [
      'an option of another command',
      ['check', 'slack.yaml', '--seed', '2'],
      'unknown option "--seed"',
      '--help',
    ],
    [
      'an option spelt in another way',
      ['simulate', 'slack.yaml', '--findingOk'],
      'unknown option "--findingOk"',
      'did you mean --finding-ok?',
    ],
    [
      'an option without its value',
      ['simulate', 'slack.yaml', '--out'],
      'expected a value after --out, got none',
      '--help',
    ],
    [
      'an option with an empty value',
      ['simulate', 'slack.yaml', '--out='],
      '--out: expected a path, got none',
      '--out',
    ],
    [
      'an empty seed',
      ['simulate', 'slack.yaml', '--seed='],
      '--seed: expected a text of 1 to 200 characters, got 0',
      '--seed 1',
    ],
    [
      'no replications',
      ['simulate', 'slack.yaml', '--replications', '0'],
      `--replications: ${count} "0"`,
      'default',
    ],
    [
      'replications in words',
      ['simulate', 'slack.yaml', '--replications', 'abc'],
      `--replications: ${count} "abc"`,
      'default',
    ],
    [
      'replications with an exponent',
      ['simulate', 'slack.yaml', '--replications', '1e9'],
      `--replications: ${count} "1e9"`,
      'default',
    ],
    [
      'half a replication',
      ['simulate', 'slack.yaml', '--replications', '2.5'],
      `--replications: ${count} "2.5"`,
      'default',
    ],
    [
      'negative replications',
      ['simulate', 'slack.yaml', '--replications', '-3'],
      `--replications: ${count} "-3"`,
      'default',
    ],
    [
      'no worker',
      ['simulate', 'slack.yaml', '--workers', '0'],
      '--workers: expected a whole number from 1 to 256, got "0"',
      'default',
    ],
    [
      '--replace without a folder',
      ['simulate', 'slack.yaml', '--replace'],
      '--replace: expected --out',
      '--out DIR',
    ],
    [
      'a shard that is no part',
      ['simulate', 'slack.yaml', '--shard', '5/4', '--out', 'x'],
      '--shard: expected I/N with I from 1 to N, got "5/4"',
      '--shard 2/4',
    ],
    [
      'a shard of no form',
      ['simulate', 'slack.yaml', '--shard', '2', '--out', 'x'],
      '--shard: expected I/N with I from 1 to N, got "2"',
      '--shard 2/4',
    ],
    [
      'more shards than replications',
      ['simulate', 'slack.yaml', '--replications', '3', '--shard', '4/4', '--out', 'x'],
      '--shard: expected at most as many shards as replications, 3, got 4',
      'fewer shards',
    ],
    [
      'a shard without a folder',
      ['simulate', 'slack.yaml', '--shard', '1/4'],
      '--shard: expected --out',
      '--out DIR',
    ],
    [
      'a shard that shall print',
      ['simulate', 'slack.yaml', '--shard', '1/4', '--out', 'x', '--json'],
      '--json: expected no such option with --shard',
      'rateproof merge',
    ],
    [
      'a precision of one shard',
      ['simulate', 'slack.yaml', '--shard', '1/4', '--out', 'x', '--precision', '1%'],
      '--precision: expected no such option with --shard, got it',
      'no part of them can be run apart: leave --precision out and give --replications, see docs/shards.md',
    ],
    [
      'a precision spelt wrong',
      ['simulate', 'slack.yaml', '--precison', '1%'],
      'unknown option "--precison"',
      'did you mean --precision?',
    ],
    [
      'a precision of nothing',
      ['simulate', 'slack.yaml', '--precision', '0%'],
      '--precision: expected per cent above 0 and below 100, got "0%"',
      '--precision "1 %"',
    ],
    [
      'a precision without per cent',
      ['simulate', 'slack.yaml', '--precision', '0.01'],
      '--precision: expected per cent above 0 and below 100, got "0.01"',
      '--precision "1 %"',
    ],
    [
      'a precision of something unknown',
      ['simulate', 'slack.yaml', '--precision', '1%', '--of', 'wip,speed'],
      '--of: expected some of throughput, lead-time, wip, cost, got "speed"',
      '--of throughput,lead-time',
    ],
    [
      'a precision of costs where there are none',
      ['simulate', 'slack.yaml', '--precision', '1%', '--of', 'cost'],
      '--of: expected a scenario with costs for cost, got one without',
      'prices',
    ],
    [
      'a limit below what is run at first',
      ['simulate', 'slack.yaml', '--precision', '1%', '--replications', '40', '--most', '35'],
      '--most: expected at least the 40 replications to begin with, got 35',
      '--replications',
    ],
    [
      'a limit without a precision',
      ['simulate', 'slack.yaml', '--most', '35'],
      '--most: expected --precision beside it, got none',
      '--precision 1%',
    ],
    [
      'a shard of compare without a folder',
      ['compare', 'slack.yaml', 'what-ifs.yaml', '--shard', '1/4'],
      '--shard: expected --out',
      '--out DIR',
    ],
    [
      'a shard of rate',
      ['rate', 'slack.yaml', '--shard', '1/4'],
      '--shard: expected no such option with rate, got it',
      'no part of them can be run apart: leave --shard out; simulate without --precision, compare and factors can be sharded, see docs/shards.md',
    ],
    [
      'a shard of reliefs',
      ['reliefs', 'slack.yaml', '--shard=1/4'],
      '--shard: expected no such option with reliefs, got it',
      'no part of them can be run apart: leave --shard out; simulate without --precision, compare and factors can be sharded, see docs/shards.md',
    ],
    [
      'a shard of buffers',
      ['buffers', 'slack.yaml', '--shard', '1/4'],
      '--shard: expected no such option with buffers, got it',
      'no part of them can be run apart: leave --shard out; simulate without --precision, compare and factors can be sharded, see docs/shards.md',
    ],
    [
      'a shard where there are no replications',
      ['check', 'slack.yaml', '--shard', '1/4'],
      'unknown option "--shard"',
      '--help',
    ],
    [
      'nothing to merge',
      ['merge', '--out', 'x'],
      'expected folders DIR of finished shards, got none',
      'rateproof merge',
    ],
    [
      'an unknown option of merge',
      ['merge', 'x', '--sed', '1'],
      'unknown option "--sed"',
      'did you mean --seed?',
    ],
    ['a missing file', ['check', 'missing.yaml'], 'got no such file or folder: missing.yaml', 'path'],
    ['a folder for a file', ['check', 'a-folder'], 'got a folder: a-folder', 'path'],
    [
      'a missing file to simulate',
      ['simulate', 'missing.yaml'],
      'got no such file or folder: missing.yaml',
      'path',
    ],
    [
      'a schema over a scenario',
      ['schema', '--out', 'slack.yaml'],
      'expected slack.yaml to be free or an older schema',
      'another name',
    ],
    [
      'a schema in no folder',
      ['schema', '--out', 'nowhere/schema.json'],
      'expected to be able to write nowhere/schema.json, got no such file or folder',
      '--out',
    ],
    [
      'a report in a file',
      ['simulate', 'slack.yaml', '--out', 'tight.yaml/report'],
      'got a file where a folder should be',
      '--out',
    ],
    [
      'a report that is a file',
      ['simulate', 'slack.yaml', '--out', 'tight.yaml', '--replace'],
      'got a file or a link',
      '--out',
    ],
    [
      'a folder that is there',
      ['simulate', 'slack.yaml', '--out', 'a-folder'],
      'a-folder: expected a name not taken yet, got an existing folder',
      '--replace',
    ],
    [
      'a folder that is no report',
      ['simulate', 'slack.yaml', '--out', 'a-folder', '--replace'],
      'got one without a results.json that says so',
      '--out',
    ],
  ])('%s', async (_, args, error, hint) => {
    const { code, stdout, stderr } = await runHere(folder, ...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    const lines = stderr.trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^error: /);
    expect(lines[0]).toContain(error);
    expect(lines[1]).toMatch(/^hint: /);
    expect(lines[1]).toContain(hint);
  });
});

import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { contents as contentsOf, scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder(),
  at = (name: string): string => join(folder, name);
// Random, with orders of one's own and prices: whatever a scenario holds has to come through the shards.
const SCENARIO = `scenario: Two benches
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 3 }, options: { stripe: 40 % } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites:
  works:
    zone: Europe/Oslo
    calendar: days
    crews: { fitters: 2 }
    stations: { bench: { buffer: 2 }, trim bench: { buffer: unlimited } }
route:
  - { step: build, at: bench, crew: { fitters: 1 }, work: { low: 100 min, likely: { value: 120 min, basis: guess }, high: 170 min } }
  - { step: trim, at: trim bench, crew: { fitters: 1 }, work: { mean: 60 min, cv: 0.4 } }
`;
writeFileSync(at('two.yaml'), SCENARIO);
const RUN = ['simulate', 'two.yaml', '--replications', '10', '--seed', 'spring', '--workers', '1'];
type About = Record<string, unknown>;
const shard = (index: number, out = `s${index}`, ...more: string[]) =>
  runHere(folder, ...RUN, '--shard', `${index}/4`, '--out', out, ...more);
const contents = (name: string): string[] => contentsOf(at(name));

describe('shards', { timeout: 120_000 }, () => {
  let answer = '';
  beforeAll(async () => {
    answer = (await runHere(folder, ...RUN, '--out', 'one', '--quiet', '--finding-ok')).stdout;
    for (const index of [4, 1, 3, 2])
      expect(await shard(index)).toMatchObject({
        code: 0,
        stdout: '',
        stderr: `running 10 replications of two.yaml, seed spring, shard ${index} of 4\nshard ${index} of 4: s${index}\n`,
      });
  }, 120_000);

  it('hold what they are, and every n-th replication; nothing is left beside them', () => {
    expect(readdirSync(at('s2')).sort()).toEqual(['shard.journal', 'shard.json']);
    expect(JSON.parse(readFileSync(at('s2/shard.json'), 'utf8'))).toMatchObject({
      format: 'rateproof shard',
      version: 2,
      shard: { index: 2, of: 4 },
      identity: { study: 'simulate', seed: 'spring', level: '0.95' },
      asked: { file: 'two.yaml', replications: 10, scenario: { name: 'Two benches' } },
    });
    expect(readdirSync(folder).filter((name) => /journal|\.new/.test(name))).toEqual([]);
  });

  it('merged in any order, one of them twice, give the files and the answer of one run, byte for byte', async () => {
    cpSync(at('s3'), at('s3-again'), { recursive: true });
    const merged = await runHere(
      folder,
      'merge',
      's3',
      's1',
      's4',
      's3-again',
      's2',
      '--out',
      'merged',
      '--finding-ok',
    );
    expect(merged).toMatchObject({ code: 0, stdout: answer });
    expect(merged.stderr).toBe(
      '1 folder holds a shard that another holds too, which changes nothing\nmerging 4 shards of two.yaml, 10 replications, seed spring\nlooking at the weeks judged and at what stops it\ndrawing the report\nreport: merged\n',
    );
    expect(contents('merged')).toEqual(contents('one'));
    expect(contents('one').join()).toContain('report.html ');
  });

  it('tell the way of a unit when they are merged, as one run does', async () => {
    const way = ['--journey', '7', '--json', '--quiet', '--finding-ok'],
      merged = await runHere(folder, 'merge', 's1', 's2', 's3', 's4', ...way);
    expect(merged.stdout).toBe((await runHere(folder, ...RUN, ...way)).stdout);
    expect((await runHere(folder, 'merge', 's1', 's2', 's3', 's4', '--journey', '41')).stderr).toContain(
      '--journey: expected a build number of the 40 units, got "41"',
    );
  });

  it('are named where they are missing', async () => {
    expect(await runHere(folder, 'merge', 's1', 's2', 's4', '--out', 'three', '--quiet')).toEqual({
      code: 2,
      stdout: '',
      stderr:
        'shard 3 of 4 is missing: replications 3, 7\nerror: expected all 4 shards of 10 replications, got 3\nhint: run them, or name their folders too\n',
    });
    expect((await runHere(folder, 'merge', 's4', '--quiet')).stderr).toContain(
      'shard 1 of 4 is missing: replications 1, 5, 9\nshard 2 of 4 is missing: replications 2, 6, 10\nshard 3',
    );
    expect(existsSync(at('three'))).toBe(false);
  });

  it('run twice are not run again', async () => {
    const before = contents('s1');
    expect(await shard(1)).toMatchObject({
      code: 0,
      stderr: 's1 is shard 1 of 4 of this very study already; nothing is run\n',
    });
    expect(contents('s1')).toEqual(before);
    expect((await shard(1, 's1', '--seed', 'autumn')).stderr).toBe(
      'error: expected s1 to be free or this very shard, got another: seed was spring, now it is autumn\nhint: remove it, or choose another name with --out\n',
    );
    expect((await shard(2, 's1')).stderr).toContain('got another: shard was 1, now it is 2');
    expect((await shard(1, 'one')).stderr).toContain(
      'one: expected the folder of a finished shard, got one without shard.json',
    );
  });

  it('cut off and run again go on from their journal to the same shard', async () => {
    // As a kill leaves it: the journal beside the folder that is not there, its last record not whole.
    cpSync(at('s2/shard.journal'), at('cut.journal'));
    truncateSync(at('cut.journal'), readFileSync(at('cut.journal')).length - 1);
    expect((await runHere(folder, 'merge', 's1', 'cut', 's3', 's4')).stderr).toBe(
      'error: expected cut to be the folder of a finished shard, got one that was cut off\nhint: give its command again, it goes on from there\n',
    );
    expect((await runHere(folder, 'merge', 's1', 'cut.journal')).stderr).toContain(
      'the journal of one that was cut off',
    );
    // Replications 2, 6, 10: two are whole.
    expect((await shard(2, 'cut')).stderr).toContain(
      'found 2 finished replications of an earlier run in cut.journal',
    );
    expect(existsSync(at('cut.journal'))).toBe(false);
    const json = ['--json', '--quiet', '--finding-ok'],
      [cut, whole] = [
        await runHere(folder, 'merge', 's1', 'cut', 's3', 's4', ...json),
        await runHere(folder, ...RUN, ...json),
      ];
    expect(cut).toEqual(whole);
  });

  it('of another study, or of another number of parts, are not mixed in', async () => {
    await runHere(
      folder,
      'simulate',
      'two.yaml',
      '--replications',
      '10',
      '--seed',
      'autumn',
      '--shard',
      '2/4',
      '--out',
      'foreign',
      '--quiet',
    );
    expect(await runHere(folder, 'merge', 's1', 'foreign', 's3', 's4')).toMatchObject({
      code: 2,
      stderr:
        'error: foreign: expected a shard of the study of s1, got one of another: seed was spring, now it is autumn\nhint: leave it out, or run the shard again into another folder\n',
    });
    await runHere(folder, ...RUN, '--shard', '2/3', '--out', 'third', '--quiet');
    expect((await runHere(folder, 'merge', 's1', 'third')).stderr).toContain('shards was 4, now it is 3');
    // The same numbers, but the results tell where they come from.
    writeFileSync(at('told.yaml'), SCENARIO.replace('basis: guess', 'basis: measured'));
    renameSync(at('told.yaml'), at('two.yaml'));
    await runHere(folder, ...RUN, '--shard', '2/4', '--out', 'told', '--quiet');
    writeFileSync(at('two.yaml'), SCENARIO);
    expect((await runHere(folder, 'merge', 's1', 'told')).stderr).toContain(
      'what the scenario says of where its values come from is another',
    );
  });

  it('that are damaged, or no shards, are named', async () => {
    cpSync(at('s2'), at('damaged'), { recursive: true });
    const file = at('damaged/shard.journal'),
      bytes = readFileSync(file);
    bytes[bytes.length - 9] ^= 1;
    writeFileSync(file, bytes);
    expect((await runHere(folder, 'merge', 's1', 'damaged', 's3', 's4', '--quiet')).stderr).toContain(
      'error: damaged/shard.journal: expected every replication of shard 2 of 4, got a damaged file',
    );
    rmSync(file);
    expect((await runHere(folder, 'merge', 's1', 'damaged', 's3', 's4', '--quiet')).stderr).toContain(
      'got a damaged file',
    );
    expect((await runHere(folder, 'merge', 'one')).stderr).toContain(
      'one: expected the folder of a finished shard, got one without shard.json',
    );
    expect((await runHere(folder, 'merge', 'nowhere')).stderr).toContain('got no such folder: nowhere');
    cpSync(at('s2'), at('later'), { recursive: true });
    writeFileSync(
      at('later/shard.json'),
      readFileSync(at('s2/shard.json'), 'utf8').replace('"version": 2', '"version": 3'),
    );
    expect((await runHere(folder, 'merge', 'later')).stderr).toContain(
      'later/shard.json: expected that of a shard of this version, got another',
    );
  });

  it.each([
    ['without what it belongs to', (about: About) => delete about['identity']],
    ['without what was asked', (about: About) => delete about['asked']],
    ['without its place', (about: About) => delete about['shard']],
    [
      'that asks for a thousand million replications',
      (about: About) => ((about['asked'] as About)['replications'] = 1e9),
    ],
    ['of another place', (about: About) => ((about['shard'] as About)['of'] = 2)],
  ])('%s are told as damaged, with exit code 2', async (_, damage) => {
    rmSync(at('hurt'), { recursive: true, force: true });
    cpSync(at('s2'), at('hurt'), { recursive: true });
    const about = JSON.parse(readFileSync(at('hurt/shard.json'), 'utf8')) as About;
    damage(about);
    writeFileSync(at('hurt/shard.json'), JSON.stringify(about));
    const { code, stderr } = await runHere(folder, 'merge', 'hurt');
    expect(code).toBe(2);
    expect(stderr).toContain('hurt/shard.json: expected it as it was written, got a changed or damaged file');
  });

  it('with a folder in the place of their values are told as damaged', async () => {
    cpSync(at('s2'), at('folded'), { recursive: true });
    rmSync(at('folded/shard.journal'));
    mkdirSync(at('folded/shard.journal'));
    const { code, stderr } = await runHere(folder, 'merge', 's1', 'folded', 's3', 's4');
    expect(code).toBe(2);
    expect(stderr).toContain(
      'folded/shard.journal: expected every replication of shard 2 of 4, got a damaged',
    );
  });
});

describe('shards of a build that stands still', { timeout: 120_000 }, () => {
  it('are merged into what one run tells, with what ends it', async () => {
    writeFileSync(
      at('stuck.yaml'),
      `scenario: sent back
programme: { arrivals: 10 min, quantity: 20 }
sites: { hall: { stations: { yard: { buffer: unlimited }, weld: { buffer: 1 }, check: {} } } }
defects: { gap: {} }
route:
  - { step: put down, at: yard }
  - { step: weld, at: weld, work: 10 min, creates: { gap: 50 % } }
  - { step: check, at: check, work: 10 min, finds: { gap: { chance: 100 %, back to: weld, limit: 2 } } }
`,
    );
    const run = [
        'simulate',
        'stuck.yaml',
        '--replications',
        '4',
        '--workers',
        '1',
        '--quiet',
        '--finding-ok',
      ],
      { stdout: whole } = await runHere(folder, ...run, '--json');
    for (const index of [1, 2])
      await runHere(folder, ...run, '--shard', `${index}/2`, '--out', `stuck-${index}`);
    const merged = await runHere(folder, 'merge', 'stuck-1', 'stuck-2', '--json', '--quiet', '--finding-ok');
    expect(merged.stdout).toBe(whole);
    expect(JSON.parse(whole)).toMatchObject({
      standstill: {
        help: { sentence: expect.stringMatching(/^With one space for rework ahead of weld/) as string },
      },
    });
  });
});

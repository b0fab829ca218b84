import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { contents as contentsOf, scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder(),
  at = (name: string): string => join(folder, name),
  contents = (name: string): string[] => contentsOf(at(name));
// Invented. Random, with prices: whatever is compared has to come through the shards.
writeFileSync(
  at('two.yaml'),
  `scenario: Two benches
programme: { start: 2027-03-01, quantity: 40, rate: { per day: 3 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: 2 }, trim bench: { buffer: 2 } } } }
costs: { currency: EUR, buffer place: { day: 10 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.5, basis: guess } }
  - { step: trim, at: trim bench, work: { mean: 100 min, cv: 0.4 } }
`,
);
const WHAT_IFS =
  'two benches: { note: invented, changes: { sites.works.stations.bench.places: 2 } }\nno price: { changes: { remove: costs } }\n';
writeFileSync(at('what-ifs.yaml'), WHAT_IFS);
const compare = (...more: string[]) =>
  runHere(
    folder,
    'compare',
    'two.yaml',
    'what-ifs.yaml',
    '--replications',
    '5',
    '--seed',
    'spring',
    '--workers',
    '1',
    ...more,
  );
const merge = (...words: string[]) => runHere(folder, 'merge', ...words);

describe('shards of compare', { timeout: 60_000 }, () => {
  let answer = '';
  beforeAll(async () => {
    answer = (await compare('--out', 'one', '--quiet')).stdout;
    for (const index of [3, 1, 2]) {
      expect(await compare('--shard', `${index}/3`, '--out', `s${index}`)).toMatchObject({
        code: 0,
        stdout: '',
        stderr: `running 5 replications each of two.yaml and 2 what-ifs, seed spring, shard ${index} of 3\nshard ${index} of 3: s${index}\n`,
      });
    }
  }, 60_000);

  it('merged in any order, one of them twice, give the files and the answer of one run, byte for byte', async () => {
    cpSync(at('s3'), at('s3-again'), { recursive: true });
    const merged = await merge('s3', 's1', 's3-again', 's2', '--out', 'merged');
    expect(merged).toMatchObject({ code: 0, stdout: answer });
    expect(merged.stderr).toBe(
      '1 folder holds a shard that another holds too, which changes nothing\nmerging 3 shards, 5 replications each of two.yaml and 2 what-ifs, seed spring\nlooking at what stops it\ndrawing the report\nreport: merged\n',
    );
    expect(contents('merged')).toEqual(contents('one'));
    expect(contents('one').join()).toContain('differences.csv ');
  });

  it('are named where they are missing, and run twice are not run again', async () => {
    expect(await merge('s1', 's3', '--out', 'two', '--quiet')).toEqual({
      code: 2,
      stdout: '',
      stderr:
        'shard 2 of 3 is missing: replications 2, 5\nerror: expected all 3 shards of 5 replications, got 2\nhint: run them, or name their folders too\n',
    });
    expect(existsSync(at('two'))).toBe(false);
    expect(await compare('--shard', '2/3', '--out', 's2')).toMatchObject({
      code: 0,
      stderr: 's2 is shard 2 of 3 of this very study already; nothing is run\n',
    });
  });

  it('are not mixed with those of simulate, of other what-ifs, of what-ifs with other names, or of another zone', async () => {
    await runHere(
      folder,
      'simulate',
      'two.yaml',
      '--replications',
      '5',
      '--seed',
      'spring',
      '--shard',
      '2/3',
      '--out',
      'simulated',
      '--quiet',
    );
    expect(await merge('s1', 'simulated', 's3')).toMatchObject({
      code: 2,
      stdout: '',
      stderr: expect.stringMatching(
        /^error: simulated: expected a shard of the study of s1, got one of another: .*study was compare, now it is simulate/,
      ) as string,
    });
    expect((await merge('simulated', 's1', 's3')).stderr).toContain('study was simulate, now it is compare');
    writeFileSync(at('what-ifs.yaml'), WHAT_IFS.replace('places: 2', 'places: 3'));
    await compare('--shard', '2/3', '--out', 'others', '--quiet');
    writeFileSync(at('what-ifs.yaml'), WHAT_IFS.replace('note: invented', 'note: dreamt up'));
    await compare('--shard', '2/3', '--out', 'renamed', '--quiet');
    writeFileSync(at('what-ifs.yaml'), WHAT_IFS);
    await compare('--shard', '2/3', '--out', 'wider', '--quiet', '--zone', '3 %');
    expect((await merge('s1', 'wider', 's3')).stderr).toContain(
      'wider: expected a shard of the study of s1, got one of another: the difference that does not matter is another',
    );
    expect((await merge('s1', 'others', 's3')).stderr).toMatch(
      /others: expected a shard of the study of s1, got one of another: what-ifs was sha256:[0-9a-f]{64}, now it is sha256:[0-9a-f]{64}\n/,
    );
    expect((await merge('s1', 'renamed', 's3')).stderr).toContain(
      'renamed: expected a shard of the study of s1, got one of another: names or notes of the what-ifs are others',
    );
  });

  it('hold no unit whose way could be told', async () => {
    expect(await merge('s1', 's2', 's3', '--journey', '7')).toMatchObject({
      code: 2,
      stdout: '',
      stderr: expect.stringContaining(
        '--journey: expected shards of simulate, got those of compare',
      ) as string,
    });
    expect(JSON.parse(readFileSync(at('s2/shard.json'), 'utf8'))).toMatchObject({
      shard: { index: 2, of: 3 },
      identity: { study: 'compare' },
      asked: { whatIfsFile: 'what-ifs.yaml', replications: 5 },
    });
  });
});

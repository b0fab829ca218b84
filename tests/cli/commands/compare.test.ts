import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
writeFileSync(
  join(folder, 'what-ifs.yaml'),
  'two benches: { changes: { sites.works.stations.bench.places: 2 } }\nlonger: { changes: { route.build.work: 170 min } }\n',
);
writeFileSync(
  join(folder, 'wrong-ifs.yaml'),
  'two benches:\n  changes:\n    - sites.works.stations.bnech.places: 2\n',
);
writeFileSync(join(folder, 'never.yaml'), 'never:\n  changes:\n    - programme.rate.per day: 0\n');
const FEW = ['--replications', '2', '--workers', '1'];

describe('rateproof compare', { timeout: 30_000 }, () => {
  it('prints the answer, writes a whole folder, and what it prints as JSON is what the folder holds', async () => {
    const plain = await runHere(folder, 'compare', 'slack.yaml', 'what-ifs.yaml', ...FEW);
    expect(plain.code).toBe(0);
    expect(plain.stdout).toMatch(/^In full: The base ships .*[^]*^2 builds of each tried, seed 1/m);
    expect(plain.stderr).toMatch(
      /^running 2 replications each of slack\.yaml and 2 what-ifs, seed 1\nlooking at what stops it\nhint: --out DIR .*\n$/,
    );

    const whole = await runHere(
      folder,
      'compare',
      'slack.yaml',
      'what-ifs.yaml',
      ...FEW,
      '--json',
      '--quiet',
      '--out',
      'out',
    );
    expect(whole).toMatchObject({ code: 0, stderr: '' });
    expect(JSON.parse(whole.stdout)).toMatchObject({
      format: 'rateproof results',
      study: 'compare',
      replications: 2,
      scenario: { file: 'slack.yaml' },
      whatIfsFile: 'what-ifs.yaml',
    });
    expect(readFileSync(join(folder, 'out/results.json'), 'utf8')).toBe(whole.stdout);
    const files = readdirSync(join(folder, 'out'));
    for (const name of ['01-differences.png', 'map.png', 'map.svg']) expect(files).toContain(name);
  });

  it('tells what is wrong in the file of what-ifs at its line, and runs nothing', async () => {
    const { code, stdout, stderr } = await runHere(folder, 'compare', 'slack.yaml', 'wrong-ifs.yaml', ...FEW);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toBe(
      'wrong-ifs.yaml:3:7 two benches: sites.works.stations.bnech.places: a key or name in sites.works.stations; got "bnech"; did you mean "bench"?\n' +
        'error: 1 problem in wrong-ifs.yaml; nothing was run\nhint: docs/compare.md shows how changes are written\n',
    );
  });

  it('takes a zone for all measures, and another for one of them, in any order', async () => {
    const { stdout } = await runHere(
      folder,
      'compare',
      'slack.yaml',
      'what-ifs.yaml',
      ...FEW,
      '--zone',
      'lead-time 5 %',
      '--zone',
      '0.5%',
      '--json',
      '--quiet',
    );
    const { measures } = JSON.parse(stdout) as { measures: { id: string; zone: { share: number } }[] };
    expect(measures.map(({ id, zone }) => [id, zone.share])).toEqual([
      ['throughput', 0.005],
      ['lead mean', 0.05],
      ['lead p90', 0.05],
      ['wip', 0.005],
      ['last unit', 0.005],
    ]);
  });

  it.each([
    ['1', 'expected per cent from 0 to below 100, a measure before it or none, got "1"'],
    ['100 %', 'expected per cent from 0 to below 100, a measure before it or none, got "100 %"'],
    [
      'rate 1 %',
      'expected one of throughput, lead-time, wip, last-unit, cost before the per cent, got "rate"',
    ],
  ])('refuses the zone %j', async (zone, error) => {
    const { code, stderr } = await runHere(folder, 'compare', 'slack.yaml', 'what-ifs.yaml', '--zone', zone);
    expect(code).toBe(2);
    expect(stderr).toBe(
      `error: --zone: ${error}\nhint: for example --zone "2 %", or --zone "lead-time 5 %" for one measure\n`,
    );
  });

  it('asks for both files, for two replications, and for what-ifs that end', async () => {
    const missing = await runHere(folder, 'compare', 'slack.yaml');
    expect(missing).toMatchObject({
      code: 2,
      stderr: expect.stringContaining(
        'expected a file of WHATIFS behind the scenario FILE, got none',
      ) as string,
    });
    const nowhere = await runHere(folder, 'compare', 'slack.yaml', 'nowhere.yaml');
    expect(nowhere).toMatchObject({
      code: 2,
      stderr: expect.stringContaining(
        'expected a file of what-ifs that can be read, got no such file or folder: nowhere.yaml',
      ) as string,
    });
    const one = await runHere(folder, 'compare', 'slack.yaml', 'what-ifs.yaml', '--replications', '1');
    expect(one).toMatchObject({
      code: 2,
      stderr: expect.stringContaining('--replications: expected a whole number from 2') as string,
    });
    const never = await runHere(folder, 'compare', 'slack.yaml', 'never.yaml', ...FEW);
    expect(never).toMatchObject({ code: 2, stdout: '' });
    expect(never.stderr).toContain('never.yaml:3:7 never: programme.rate: a rate above 0 per day at last');
  });
});

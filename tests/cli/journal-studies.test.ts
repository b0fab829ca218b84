import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contents, killedAt, scenarioFolder } from './run-cli.js';
import { runHere } from './run-here.js';

const folder = scenarioFolder(),
  at = (name: string): string => join(folder, name);
// Invented; long enough that each study is surely not at its end when it is killed.
writeFileSync(
  at('two.yaml'),
  `scenario: Two benches
programme: { start: 2027-03-01, quantity: 400, rate: { per day: 5 } }
calendars: { days: { hours: ["06:00-14:00"], on: Mon-Fri } }
sites: { works: { zone: Europe/Oslo, calendar: days, stations: { bench: { buffer: 4 }, trim bench: { buffer: 2 } } } }
costs:
  currency: EUR
  buffer place: { day: 10 }
  changes: { second bench: { relief: place, of: bench, price: 900, at most: 1 }, shelf: { relief: space, of: bench, price: 5 } }
route:
  - { step: build, at: bench, work: { mean: 2 h, cv: 0.5, basis: guess } }
  - { step: trim, at: trim bench, work: { mean: 100 min, cv: 0.5, basis: estimate } }
`,
);
const WHAT_IFS =
  'two benches: { changes: { sites.works.stations.bench.places: 2 } }\nlonger: { changes: { route.build.work: 170 min } }\n';
writeFileSync(at('what-ifs.yaml'), WHAT_IFS);
writeFileSync(at('other-ifs.yaml'), WHAT_IFS.replace('170', '171'));

interface Case {
  readonly study: string;
  readonly words: string[] /** Replications finished when it is killed. */;
  readonly finished: number /** Another study, and what is then said to differ. */;
  readonly others: readonly (readonly [string[], RegExp])[];
}
const CASES: readonly Case[] = [
  {
    study: 'compare',
    words: ['what-ifs.yaml', '--replications', '60'],
    finished: 30,
    others: [
      [['--seed', '2'], /another: seed was 1, now it is 2\n/],
      [['other-ifs.yaml'], /another: what-ifs was sha256:[0-9a-f]{64}, now it is sha256:[0-9a-f]{64}\n/],
    ],
  },
  {
    study: 'rate',
    words: ['--from', '2', '--to', '5', '--step', '0.5', '--replications', '12', '--sure', '60 %'],
    finished: 30,
    others: [
      [
        ['--weeks', '20', '--settle', '6'],
        /another: weeks was not there, now it is 20; settle weeks was not there, now it is 6\n/,
      ],
    ],
  },
  // Killed behind the first ten or twenty of the scenario as it is, which say how throughput is counted.
  {
    study: 'reliefs',
    words: ['--replications', '30'],
    finished: 60,
    others: [[['--rate', '4'], /another: rate was not there, now it is 4\n/]],
  },
  {
    study: 'reach',
    words: ['--replications', '10'],
    finished: 40,
    others: [[['--budget', '800'], /another: budget was not there, now it is 800\n/]],
  },
  {
    study: 'buffers',
    words: ['--budget', '6', '--replications', '12'],
    finished: 60,
    others: [
      [
        ['--from', 'present', '--at', 'trim bench'],
        /another: at was \[\], now it is \["trim bench"\]; from was not there, now it is present\n/,
      ],
    ],
  },
];
const COMMON = ['--workers', '1', '--json', '--finding-ok'];

describe('a study with --out that was cut off', { timeout: 60_000 }, () => {
  it.each(CASES)(
    '$study goes on after kill -9 to the same files and answer; another one is refused with the reason',
    async ({ study, words, finished, others }) => {
      const ask = (out: string, more: readonly string[] = []): string[] => {
        const [file = '', ...options] =
          study === 'compare' && more[0]?.endsWith('.yaml')
            ? [more[0], ...words.slice(1)]
            : [...words, ...more];
        return [study, 'two.yaml', file, ...options, ...COMMON, '--out', out];
      };
      const whole = await runHere(folder, ...ask(`${study} whole`)),
        cut = `${study} cut`;
      expect(whole.code).toBe(0);
      await killedAt(folder, `${cut}.journal`, finished, ...ask(cut));
      expect(existsSync(at(cut))).toBe(false);
      const kept = readFileSync(at(`${cut}.journal`));
      for (const [more, reason] of others) {
        const other = await runHere(folder, ...ask(cut, more));
        expect(other).toMatchObject({ code: 2, stdout: '' });
        expect(other.stderr).toMatch(reason);
      }
      expect(readFileSync(at(`${cut}.journal`))).toEqual(kept);

      const again = await runHere(folder, ...ask(cut, ['--workers', '2']));
      expect(
        Number(
          /^found (\d+) finished replications of an earlier run in .* cut\.journal, going on from there$/m.exec(
            again.stderr,
          )?.[1],
        ),
      ).toBeGreaterThanOrEqual(finished);
      expect(again.stdout).toBe(whole.stdout);
      expect(contents(at(cut))).toEqual(contents(at(`${study} whole`)));
      expect(existsSync(at(`${cut}.journal`))).toBe(false);
    },
  );
});

describe('guesses and estimates', { timeout: 60_000 }, () => {
  it('belong to the journal of reliefs, as they say what is tried', async () => {
    await killedAt(
      folder,
      'said.journal',
      1,
      'reliefs',
      'two.yaml',
      '--replications',
      '30',
      ...COMMON,
      '--out',
      'said',
    );
    const said = readFileSync(at('two.yaml'), 'utf8');
    writeFileSync(at('two.yaml'), said.replace('basis: guess', 'basis: estimate'));
    const other = await runHere(
      folder,
      'reliefs',
      'two.yaml',
      '--replications',
      '30',
      ...COMMON,
      '--out',
      'said',
    );
    writeFileSync(at('two.yaml'), said);
    expect(other).toMatchObject({ code: 2, stdout: '' });
    expect(other.stderr).toMatch(/another: guesses and estimates was sha256:[0-9a-f]{64}, now it is/);
  });
});

describe('a study that cannot be run as asked', () => {
  it('leaves no journal behind, so that a better one can take its place', async () => {
    const { code, stderr } = await runHere(
      folder,
      'rate',
      'two.yaml',
      '--from',
      '0.1',
      '--to',
      '5',
      '--weeks',
      '4',
      '--out',
      'few',
    );
    expect({ code, stderr }).toMatchObject({
      code: 2,
      stderr: expect.stringContaining('expected at least 50 units in a window') as string,
    });
    expect(existsSync(at('few.journal'))).toBe(false);
  });
});
